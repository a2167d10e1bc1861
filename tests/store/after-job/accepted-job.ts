import { cp, mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import sample from '../../../resources/sample/two-rooms.job.json' with { type: 'json' }
import type { AnswerOf, InputOf, RequestName } from '../../../src-main/contract/requests.ts'
import type { Desk } from '../../../src-main/desk/desk.ts'
import { openDesk } from '../../../src-main/desk/open-desk.ts'
import { answer } from '../../../src-main/desk/router.ts'
import type { AfterJob, Commissioning } from '../../../src-main/domain/follow-up/after-job.ts'
import { job as jobSchema } from '../../../src-main/domain/job.ts'
import type { Job } from '../../../src-main/domain/job.ts'
import { valueOf } from '../store-for-tests.ts'

export const firm = {
  name: 'Sampleton Test Heating',
  addressLines: ['2 Example Row', 'Sampleton'],
  phone: '01632 960003',
  email: 'office@sampleton.example.com',
  taxNumber: 'GB 000 0000 00',
}
export const sampleJob: Job = { ...jobSchema.parse(sample), firm }

export async function ask<N extends RequestName>(
  desk: Desk,
  name: N,
  input: InputOf<N>,
): Promise<AnswerOf<N>> {
  return valueOf(await answer(name, input, desk)) as AnswerOf<N>
}

/** A data file with the shipped catalogue, to be copied for every story. */
export async function begunFolder(): Promise<string> {
  const begun = await mkdtemp(join(tmpdir(), 'tailpiece-after-'))
  const open = valueOf(await openDesk({ dataFolder: begun, mayChoosePath: false }))
  await open.close()
  return begun
}

type Windows = readonly [first: Desk, second: Desk]

/** What two windows on one data file do. */
export async function inTwoWindows(begun: string, story: (windows: Windows) => Promise<void>): Promise<void> {
  const folder = await mkdtemp(join(tmpdir(), 'tailpiece-after-'))
  await cp(begun, folder, { recursive: true })
  const first = valueOf(await openDesk({ dataFolder: folder, mayChoosePath: false }))
  const second = valueOf(await openDesk({ dataFolder: folder, mayChoosePath: false }))
  const today = '2026-03-20'
  try {
    await story([
      { ...first.desk(), today },
      { ...second.desk(), today },
    ])
  } finally {
    await first.close()
    await second.close()
    await rm(folder, { recursive: true })
  }
}

/** Saves a job, issues its quote and has it accepted; gives the quote's name. */
export async function acceptedQuote(desk: Desk, job: Job = sampleJob): Promise<string> {
  await ask(desk, 'job.save', { job })
  const { quoteId } = await ask({ ...desk, today: '2026-03-02' }, 'quote.issue', { job })
  await ask({ ...desk, today: '2026-03-04' }, 'quote.mark', { quoteId, kind: 'accepted' })
  return quoteId
}

export const variations: AfterJob['variations'] = [
  {
    variationId: 'v-1',
    onDay: '2026-03-16',
    what: 'one more isolating valve under the basin',
    agreed: 'inWriting',
    said: 'Yes please, while you are there.',
    netPence: 3_217,
    rateKey: 'standard',
  },
  {
    variationId: 'v-2',
    onDay: '2026-03-17',
    what: 'The loft hatch is left as it is',
    agreed: 'spoken',
    said: '',
    netPence: -1_501,
    rateKey: 'reduced',
  },
]

export const commissioned: Commissioning = {
  onDay: '2026-03-18',
  by: 'A. Fitter',
  flush: { how: 'cleaner', says: 'Ran clear after twenty minutes' },
  dose: { product: 'Sample inhibitor', litres: 1.5, testedGood: true },
  pressureTest: { testBar: 3, minutes: 30, endBar: 2.9, coldFillBar: 1.2 },
  balancing: sampleJob.swaps.map(({ swapId }, at) => ({
    swapId,
    roomName: `Room ${at + 1}`,
    ...(at === 0 ? { flowC: 60, returnC: 48.5, turnsOpen: 1.25 } : {}),
  })),
  leaksLookedFor: true,
  fillingLoopOff: true,
  notes: 'The pump is on its second speed.',
}
