import { writeSync } from 'node:fs'
import { saveJob } from '../../src-main/store/jobs.ts'
import { openStore, writing } from '../../src-main/store/store.ts'
import { bedroomJob } from '../job-for-tests.ts'

/** Run by tests: saves jobs named after `prefix` and prints each one's id once it is kept, `most` of them. */
const [folder = '', prefix = '', most = '1000000'] = process.argv.slice(2)
const now = () => new Date().toISOString()
const opened = await openStore({ folder, now })
if (!opened.ok) throw new Error(opened.problems[0]?.message)
for (let count = 1; count <= Number(most); count += 1) {
  const jobId = `${prefix}-${count}`
  await writing(opened.value, (tx) => saveJob(tx, bedroomJob({ jobId }), now()))
  writeSync(1, `${jobId}\n`)
}
