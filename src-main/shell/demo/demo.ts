import { mkdir, writeFile } from 'node:fs/promises'
import { join, relative } from 'node:path'
import type { AnswerOf, InputOf, RequestName } from '../../contract/requests.ts'
import { openDesk } from '../../desk/open-desk.ts'
import { answer } from '../../desk/router.ts'
import type { Desk } from '../../desk/desk.ts'
import type { Outcome } from '../../domain/outcome.ts'

type Ask = <N extends RequestName>(name: N, input: InputOf<N>) => Promise<AnswerOf<N>>

/** Works the sample job through without a window, and leaves the papers and the figures behind them in out/demo. */
async function run(folder: string): Promise<void> {
  const opened = take('the desk', await openDesk({ dataFolder: null, mayChoosePath: true }))
  const ask = askerOf(opened.desk())
  const keep = (file: string, value: unknown) =>
    writeFile(join(folder, file), `${JSON.stringify(value, null, 2)}\n`)
  await mkdir(folder, { recursive: true })
  const { job } = await ask('job.sample', {})
  await keep('demo.job.json', job)
  await keep('take-off.json', await ask('takeoff.job', { job }))
  const quote = await ask('quote.build', { job })
  await keep('quote.json', quote)
  await keep('pick-list.json', await ask('pickList.build', { job }))
  const papers = [
    await ask('quote.pdf', { job, out: join(folder, 'quote.pdf') }),
    await ask('pickList.pdf', { job, out: join(folder, 'pick-list.pdf') }),
    await ask('setOut.pdf', { job, out: join(folder, 'set-out.pdf') }),
  ]
  await opened.close()
  console.log(`"${job.title}" worked through:`)
  for (const { path, pages } of papers) {
    console.log(`  ${relative(process.cwd(), path)}  ${pages} ${pages === 1 ? 'page' : 'pages'}`)
  }
  for (const file of ['quote.json', 'pick-list.json', 'take-off.json', 'demo.job.json']) {
    console.log(`  ${relative(process.cwd(), join(folder, file))}`)
  }
}

const askerOf =
  (desk: Desk): Ask =>
  async <N extends RequestName>(name: N, input: InputOf<N>) =>
    take(name, (await answer(name, input, desk)) as Outcome<AnswerOf<N>>)

function take<T>(from: string, outcome: Outcome<T>): T {
  if (outcome.ok) return outcome.value
  throw new Error(`${from}: ${outcome.problems.map(({ message }) => message).join(' ')}`)
}

try {
  await run(join(import.meta.dirname, '../demo'))
} catch (error) {
  console.error(error instanceof Error ? error.message : error)
  process.exitCode = 1
}
