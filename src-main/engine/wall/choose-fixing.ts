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
import { studPlace, studsWhy } from './on-stud.ts'

export type ChosenFixing = {
  readonly fixing: Fixing
  readonly load: LoadAnswer
  readonly needsBoard: boolean
  readonly why: Derivation
}

export type FixingInput = {
  readonly wall: Wall
  readonly holes: readonly BracketHole[]
  /** What is packed with the emitter: its own fixings are tried first. */
  readonly box: readonly Boxed[]
  /** The load without what a fixing may carry. */
  readonly load: Omit<LoadInput, 'allowedShearN' | 'allowedPullN'>
}

type Tried = { readonly fixing: Fixing; readonly load: LoadAnswer }

/**
 * The fixing packed with the emitter, if it is meant for this wall and holds; else the lightest fixing of this wall's build and
 * finish that holds in shear and in pull; figures list them from light to heavy. On
 * studs, screws into the stud only where every hole is well inside one, anchors only where not all are. Where none holds, or nothing
 * suits these holes, a backing board is called for, beside the heaviest fixing and its load.
 * Refuses a wall for which the figures have no fixing.
 *
 * @param input wall, holes, box and load
 * @param figures the firm's figures: the fixings, wall.studEdgeMm
 * @source practice, no published source; loads by `fixingLoad`
 * @example chooseFixing({ wall: { build: 'solidMasonry', finish: 'paint' }, holes: [], box: [], load: {} }, { settings: {}, tasks: {}, fixings: [] }).problems[0].code // => "gap"
 */
export function chooseFixing(input: FixingInput, figures: Figures): Outcome<ChosenFixing> {
  const { wall } = input
  const forWall = figures.fixings.filter((fixing) => suits(fixing, wall))
  if (forWall.length === 0) return noFixing(wall)
  const allOnStuds = wall.studs !== undefined && everyHoleOnStud(input, figures)
  const forHoles = forWall.filter(
    (fixing) => (fixing.intoStud ?? false) === (wall.build === 'boardOnStuds' && allOnStuds),
  )
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
    tried.push({ fixing, load: load.value })
    if (load.value.holds && forHoles.length > 0) break
  }
  const chosen = tried.at(-1)
  if (chosen === undefined) throw new Error('A fixing list that is not empty gave no fixing')
  const needsBoard = forHoles.length === 0 || !chosen.load.holds
  const studs = wall.studs === undefined ? [] : [studsWhy(wall.studs, figures)]
  const boxed = inBox(chosen.fixing, input)
  return accept({ ...chosen, needsBoard, why: whyOf(tried, { needsBoard, boxed }, studs) })
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

function suits(fixing: Fixing, wall: Wall): boolean {
  return (
    fixing.builds.includes(wall.build) &&
    (fixing.finishes === undefined || fixing.finishes.includes(wall.finish))
  )
}

function everyHoleOnStud({ wall: { studs }, holes }: FixingInput, figures: Figures): boolean {
  return studs !== undefined && holes.every((hole) => studPlace(hole.xMm, studs, figures) === 'stud')
}

const buildWords = {
  solidMasonry: 'solid masonry',
  hollowBlock: 'hollow block',
  aeratedBlock: 'aerated block',
  boardOnStuds: 'board on studs',
  boardOnDabs: 'board on dabs',
} as const satisfies Record<Wall['build'], string>

function noFixing({ build, finish }: Wall): Outcome<ChosenFixing> {
  const says = `No fixing for ${buildWords[build]} with a finish of ${finish} is among the firm's figures; add one with the loads it may carry.`
  return refuse('gap', says, 'wall.build')
}

function whyOf(
  tried: readonly Tried[],
  { needsBoard, boxed }: { readonly needsBoard: boolean; readonly boxed: boolean },
  studs: readonly Derivation[],
): Derivation {
  const from = tried.map(({ fixing, load }) =>
    because(
      `${fixing.name}: ${load.holds ? 'it holds' : 'it does not hold'}.`,
      load.holds ? 'holds' : 'does not hold',
      {
        from: [load.why],
        source: fixing.source,
      },
    ),
  )
  const name = tried.at(-1)?.fixing.name ?? ''
  return needsBoard
    ? because('No fixing that suits these holes holds: a backing board is called for.', 'backing board', {
        from: [...studs, ...from],
      })
    : because(
        boxed
          ? 'It is packed with the emitter, suits this wall and holds.'
          : 'The lightest fixing that holds.',
        name,
        { from: [...studs, ...from] },
      )
}
