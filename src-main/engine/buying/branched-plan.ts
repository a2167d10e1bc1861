import type { BarTotals } from './bar-totals.ts'
import { planOf, worthOf } from './cutting.ts'
import type { CutBar, Cutting, Plan } from './cutting.ts'
import { fillBox } from './fill-box.ts'
import { relaxedPlan } from './relaxed-plan.ts'
import type { BarLimits, Pool, Relaxed } from './relaxed-plan.ts'

const near = 1e-6
/** How many linear programs one box of just so many bars may take. */
const mostInPoint = 300

export type Branched = {
  readonly plan: Plan
  /** No plan costs less. It is the plan's own cost when the plan is proven. */
  readonly bound: number
}

export type BranchInput = {
  readonly cutting: Cutting
  readonly first: Plan
  readonly totals: BarTotals
  readonly pool?: readonly CutBar[]
  /** How many linear programs it may solve. */
  readonly programs: number
}

type Tree = {
  readonly cutting: Cutting
  readonly totals: BarTotals
  readonly need: number
  readonly pool: Pool
  readonly budget: { programs: number }
  best: Plan
  /** The dearest total that would still be an improvement; -1 when there is none. */
  goal: number
  /** Bounds of boxes that could neither be split further nor be filled: they may hold a plan of that cost, or none. */
  readonly stuck: number[]
}

/**
 * The cheapest plan by branch and price: boxes of limits on the number of bars of each stock, the box with the least bound
 * first. A box ends when its bound passes the goal; otherwise its linear program is dived into for a plan, and it is split
 * at the number of bars that is broken. What is left open when the programs run out gives the bound.
 *
 * @param input the job, a plan to beat, the totals that bars can come to, and how many linear programs may be solved
 * @source Barnhart and others, Branch-and-price, Operations Research 46 (1998); Belov and Scheithauer, A branch-and-cut-and-price algorithm for one-dimensional stock cutting (2006), from memory
 * @example branchedPlan({ cutting: { sizes: [5], counts: [2], stock: [{ room: 10, cost: 2 }] }, first: { cost: 4, bars: [] }, totals: { atLeast: (cost) => cost, below: (cost) => cost - 1, roomFor: () => 99 }, programs: 9 }).bound // => 2
 */
export function branchedPlan(input: BranchInput): Branched {
  const { cutting, first, totals, programs } = input
  const need = worthOf(cutting.counts, cutting.sizes)
  const pool: Pool = new Map(
    (input.pool ?? []).map((bar) => [`${bar.stock}:${bar.taken.join()}`, bar] as const),
  )
  const tree: Tree = {
    cutting,
    totals,
    need,
    pool,
    budget: { programs },
    best: first,
    goal: totals.below(first.cost, need),
    stuck: [],
  }
  const least = cutting.stock.map(() => 0)
  const most = cutting.stock.map(({ cost }) => Math.floor(Math.max(0, tree.goal) / cost))
  const open = [boxOf(tree, { least, most }, 0)]
  while (tree.budget.programs > 0) {
    const box = takeLeast(open)
    if (box === undefined || box.bound > tree.goal) break
    for (const limits of split(tree, box)) open.push(boxOf(tree, limits, box.bound))
  }
  const bound = Math.min(...open.map((box) => box.bound), ...tree.stuck)
  return { plan: tree.best, bound: bound > tree.goal ? tree.best.cost : bound }
}

type Box = { readonly limits: BarLimits; readonly bound: number; readonly relaxed: Relaxed }

function boxOf(tree: Tree, limits: BarLimits, least: number): Box {
  const { cutting, pool, goal, totals, need } = tree
  tree.budget.programs -= 1
  const relaxed = relaxedPlan({ cutting, limits, pool, goal })
  const bound = totals.atLeast(Math.max(least, Math.ceil(relaxed.bound - near)), need)
  return { limits, bound, relaxed }
}

function takeLeast(open: Box[]): Box | undefined {
  const at = open.reduce((best, box, place) => (box.bound < (open[best]?.bound ?? 0) ? place : best), 0)
  return open.splice(at, 1)[0]
}

/** The parts of a box still to be looked at, after a plan was looked for in it. */
function split(tree: Tree, { limits, bound, relaxed }: Box): readonly BarLimits[] {
  const used = limits.least.map((_, place) =>
    relaxed.ways.reduce((sum, { bar, uses }) => (bar.stock === place ? sum + uses : sum), 0),
  )
  const broken = mostBroken(used)
  dive(tree, { left: tree.cutting.counts, most: limits.most, bars: [], relaxed, misses: 2 })
  if (bound > tree.goal) return []
  if (broken >= 0) {
    const whole = Math.floor(used[broken] as number)
    return [atMost(limits, broken, whole), atLeast(limits, broken, whole + 1)]
  }
  if (isPoint(limits)) fillPoint(tree, { limits, bound, relaxed })
  return around(limits, used.map(Math.round))
}

/** A box of just so many bars of each stock: filled, or shown that it cannot be, or kept as an open question. */
function fillPoint(tree: Tree, { limits, bound, relaxed }: Box): void {
  const { cutting, pool, goal } = tree
  const budget = { programs: Math.min(tree.budget.programs, mostInPoint) }
  tree.budget.programs -= budget.programs
  const { bars, complete } = fillBox({ cutting, most: limits.most, goal, pool, relaxed, budget })
  tree.budget.programs += budget.programs
  if (bars !== null) improved(tree, bars)
  else if (!complete) tree.stuck.push(bound)
}

function around(limits: BarLimits, used: readonly number[]): readonly BarLimits[] {
  const place = limits.least.findIndex((least, at) => least < (limits.most[at] as number))
  if (place < 0) return []
  const whole = used[place] as number
  return [
    atMost(limits, place, whole - 1),
    atMost(atLeast(limits, place, whole), place, whole),
    atLeast(limits, place, whole + 1),
  ].filter(({ least, most }) => (least[place] as number) <= (most[place] as number))
}

function mostBroken(used: readonly number[]): number {
  const gaps = used.map((many) => Math.abs(many - Math.round(many)))
  const most = Math.max(...gaps)
  return most < near ? -1 : gaps.indexOf(most)
}

function atMost({ least, most }: BarLimits, place: number, bars: number): BarLimits {
  return { least, most: most.with(place, Math.min(bars, most[place] as number)) }
}

function atLeast({ least, most }: BarLimits, place: number, bars: number): BarLimits {
  return { least: least.with(place, Math.max(bars, least[place] as number)), most }
}

type Dive = {
  readonly left: readonly number[]
  readonly most: readonly number[]
  readonly bars: readonly CutBar[]
  readonly relaxed: Relaxed
  /** How often the likeliest way on may still be passed over. */
  readonly misses: number
}

/** Fixes whole bars, then the bar that is nearest to whole, and looks again; true when the goal moved. */
function dive(tree: Tree, { left, most, bars, relaxed, misses }: Dive): boolean {
  const ways = relaxed.ways.toSorted((a, b) => b.uses - a.uses)
  const fixed = ways.flatMap(({ bar, uses }) => Array.from({ length: Math.floor(uses + near) }, () => bar))
  const parts = ways.toSorted((a, b) => partOf(b.uses) - partOf(a.uses)).map(({ bar }) => [bar])
  const tries = (fixed.length > 0 ? [fixed, ...parts] : parts).slice(0, misses + 1)
  for (const [index, add] of tries.entries()) {
    if (tree.budget.programs <= 0) return false
    const after = withBars({ left, most, bars }, add)
    if (after.left.every((count) => count === 0)) {
      if (improved(tree, after.bars)) return true
      continue
    }
    tree.budget.programs -= 1
    const spent = planOf(tree.cutting, after.bars).cost
    const goal = tree.goal - spent
    const limits = { least: most.map(() => 0), most: after.most }
    const next = relaxedPlan({
      cutting: { ...tree.cutting, counts: after.left },
      limits,
      pool: tree.pool,
      goal,
    })
    if (next.bound > goal) continue
    if (dive(tree, { ...after, relaxed: next, misses: misses - index })) return true
  }
  return false
}

function partOf(uses: number): number {
  return uses - Math.floor(uses + near)
}

function isPoint({ least, most }: BarLimits): boolean {
  return least.every((bars, place) => bars === most[place])
}

function withBars(
  { left, most, bars }: Omit<Dive, 'relaxed' | 'misses'>,
  add: readonly CutBar[],
): Omit<Dive, 'relaxed' | 'misses'> {
  const counts = [...left]
  const room = [...most]
  const kept = add.filter(({ stock, taken }) => {
    if ((room[stock] as number) < 1 || taken.some((many, place) => many > (counts[place] as number)))
      return false
    room[stock] = (room[stock] as number) - 1
    taken.forEach((many, place) => (counts[place] = (counts[place] as number) - many))
    return true
  })
  return { left: counts, most: room, bars: [...bars, ...kept] }
}

function improved(tree: Tree, bars: readonly CutBar[]): boolean {
  const plan = planOf(tree.cutting, bars)
  if (plan.cost >= tree.best.cost) return false
  tree.best = plan
  tree.goal = tree.totals.below(plan.cost, tree.need)
  return true
}
