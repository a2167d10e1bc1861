import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import { figure, figureWhy } from '../../domain/figures.ts'
import type { Figures } from '../../domain/figures.ts'
import type { EmitterShape } from '../../domain/item.ts'
import type { PipeOffset, PipeRemedy } from '../../domain/set-out.ts'
import type { Pipe } from '../../domain/wall.ts'
import { mmInWords } from './in-words.ts'
import { pipeRun } from './pipe-run.ts'
import type { PipeRun } from './pipe-run.ts'
import { valvesUnder } from './place-emitter.ts'
import type { ValvePlace } from './place-emitter.ts'

/** How far a pipe's end and its valve are apart. A pipe from the floor can also miss front to back, where both were measured. */
export type Miss = {
  /** Valve less pipe along the wall, mm; to the right is positive. */
  readonly acrossMm: number
  /** Valve entry less pipe end in height, mm; 0 where the end's height is not known. */
  readonly riseMm: number
  /** Connection less pipe from the wall, mm, for a pipe from the floor; 0 where it is not known. */
  readonly outMm: number
}

/**
 * How a pipe is brought to its valve. Beside the wall's plane only for pipes from the floor: miss sideways = hypot(across, out); a
 * pipe from the wall misses by hypot(across, rise), one from the floor in height only by being short.
 * `none` within the valve's reach; `longerTail` where the tail points the way the pipe lies (outwards along the wall for a
 * valve beside the emitter, down for one under it) and the rest is within reach; `pull` for a pipe that is not fixed, by
 * material; else `repipe`, whose parts follow from `pipeRun`.
 *
 * @param pipe as found
 * @param valve where the valve's pipe entry comes, mm
 * @param context the emitter and the firm's figures: wall.…ReachMm, wall.pull…Mm and those of the run
 * @source practice, no published source
 * @example pipeOffset({ side: 'left', xMm: 420, from: 'floor', material: 'copper' }, { side: 'left', xMm: 422, yMm: 235 }, { emitter: { widthMm: 500, pipeCentresMm: 450 }, figures: { settings: { 'wall.valveReachMm': { value: 3 }, 'wall.riseReachMm': { value: 5 }, 'wall.tailReachMm': { value: 40 }, 'wall.pullCopperMm': { value: 15 } } } }).offsetMm // => 2
 */
export function pipeOffset(
  pipe: Pipe,
  valve: ValvePlace,
  { emitter, figures }: { readonly emitter: EmitterShape; readonly figures: Figures },
): PipeOffset {
  const miss = missOf(pipe, valve, emitter)
  const under = valvesUnder(emitter)
  const remedy = remedyFor(pipe, miss, { under, figures })
  const run = remedy === 'repipe' ? pipeRun({ pipe, miss, valveMm: valve.yMm, emitter }, figures) : noRun
  const tailMm = remedy === 'longerTail' ? (under ? miss.riseMm : Math.abs(miss.acrossMm)) : 0
  const { elbows, couplers, pipeMm, clips } = run
  const why = whyOf(pipe, valve, { miss, remedy, run, tailMm, figures, emitter })
  return {
    side: pipe.side,
    offsetMm: miss.acrossMm,
    riseMm: miss.riseMm,
    outMm: miss.outMm,
    remedy,
    elbows,
    couplers,
    pipeMm,
    clips,
    tailMm,
    why,
  }
}

type Choice = { readonly under: boolean; readonly figures: Figures }

/**
 * The gentlest remedy that brings a pipe to its valve.
 * @param pipe side, origin, material and whether it is fixed
 * @param miss how far they are apart, mm
 * @param choice whether the valve hangs under the emitter; the firm's figures: wall.…ReachMm, wall.pull…Mm
 * @source practice, no published source
 * @example remedyFor({ side: 'left', from: 'floor', material: 'copper' }, { acrossMm: 10, riseMm: 0, outMm: 0 }, { under: true, figures: { settings: { 'wall.valveReachMm': { value: 3 }, 'wall.riseReachMm': { value: 5 }, 'wall.tailReachMm': { value: 40 }, 'wall.pullCopperMm': { value: 15 } } } }) // => "pull"
 */
export function remedyFor(pipe: Pipe, miss: Miss, { under, figures }: Choice): PipeRemedy {
  const reach = figure(figures, 'wall.valveReachMm')
  const riseReach = figure(figures, 'wall.riseReachMm')
  const tailReach = figure(figures, 'wall.tailReachMm')
  const sideways = pipe.from === 'floor' ? Math.hypot(miss.acrossMm, miss.outMm) : Math.abs(miss.acrossMm)
  const height = pipe.from === 'floor' ? Math.max(0, miss.riseMm) : Math.abs(miss.riseMm)
  const heightReach = pipe.from === 'floor' ? riseReach : reach
  if (sideways <= reach && height <= heightReach) return 'none'
  if (under && miss.riseMm > 0 && miss.riseMm <= tailReach && sideways <= reach) return 'longerTail'
  const outwards = pipe.side === 'left' ? miss.acrossMm : -miss.acrossMm
  const along = outwards > 0 && outwards <= tailReach && Math.abs(miss.outMm) <= reach
  if (!under && along && height <= heightReach) return 'longerTail'
  const pullable =
    pipe.fixed !== true && Math.hypot(sideways, height) <= figure(figures, pullIds[pipe.material])
  return pullable ? 'pull' : 'repipe'
}

const pullIds = {
  copper: 'wall.pullCopperMm',
  plastic: 'wall.pullPlasticMm',
  steel: 'wall.pullSteelMm',
} as const satisfies Record<Pipe['material'], string>

const noRun: PipeRun = { elbows: 0, couplers: 0, pipeMm: 0, clips: 0, from: [] }

function missOf(pipe: Pipe, valve: ValvePlace, emitter: EmitterShape): Miss {
  const outKnown = pipe.from === 'floor' && pipe.offWallMm !== undefined
  return {
    acrossMm: valve.xMm - pipe.xMm,
    riseMm: pipe.yMm === undefined ? 0 : valve.yMm - pipe.yMm,
    outMm: outKnown ? emitter.connectionOffWallMm - (pipe.offWallMm ?? 0) : 0,
  }
}

type Found = {
  readonly miss: Miss
  readonly remedy: PipeRemedy
  readonly run: PipeRun
  readonly tailMm: number
  readonly figures: Figures
  readonly emitter: EmitterShape
}

function whyOf(pipe: Pipe, valve: ValvePlace, found: Found): Derivation {
  const { miss, remedy, run, figures, emitter } = found
  const heights =
    pipe.yMm === undefined
      ? []
      : [
          given(`End of the ${pipe.side} pipe, from the floor`, pipe.yMm, 'mm', 'survey'),
          given('Pipe entry of the valve, from the floor', valve.yMm, 'mm'),
        ]
  const outs =
    pipe.from === 'floor' && pipe.offWallMm !== undefined
      ? [
          given(`The ${pipe.side} pipe, off the wall`, pipe.offWallMm, 'mm', 'survey'),
          given("The emitter's connections, off the wall", emitter.connectionOffWallMm, 'mm', 'catalogue'),
        ]
      : []
  return because(sentence(pipe, found), miss.acrossMm, {
    unit: 'mm',
    from: [
      given(`Middle of the ${pipe.side} valve, from the left end of the wall`, valve.xMm, 'mm'),
      given(`The ${pipe.side} pipe, from the left end of the wall`, pipe.xMm, 'mm', 'survey'),
      ...heights,
      ...outs,
      ...reaches(pipe, remedy).map((id) => figureWhy(figures, id)),
      ...run.from,
    ],
  })
}

function reaches(pipe: Pipe, remedy: PipeRemedy): readonly string[] {
  if (remedy === 'none') return ['wall.valveReachMm', 'wall.riseReachMm']
  const tail = ['wall.valveReachMm', 'wall.riseReachMm', 'wall.tailReachMm']
  return remedy === 'longerTail' || pipe.fixed === true ? tail : [...tail, pullIds[pipe.material]]
}

function sentence(pipe: Pipe, { miss, remedy, run, tailMm }: Found): string {
  const side = `the ${pipe.side} valve`
  const apart = `${mmInWords(Math.abs(miss.acrossMm))} ${miss.acrossMm < 0 ? 'left' : 'right'} of its pipe`
  const place = miss.acrossMm === 0 ? `${side} sits over its pipe` : `${side} sits ${apart}`
  const rise = miss.riseMm > 0 ? ` and ${mmInWords(miss.riseMm)} above its end` : ''
  const out =
    miss.outMm === 0
      ? ''
      : `, ${mmInWords(Math.abs(miss.outMm))} ${miss.outMm > 0 ? 'further out' : 'nearer the wall'}`
  const whole = `${place}${rise}${out}`
  return `${whole.charAt(0).toUpperCase()}${whole.slice(1)}: ${does(remedy, run, tailMm)}.`
}

function does(remedy: PipeRemedy, run: PipeRun, tailMm: number): string {
  if (remedy === 'none') return 'it goes straight in'
  if (remedy === 'longerTail') return `a tail ${mmInWords(tailMm)} longer reaches it`
  if (remedy === 'pull') return 'the pipe is eased over'
  const parts = [
    count(run.elbows, 'elbow'),
    count(run.couplers, 'coupler'),
    `${mmInWords(run.pipeMm)} of pipe`,
  ]
  return `it is cut and re-piped with ${parts.filter((part) => part !== '').join(', ')}`
}

function count(number: number, name: string): string {
  return number === 0 ? '' : `${number} ${name}${number === 1 ? '' : 's'}`
}
