import { because } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import type { Figures, Fixing } from '../../domain/figures.ts'
import type { Boxed } from '../../domain/item.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { LoadAnswer } from '../../domain/set-out.ts'
import type { Wall } from '../../domain/wall.ts'
import type { BracketHole } from './bracket-holes.ts'
import { fixingLoad } from './fixing-load.ts'
import type { LoadInput } from './fixing-load.ts'
import { listInWords } from './in-words.ts'
import { studPlace, studsWhy } from './on-stud.ts'
import { finishAt } from './tiles/tile-grid.ts'

export type ChosenFixing = {
  /** Of all that are used, the one that is used the most beside what it may carry. */
  readonly fixing: Fixing
  readonly load: LoadAnswer
  readonly needsBoard: boolean
  /** What goes into each hole, and the larger of its own loads as a share of what it may carry there. */
  readonly each: ReadonlyMap<string, HoleFixing>
  readonly why: Derivation
}
export type HoleFixing = { readonly fixing: Fixing; readonly useRatio: number }

export type FixingInput = {
  readonly wall: Wall
  readonly holes: readonly BracketHole[]
  /** What is packed with the emitter: its own fixings are tried first. */
  readonly box: readonly Boxed[]
  /** The load without what a fixing may carry. */
  readonly load: Omit<LoadInput, 'allowedShearN' | 'allowedPullN'>
}

type Tried = { readonly fixing: Fixing; readonly load: LoadAnswer }

/** Holes that take the same fixing: on a stud or not, through tile or not. */
type Alike = {
  readonly intoStud: boolean
  readonly finish: Wall['finish']
  readonly holes: readonly BracketHole[]
  readonly bearsPull: boolean
}
type Picked = {
  readonly alike: Alike
  readonly tried: readonly Tried[]
  readonly chosen: Tried
  readonly needsBoard: boolean
}

/**
 * The fixing for each hole by where it falls: well inside a stud a screw into it, else what the wall takes; by tile or plaster where the
 * figures tell them apart. For holes alike, the fixing packed with the emitter, if it is meant for this wall and holds; else the lightest
 * that holds; figures list them from light to heavy. Every hole carries its share of the weight and every upper one of the pull,
 * each beside what its own fixing may carry; lower holes carry no pull. Where none holds for some holes, or nothing suits them, a backing
 * board is called for, beside the fixing that is used the most and its load.
 * Refuses a wall for which the figures have no fixing.
 *
 * @param input wall, holes, box and load
 * @param figures the firm's figures: the fixings, wall.studEdgeMm
 * @source practice, no published source; loads by `fixingLoad`
 * @example chooseFixing({ wall: { build: 'solidMasonry', finish: 'paint' }, holes: [], box: [], load: {} }, { settings: {}, tasks: {}, fixings: [] }).problems[0].code // => "gap"
 */
export function chooseFixing(input: FixingInput, figures: Figures): Outcome<ChosenFixing> {
  const picks: Picked[] = []
  for (const alike of alikeHoles(input, figures)) {
    const picked = pickFor(alike, input, figures)
    if (!picked.ok) return picked
    picks.push(picked.value)
  }
  const [worst] = picks.toSorted((a, b) => Number(b.needsBoard) - Number(a.needsBoard) || useOf(b) - useOf(a))
  if (worst === undefined) throw new Error('An emitter without holes was to be fixed')
  const studs = input.wall.studs === undefined ? [] : [studsWhy(input.wall.studs, figures)]
  const each = new Map(picks.flatMap(eachHole))
  return accept({ ...worst.chosen, needsBoard: worst.needsBoard, each, why: whyOf(picks, input, studs) })
}

function alikeHoles({ wall, holes }: FixingInput, figures: Figures): readonly Alike[] {
  const anyUpper = holes.some((hole) => hole.upper)
  const groups = Map.groupBy(holes, (hole) => `${isOnStud(hole, wall, figures)} ${finishAt(hole.yMm, wall)}`)
  const places = groups.size === 0 ? [[]] : [...groups.values()]
  return places.map((some) => {
    const [first] = some
    return {
      intoStud: first !== undefined && isOnStud(first, wall, figures),
      finish: first === undefined ? wall.finish : finishAt(first.yMm, wall),
      holes: some,
      bearsPull: !anyUpper || some.some((hole) => hole.upper),
    }
  })
}

function isOnStud({ xMm }: BracketHole, { build, studs }: Wall, figures: Figures): boolean {
  return build === 'boardOnStuds' && studs !== undefined && studPlace(xMm, studs, figures) === 'stud'
}

function pickFor(alike: Alike, input: FixingInput, figures: Figures): Outcome<Picked> {
  const { build } = input.wall
  const forWall = figures.fixings.filter((fixing) => suits(fixing, build, alike.finish))
  if (forWall.length === 0) return noFixing(build, alike.finish)
  const forHoles = forWall.filter((fixing) => (fixing.intoStud ?? false) === alike.intoStud)
  const boxedFirst = [
    ...forHoles.filter((one) => inBox(one, input)),
    ...forHoles.filter((one) => !inBox(one, input)),
  ]
  const candidates = forHoles.length > 0 ? boxedFirst : forWall.slice(-1)
  const tried: Tried[] = []
  for (const fixing of candidates) {
    const { allowedShearN, allowedPullN } = fixing
    const load = fixingLoad({ ...input.load, allowedShearN, allowedPullN })
    if (!load.ok) return load
    tried.push({ fixing, load: alike.bearsPull ? load.value : withoutPull(load.value) })
    if (tried.at(-1)?.load.holds === true && forHoles.length > 0) break
  }
  const chosen = tried.at(-1)
  if (chosen === undefined) throw new Error('A fixing list that is not empty gave no fixing')
  return accept({ alike, tried, chosen, needsBoard: forHoles.length === 0 || !chosen.load.holds })
}

/** Lower holes do not hold against tipping. */
function withoutPull({ shearN, shearUse, why }: LoadAnswer): LoadAnswer {
  const holds = shearUse <= 1
  const says = `The lower fixings carry weight alone, no pull: ${holds ? 'it holds' : 'it does not hold'} in shear.`
  const shear = why.from.slice(0, 1)
  return {
    shearN,
    shearUse,
    pullN: 0,
    pullUse: 0,
    holds,
    why: because(says, holds ? 'holds' : 'does not hold', { from: shear }),
  }
}

function useOf({ chosen: { load } }: Picked): number {
  return Math.max(load.shearUse, load.pullUse)
}

function eachHole({ alike, chosen: { fixing, load } }: Picked): readonly (readonly [string, HoleFixing])[] {
  const anyUpper = alike.holes.some((hole) => hole.upper)
  return alike.holes.map((hole) => {
    const bears = hole.upper || !anyUpper
    return [hole.id, { fixing, useRatio: bears ? Math.max(load.shearUse, load.pullUse) : load.shearUse }]
  })
}

/** Whether plug and screw of a fixing are packed with the emitter for such a wall. */
function inBox({ plug, screw }: Fixing, { box, wall }: FixingInput): boolean {
  if (plug === undefined || screw === undefined) return false
  const packed = (kind: Boxed['kind'], sizes: Readonly<Record<string, number>>) =>
    box.some(
      (one) =>
        one.kind === kind &&
        (one.suits === undefined || one.suits.includes(wall.build)) &&
        Object.entries(sizes).every(([field, size]) => one.spec[field] === size),
    )
  return packed('plug', plug) && packed('screw', screw)
}

function suits({ builds, finishes }: Fixing, build: Wall['build'], finish: Wall['finish']): boolean {
  return builds.includes(build) && (finishes === undefined || finishes.includes(finish))
}

const buildWords = {
  solidMasonry: 'solid masonry',
  hollowBlock: 'hollow block',
  aeratedBlock: 'aerated block',
  boardOnStuds: 'board on studs',
  boardOnDabs: 'board on dabs',
} as const satisfies Record<Wall['build'], string>

function noFixing<T>(build: Wall['build'], finish: Wall['finish']): Outcome<T> {
  const says = `No fixing for ${buildWords[build]} with a finish of ${finish} is among the firm's figures; add one with the loads it may carry.`
  return refuse('gap', says, 'wall.build')
}

function whyOf(picks: readonly Picked[], input: FixingInput, studs: readonly Derivation[]): Derivation {
  const [only] = picks
  if (only !== undefined && picks.length === 1) return whyPicked(only, input, studs)
  const names = [...new Set(picks.map(({ chosen }) => chosen.fixing.name))]
  return because('Each hole takes the fixing that suits its place.', listInWords(names), {
    from: [
      ...studs,
      ...picks.map((picked) => {
        const ids = listInWords(picked.alike.holes.map((hole) => hole.id))
        const where = picked.alike.intoStud ? ', on a stud' : ''
        return because(`${ids}${where}, through ${surfaceWords[picked.alike.finish]}.`, ids, {
          from: [whyPicked(picked, input, [])],
        })
      }),
    ],
  })
}

const surfaceWords = {
  paint: 'painted wall',
  paper: 'papered wall',
  tile: 'tile',
  bare: 'bare wall',
} as const satisfies Record<Wall['finish'], string>

function whyPicked(
  { tried, chosen, needsBoard }: Picked,
  input: FixingInput,
  studs: readonly Derivation[],
): Derivation {
  const from = tried.map(({ fixing, load }) =>
    because(
      `${fixing.name}: ${load.holds ? 'it holds' : 'it does not hold'}.`,
      load.holds ? 'holds' : 'does not hold',
      { from: [load.why], source: fixing.source },
    ),
  )
  if (needsBoard) {
    return because(
      'No fixing that suits these holes holds: a backing board is called for.',
      'backing board',
      {
        from: [...studs, ...from],
      },
    )
  }
  const says = inBox(chosen.fixing, input)
    ? 'It is packed with the emitter, suits this wall and holds.'
    : 'The lightest fixing that holds.'
  return because(says, chosen.fixing.name, { from: [...studs, ...from] })
}
