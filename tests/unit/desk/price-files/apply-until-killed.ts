import { writeSync } from 'node:fs'
import { fileReading } from '../../../../src-main/domain/price-list.ts'
import { longWork, workProgressOf } from '../../../../src-main/desk/running/long-work.ts'
import { closeStore, openStore } from '../../../../src-main/store/store.ts'

/** Run by a test: takes a price file in, and says when the list is being written, so that the test can kill it there. */
const [folder = '', path = '', fileHash = '', readingText = '{}'] = process.argv.slice(2)
const at = '2026-03-02T09:00:00.000Z'
const opened = await openStore({ folder, now: () => at })
if (!opened.ok) throw new Error(opened.problems[0]?.message)
const { file } = opened.value
let last = ''
const looking = setInterval(() => {
  const says = workProgressOf('apply')?.says ?? ''
  if (says !== last) writeSync(1, `${says}\n`)
  last = says
}, 2)
const reading = fileReading.parse(JSON.parse(readingText))
const source = { path, name: 'list.csv' }
const common = { file, source, supplierId: 'north', reading, today: '2026-03-02', most: 0 }
const done = await longWork({ ...common, kind: 'apply', at, fileHash, links: [] }, 'apply')
clearInterval(looking)
writeSync(1, `${done.ok ? 'taken' : done.problems[0]?.message}\n`)
await closeStore(opened.value)
