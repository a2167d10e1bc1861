import { figure } from '../../domain/figures.ts'
import type { Figures } from '../../domain/figures.ts'
import { accept } from '../../domain/outcome.ts'
import type { Outcome, Problem } from '../../domain/outcome.ts'
import { sellingOf } from '../quote/selling-price.ts'
import type { JobFacts } from '../takeoff/job-facts.ts'
import type { EmitterStock } from './emitter-stock.ts'
import { trialFacts } from './fitted-cost.ts'
import type { Trial } from './fitted-cost.ts'
import { itemsOnce, leastOfNeeds } from './least-cost.ts'
import { itemsFor, leastOfMakeUp } from './least-make-up.ts'
import type { Least } from './least-make-up.ts'
import { leastReachPence, reachOn } from './least-reach.ts'
import type { Reach } from './least-reach.ts'
import type { TrialPrices } from './trial-prices.ts'
import { bareFacts } from './make-up.ts'
import type { WallLimits } from './wall-limits.ts'

export type Bounds = {
  /** Places in the stock of those that can be set out. */
  readonly places: Uint32Array
  /** The least that each of them costs fitted, pence. */
  readonly leastPence: Float64Array
  /** A closer least price of one of them, by its place in `places`. */
  readonly closer: (index: number) => number
  readonly failed: readonly { readonly at: number; readonly problems: readonly Problem[] }[]
}

/** What all emitters of one make-up and of like mass have in common. */
type Kin = {
  readonly besidePence: number
  readonly facts: JobFacts
  /** What anything but the pipes' way to the valves could be met with. */
  readonly items: ReadonlySet<string>
  readonly reachPence: Map<string, number>
}

/**
 * Gives each emitter that suits the least that it can cost fitted: its own price as it is sold, and what its make-up needs; and, where
 * that is asked for, what bringing the pipes to it costs as well. Those that cannot be set out are put apart.
 * Refuses a wall for which there is no fixing: it takes none of them.
 * @param stock the emitters in columns, and the places of those that suit
 * @param trial the swap without its emitter
 * @param more the wall's limits, and what the rules of the swap say
 * @source practice, no published source
 * @example boundPrices({ suitable: [] }, { shelf: { prices: new Map(), parts: new Map() }, wall: {}, figures: { settings: { 'lift.onePersonKg': { value: 25 }, 'pipe.kerfMm': { value: 3 }, 'money.markUpEmitterBasisPoints': { value: 2000 } } } }, { limits: {}, prices: {} }).value.failed // => []
 */
export function boundPrices(
  { stock, suitable }: { readonly stock: EmitterStock; readonly suitable: readonly number[] },
  trial: Trial,
  { limits, prices }: { readonly limits: WallLimits; readonly prices: TrialPrices },
): Outcome<Bounds> {
  const { figures, swap, shelf } = trial
  const onePersonKg = figure(figures, 'lift.onePersonKg')
  const itemsOf = itemsOnce(shelf)
  const least: Least = { ...prices, leastOf: leastOfNeeds(shelf, figures, itemsOf), itemsOf, figures }
  const sold = leastSold(figures)
  const kinOf = new Map<number, Kin>()
  const places = new Uint32Array(suitable.length)
  const leastPence = new Float64Array(suitable.length)
  const failed: Bounds['failed'][number][] = []
  const kinAt = (at: number) => 2 * (stock.makeUpAt[at] ?? 0) + ((stock.dryKg[at] ?? 0) > onePersonKg ? 1 : 0)
  let many = 0
  for (const at of suitable) {
    const known = kinOf.get(kinAt(at))
    const kin = known === undefined ? kinLike(stock, at, { trial, least }) : accept(known)
    if (kin.ok) {
      kinOf.set(kinAt(at), kin.value)
      places[many] = at
      leastPence[many] = sold(stock.packPence[at] ?? 0) + kin.value.besidePence
      many += 1
    } else if (kin.problems.some((problem) => problem.code === 'gap')) return kin
    else failed.push({ at, problems: kin.problems })
  }
  const reaches = new Map<number, { readonly name: string; readonly reach: readonly Reach[] }>()
  const closer = (index: number): number => {
    const at = places[index] ?? 0
    const kin = kinOf.get(kinAt(at))
    const like = stock.reaches[stock.reachAt[at] ?? 0]
    if (kin === undefined || like === undefined) return 0
    const asked =
      reaches.get(stock.reachAt[at] ?? 0) ?? named(reachOn(like, { limits, pipes: swap.pipes }, figures))
    reaches.set(stock.reachAt[at] ?? 0, asked)
    const pence = kin.reachPence.get(asked.name) ?? leastReachPence(kin, asked.reach, least)
    kin.reachPence.set(asked.name, pence)
    return (leastPence[index] ?? 0) + pence
  }
  return accept({
    places: places.subarray(0, many),
    leastPence: leastPence.subarray(0, many),
    closer,
    failed,
  })
}

function named(reach: readonly Reach[]) {
  const name = reach.map(
    (one) =>
      `${one.side} ${one.remedy} ${one.elbows} ${one.couplers} ${one.newPipeMm} ${one.clips} ${one.tailMm}`,
  )
  return { name: name.join('|'), reach }
}

function kinLike(
  stock: EmitterStock,
  at: number,
  { trial, least }: { readonly trial: Trial; readonly least: Least },
): Outcome<Kin> {
  const { figures, wall } = trial
  const emitter = stock.emitters[at]
  if (emitter === undefined) throw new Error('The stock has no emitter there')
  const tried = trialFacts(emitter, trial)
  if (!tried.ok) return tried
  const mixed = wall.studs !== undefined || wall.tiledToMm !== undefined
  const bare = bareFacts(tried.value.facts, figures).map((way) => (mixed ? untiled(way) : way))
  const beside = leastOfMakeUp(bare, mixed, least)
  if (!beside.ok) return beside
  const items = itemsFor(
    bare.flatMap((way) => least.needsOf(way)),
    least,
  )
  return accept({
    besidePence: beside.value,
    facts: bare[0] ?? tried.value.facts,
    items,
    reachPence: new Map(),
  })
}

/** Above the tiling a hole is drilled through plaster, which takes less time. */
function untiled(facts: JobFacts): JobFacts {
  const swaps = facts.swaps.map((swap) => ({
    ...swap,
    holes: swap.holes.map((hole) => ({ ...hole, wallFinish: 'paint' as const })),
  }))
  return { ...facts, swaps }
}

/** What an emitter is sold for, a penny less for rounding: cost x (1 + mark-up), or cost / (1 - margin). */
function leastSold(figures: Figures): (packPence: number) => number {
  const { by, basisPoints } = sellingOf('emitter', figures, undefined)
  const share = basisPoints / 10_000
  const times = by === 'margin' ? 1 / (1 - share) : 1 + share
  return (packPence) => packPence * times - 1
}
