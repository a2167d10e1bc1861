import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import { figure, figureWhy } from '../../domain/figures.ts'
import type { Figures } from '../../domain/figures.ts'
import type { Emitter } from '../../domain/item.ts'
import type { Job, Room, Swap } from '../../domain/job.ts'
import { accept } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { QuoteLine } from '../../domain/quote.ts'
import type { SetOut } from '../../domain/set-out.ts'
import { jobWork, labourFor } from '../labour/job-labour.ts'
import { penceForMinutes } from '../quote/labour-lines.ts'
import { partLines } from '../quote/price-lines.ts'
import { jobFacts } from '../takeoff/job-facts.ts'
import type { JobFacts } from '../takeoff/job-facts.ts'
import type { Shelf } from '../takeoff/shelf.ts'
import { takeOff } from '../takeoff/take-off.ts'
import { formOnWall } from '../wall/emitter-on-wall.ts'
import { oldHolesOnWall } from '../wall/old-hole-warnings.ts'
import { setOutWall } from '../wall/set-out-wall.ts'

/** The one swap that each emitter is tried in. */
export type Trial = {
  /** The job with this swap alone. */
  readonly job: Job
  readonly swap: Omit<Swap, 'emitterId'>
  readonly room: Room
  readonly wall: Room['walls'][number]
  readonly shelf: Shelf
  readonly figures: Figures
}

/** What one emitter costs on the wall, before tax. */
export type Fitted = {
  readonly fittedPence: number
  readonly emitterPence: number
  readonly partsPence: number
  readonly labourPence: number
  readonly labourMin: number
  /** What the catalogue cannot supply, and so is not in the price. */
  readonly gaps: readonly string[]
  readonly warnings: readonly string[]
  readonly why: Derivation
}

/**
 * The facts of a swap with one emitter in it, and its set-out.
 * Refuses what `setOutWall` refuses.
 * @param emitter of the catalogue
 * @param trial the swap without its emitter
 * @source practice, no published source
 * @example trialFacts({ form: { kind: 'panel' }, widthMm: 0 / 1 }, { job: {}, swap: { bottomMm: NaN, pipes: [] }, figures: {} }).ok // => false
 */
export function trialFacts(
  emitter: Emitter,
  trial: Trial,
): Outcome<{ readonly facts: JobFacts; readonly setOut: SetOut }> {
  const { job, room, wall, figures } = trial
  const { pipes, centre, bottomMm } = trial.swap
  const oldHoles = oldHolesOnWall(trial.swap.existing)
  const place = { wall, emitter, valves: {}, centre, bottomMm, pipes, oldHoles }
  const out = setOutWall({ ...place, ...formOnWall(emitter) }, figures)
  if (!out.ok) return out
  const swap = { ...trial.swap, emitterId: emitter.itemId }
  const facts = jobFacts(job, [{ swap, room, wall, emitter, setOut: out.value }], figures)
  return accept({ facts, setOut: out.value })
}

/**
 * What an emitter costs fitted, before tax: its parts and its labour as the quote would charge them if this swap were done alone,
 * what a job needs once (draining, dosing) among them; without travel by the kilometre, contingency and options.
 * Refuses what `setOutWall` and the labour estimate refuse.
 * @param emitter of the catalogue
 * @param trial the swap without its emitter
 * @source practice, no published source
 * @example fittedCost({ form: { kind: 'panel' } }, { job: {}, swap: { bottomMm: NaN, pipes: [] }, figures: {} }).ok // => false
 */
export function fittedCost(emitter: Emitter, trial: Trial): Outcome<Fitted> {
  const { shelf, figures } = trial
  const tried = trialFacts(emitter, trial)
  if (!tried.ok) return tried
  const { facts, setOut } = tried.value
  const parts = takeOff(facts, shelf, figures)
  const lines = partLines(parts.takeOff.lines, parts.purchases, figures)
  const labour = labourFor(jobWork(facts, figures), figures)
  if (!labour.ok) return labour
  const rateId = 'money.labourPencePerHour'
  const labourPence = penceForMinutes(labour.value.expectedMin, figure(figures, rateId))
  const labourWhy = because('Expected time x what an hour is charged at.', labourPence, {
    unit: 'pence',
    from: [
      given('Expected time', labour.value.expectedMin, 'min'),
      labour.value.why,
      figureWhy(figures, rateId),
    ],
  })
  const emitterPence = sumOf(lines.filter((line) => line.section === 'emitter'))
  const partsPence = sumOf(lines) - emitterPence
  const fittedPence = emitterPence + partsPence + labourPence
  return accept({
    fittedPence,
    emitterPence,
    partsPence,
    labourPence,
    labourMin: labour.value.expectedMin,
    gaps: parts.takeOff.lines.flatMap((line) => line.gap ?? []),
    warnings: setOut.warnings,
    why: because('Emitter, parts and labour of this swap done alone, before tax.', fittedPence, {
      unit: 'pence',
      from: [...lines.map((line) => line.why), labourWhy],
    }),
  })
}

function sumOf(lines: readonly QuoteLine[]): number {
  return lines.reduce((sum, line) => sum + line.netPence, 0)
}
