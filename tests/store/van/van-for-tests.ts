import { cp, mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { AnswerOf, InputOf, RequestName } from '../../../src-main/contract/requests.ts'
import type { Desk } from '../../../src-main/desk/desk.ts'
import { openDesk } from '../../../src-main/desk/open-desk.ts'
import { answer } from '../../../src-main/desk/router.ts'
import { job as jobSchema } from '../../../src-main/domain/job.ts'
import type { Job } from '../../../src-main/domain/job.ts'
import type { Problem } from '../../../src-main/domain/outcome.ts'
import type { Purchase } from '../../../src-main/domain/quote.ts'
import { readIssued } from '../../../src-main/store/quotes.ts'
import { reading } from '../../../src-main/store/store.ts'
import sample from '../../../resources/sample/two-rooms.job.json' with { type: 'json' }
import { valueOf } from '../store-for-tests.ts'

export const firm = {
  name: 'Sampleton Test Heating',
  addressLines: ['2 Example Row', 'Sampleton'],
  phone: '01632 960100',
}
export const sampleJob: Job = { ...jobSchema.parse(sample), firm }
export const today = '2026-11-25'

/** Asks, and fails the test with the sentences of a refusal. */
export async function ask<N extends RequestName>(
  desk: Desk,
  name: N,
  input: InputOf<N>,
): Promise<AnswerOf<N>> {
  return valueOf(await answer(name, input, desk)) as AnswerOf<N>
}

/** The first problem of what must be refused. */
export async function refusalOf<N extends RequestName>(
  desk: Desk,
  name: N,
  input: InputOf<N>,
): Promise<Problem> {
  const outcome = await answer(name, input, desk)
  if (outcome.ok) throw new Error(`${name} was not refused`)
  const [problem] = outcome.problems
  if (problem === undefined) throw new Error(`${name} was refused without a reason`)
  return problem
}

export type Begun = {
  /** Two windows on one copied data file, closed afterwards. */
  readonly inTwoWindows: (story: (first: Desk, second: Desk) => Promise<void>) => Promise<void>
  readonly gone: () => Promise<void>
}

/** A data file with the shipped catalogue, made once and copied for every story, after `first` was done in it. */
export async function begin(first: (desk: Desk) => Promise<void> = async () => {}): Promise<Begun> {
  const begun = await mkdtemp(join(tmpdir(), 'tailpiece-van-'))
  const open = valueOf(await openDesk({ dataFolder: begun, mayChoosePath: false }))
  await first({ ...open.desk(), today })
  await open.close()
  return {
    gone: () => rm(begun, { recursive: true }),
    inTwoWindows: async (story) => {
      const folder = await mkdtemp(join(tmpdir(), 'tailpiece-van-'))
      await cp(begun, folder, { recursive: true })
      const one = valueOf(await openDesk({ dataFolder: folder, mayChoosePath: false }))
      const two = valueOf(await openDesk({ dataFolder: folder, mayChoosePath: false }))
      try {
        await story({ ...one.desk(), today }, { ...two.desk(), today })
      } finally {
        await one.close()
        await two.close()
        await rm(folder, { recursive: true })
      }
    },
  }
}

/** Issues a job under a name of its own, and has the customer accept it; gives the quote's name back. */
export async function accepted(desk: Desk, jobId: string, customerName: string): Promise<string> {
  const job = { ...sampleJob, jobId, customer: { ...sampleJob.customer, name: customerName } }
  const { quoteId } = await ask(desk, 'quote.issue', { job })
  await ask(desk, 'quote.mark', { quoteId, kind: 'accepted' })
  return quoteId
}

/** Ticks every line of a pick list off, as it is needed. */
export async function tickAll(desk: Desk, pickingNo: number): Promise<void> {
  const { picking } = await ask(desk, 'picking.read', { pickingNo })
  for (const { lineNo } of picking.lines) await ask(desk, 'picking.tick', { pickingNo, lineNo })
}

/** What an issued quote buys, as it was frozen. */
export async function purchasesOf(desk: Desk, quoteId: string): Promise<readonly Purchase[]> {
  if (desk.store === null) throw new Error('This desk has no data file')
  const issued = await reading(desk.store, (tx) => readIssued(tx, quoteId))
  if (issued === null) throw new Error(`There is no quote ${quoteId}`)
  return issued.snapshot.quote.internal.purchases
}

export const sum = (numbers: readonly number[]): number => numbers.reduce((all, one) => all + one, 0)
