import { openStore } from '../../src-main/store/store.ts'

/** Run by a test: opens a data folder and prints what came of it. */
const outcome = await openStore({ folder: process.argv[2] ?? '', now: () => new Date().toISOString() })
process.stdout.write(JSON.stringify(outcome))
