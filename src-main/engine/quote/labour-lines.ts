import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import { figure, figureWhy } from '../../domain/figures.ts'
import type { Figures } from '../../domain/figures.ts'
import type { LabourAnswer } from '../../domain/labour.ts'
import { accept } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { QuoteLine } from '../../domain/quote.ts'
import { labourFor } from '../labour/job-labour.ts'
import type { JobWork } from '../labour/job-labour.ts'
import { allocate } from '../money/allocate.ts'
import { mulDiv } from '../money/mul-div.ts'
import type { PlacedSwap } from '../takeoff/job-facts.ts'
import { usualCategory } from './line-categories.ts'

/**
 * Money for minutes of work, exact to a thousandth of a minute and rounded half up to a penny.
 * @param minutes at least 0
 * @param pencePerHour pence for each hour, a whole number
 * @source practice, no published source
 * @example penceForMinutes(90, 5200) // => 7800
 */
export function penceForMinutes(minutes: number, pencePerHour: number): number {
  return mulDiv(Math.round(minutes * 1000), pencePerHour, 60_000, 'half-up')
}

type Group = {
  readonly name: string
  readonly swapIds: readonly string[]
  readonly works: readonly JobWork[]
}

/**
 * Labour as priced lines: one for each swap, and one for what the job needs once. The lines add up to the penny to the
 * expected time x the rate.
 * @param works the work of the job
 * @param placed the swaps, in the job's order
 * @param more the whole job's estimate, and the firm's figures
 * @source practice, no published source
 * @example labourLines([], [], { labour: { expectedMin: 0 }, figures: { settings: { 'money.labourPencePerHour': { value: 5200 } } } }).value // => []
 */
export function labourLines(
  works: readonly JobWork[],
  placed: readonly PlacedSwap[],
  more: { readonly labour: LabourAnswer; readonly figures: Figures },
): Outcome<readonly QuoteLine[]> {
  const { labour, figures } = more
  const total = penceForMinutes(labour.expectedMin, figure(figures, 'money.labourPencePerHour'))
  const timed: { readonly group: Group; readonly answer: LabourAnswer }[] = []
  for (const group of groupsOf(works, placed)) {
    const answer = labourFor(group.works, figures)
    if (!answer.ok) return answer
    timed.push({ group, answer: answer.value })
  }
  const shares = allocate(
    total,
    timed.map(({ answer }) => Math.round(answer.expectedMin * 1000)),
  )
  const whole = given('Labour of the whole job', total, 'pence')
  const lines = timed.map(({ group, answer }, index) => {
    const netPence = shares[index] ?? 0
    const why = because('Its share of the expected time x what an hour is charged at.', netPence, {
      unit: 'pence',
      from: [answer.why, figureWhy(figures, 'money.labourPencePerHour'), whole],
    })
    return labourLine(group, { index, minutes: answer.expectedMin, netPence, why })
  })
  return accept(lines)
}

function groupsOf(works: readonly JobWork[], placed: readonly PlacedSwap[]): readonly Group[] {
  const own = (work: JobWork) => !work.shared && work.swapIds.length === 1
  const swaps = placed.map(({ swap, room, emitter }) => ({
    name: `Labour in the ${room.name}: ${emitter.name}`,
    swapIds: [swap.swapId],
    works: works.filter((work) => own(work) && work.swapIds[0] === swap.swapId),
  }))
  const shared = {
    name: 'Labour for the job as a whole: drain, fill, checks and travelling time',
    swapIds: [],
    works: works.filter((work) => !own(work)),
  }
  return [...swaps, shared].filter((group) => group.works.length > 0)
}

function labourLine(
  group: Group,
  line: {
    readonly index: number
    readonly minutes: number
    readonly netPence: number
    readonly why: Derivation
  },
): QuoteLine {
  return {
    lineId: `labour-${line.index + 1}`,
    section: 'labour',
    name: group.name,
    quantity: Math.round(line.minutes),
    unit: 'min',
    netPence: line.netPence,
    rateKey: usualCategory,
    shared: group.swapIds.length === 0,
    swapIds: group.swapIds,
    generic: false,
    why: line.why,
  }
}
