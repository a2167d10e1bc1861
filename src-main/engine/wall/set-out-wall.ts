import { because } from '../../domain/derivation.ts'
import { figure, figureWhy } from '../../domain/figures.ts'
import type { Figures } from '../../domain/figures.ts'
import { accept } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { PipeOffset, SetOut, SetOutHole } from '../../domain/set-out.ts'
import type { Pipe } from '../../domain/wall.ts'
import { bearingOf, bracketHoles } from './bracket-holes.ts'
import type { Bearing, BracketHole } from './bracket-holes.ts'
import { bracketWarnings } from './bracket-warnings.ts'
import { pipeOn } from './centre-line.ts'
import { chooseFixing } from './choose-fixing.ts'
import type { ChosenFixing } from './choose-fixing.ts'
import { fitOfPlaced } from './fit-wall.ts'
import { holeWarnings, studWarnings } from './hole-warnings.ts'
import { oldHoleWarnings } from './old-hole-warnings.ts'
import type { OldHole } from './old-hole-warnings.ts'
import { pipeOffset } from './pipe-offset.ts'
import { pipeWarnings } from './pipe-warnings.ts'
import { placeEmitter } from './place-emitter.ts'
import type { Placed } from './place-emitter.ts'
import { surfaceAt, tileWarnings } from './tiles/tile-warnings.ts'
import type { PlaceInput } from './wall-input.ts'

export type SetOutInput = PlaceInput & {
  readonly pipes: readonly Pipe[]
  /** Mass added for a person who leans on it; absent: the firm's figure. */
  readonly extraKg?: number | undefined
  /** Holes of old fixings, where they were measured. */
  readonly oldHoles?: readonly OldHole[] | undefined
}

/**
 * Where to drill and how each pipe is brought to its valve: bracket holes from centre line and bottom edge, the lightest fixing that
 * holds with its drill, pipe offsets with their remedy, and what to look out for. Mass for the fixing: dry + water + extra, at
 * wall gap + depth/2 (half of a curve's extra with it) from the wall.
 * Refuses what placing it refuses, an emitter without bracket holes, and a wall without a fixing in the figures.
 *
 * @param input wall, emitter, valve space, centre choice, bottom edge above finished floor (mm) and pipes
 * @param figures the firm's figures: wall.… and the fixings
 * @source practice, no published source; each part names its own
 * @example setOutWall({ bottomMm: NaN, pipes: [] }, { settings: {}, tasks: {}, fixings: [] }).ok // => false
 */
export function setOutWall(input: SetOutInput, figures: Figures): Outcome<SetOut> {
  const placed = placeEmitter(input, figures)
  if (!placed.ok) return placed
  const { centreMm, valves } = placed.value
  const bare = bracketHoles(input.emitter, { centreMm, bottomMm: input.bottomMm })
  if (!bare.ok) return bare
  const bearing = bearingOf(bare.value, figures)
  const chosen = chooseFixing(
    { wall: input.wall, holes: bare.value, box: input.emitter.box, load: loadOf(input, bearing, figures) },
    figures,
  )
  if (!chosen.ok) return chosen
  const pipeOffsets = offsetsOf(input, placed.value, figures)
  const { fixing, load, needsBoard } = chosen.value
  const answer = {
    centreMm,
    bottomMm: input.bottomMm,
    holes: bare.value.map((hole) => drilled(hole, { ...chosen.value, wall: input.wall }, figures)),
    valves,
    pipeOffsets,
    fixing: { fixingId: fixing.fixingId, name: fixing.name, load, needsBoard },
    warnings: warningsOf(
      input,
      { placed: placed.value, holes: bare.value, chosen: chosen.value, pipeOffsets },
      figures,
    ),
  }
  const why = because('Set out from the centre line and finished floor.', centreMm, {
    unit: 'mm',
    from: [
      placed.value.whys.centre,
      placed.value.whys.envelope,
      placed.value.whys.drop,
      bearing.rise,
      chosen.value.why,
      ...(input.extraKg === undefined ? [figureWhy(figures, 'wall.leanKg')] : []),
      ...pipeOffsets.map((offset) => offset.why),
    ],
  })
  return accept({ ...answer, why })
}

function loadOf({ emitter, curved, extraKg }: SetOutInput, bearing: Bearing, figures: Figures) {
  const curveMm = curved === true ? figure(figures, 'wall.curvedExtraMm') : 0
  return {
    dryKg: emitter.dryKg,
    waterLitres: emitter.waterLitres,
    extraKg: extraKg ?? figure(figures, 'wall.leanKg'),
    projectionToCentreMm: emitter.wallGapMm + (emitter.depthMm + curveMm) / 2,
    bracketRiseMm: bearing.riseMm,
    upperFixings: bearing.upper,
    allFixings: bearing.all,
  }
}

type Chosen = Pick<ChosenFixing, 'fixing' | 'needsBoard' | 'each'> & Pick<SetOutInput, 'wall'>

function drilled(
  hole: BracketHole,
  { fixing, needsBoard, each, wall }: Chosen,
  figures: Figures,
): SetOutHole {
  const here = { ...hole, ...surfaceAt(hole, wall) }
  if (needsBoard) {
    const drillMm = figure(figures, 'wall.boardPilotMm')
    return { ...here, drillMm, depthMm: figure(figures, 'wall.boardPilotDepthMm') }
  }
  const own = each.get(hole.id) ?? { fixing, useRatio: 0 }
  const { fixingId, name, holeMm, depthMm } = own.fixing
  return { ...here, drillMm: holeMm, depthMm, fixing: { fixingId, name, useRatio: own.useRatio } }
}

function offsetsOf(input: SetOutInput, placed: Placed, figures: Figures): readonly PipeOffset[] {
  return placed.valves.flatMap((valve) => {
    const pipe = pipeOn(input.pipes, valve.side)
    return pipe === undefined ? [] : [pipeOffset(pipe, valve, { emitter: input.emitter, figures })]
  })
}

type Worked = {
  readonly placed: Placed
  readonly holes: readonly BracketHole[]
  readonly chosen: ChosenFixing
  readonly pipeOffsets: readonly PipeOffset[]
}

function warningsOf(
  input: SetOutInput,
  { placed, holes, chosen, pipeOffsets }: Worked,
  figures: Figures,
): readonly string[] {
  const { wall, pipes } = input
  const intoStud = [...chosen.each.values()].every(({ fixing }) => fixing.intoStud === true)
  const fixing = chosen.needsBoard
    ? [boardSays(wall.build)]
    : studWarnings(holes, wall, { intoStud, figures })
  const mayMove = (byMm: number) => keepsFit(input, { placed, byMm }, figures)
  const tile = chosen.needsBoard ? [] : tileWarnings(holes, wall, { figures, mayMove })
  return [
    ...fitOfPlaced(input, placed, figures).clashes.map((clash) => clash.says),
    ...bracketWarnings(holes, { ...input.emitter, bottomMm: input.bottomMm }, figures),
    ...holeWarnings(holes, wall, figures),
    ...fixing,
    ...tile,
    ...(chosen.needsBoard ? [] : oldHoleWarnings(drilledWith(holes, chosen), input.oldHoles ?? [], figures)),
    ...pipeWarnings({ pipes, valves: placed.valves, offsets: pipeOffsets }, figures),
  ]
}

/** Each hole with the bit of its own fixing. */
function drilledWith(holes: readonly BracketHole[], { each, fixing }: ChosenFixing) {
  return holes.map((hole) => ({ ...hole, drillMm: (each.get(hole.id)?.fixing ?? fixing).holeMm }))
}

/** Whether an emitter moved along the wall hits nothing that it does not hit where it is. */
function keepsFit(
  input: SetOutInput,
  { placed, byMm }: { readonly placed: Placed; readonly byMm: number },
  figures: Figures,
): boolean {
  const { leftMm, rightMm } = placed.envelope
  const envelope = { ...placed.envelope, leftMm: leftMm + byMm, rightMm: rightMm + byMm }
  const hits = (where: Placed) => fitOfPlaced(input, where, figures).clashes.map((clash) => clash.with)
  const now = hits(placed)
  return hits({ ...placed, envelope }).every((what) => now.includes(what))
}

function boardSays(build: SetOutInput['wall']['build']): string {
  const across =
    build === 'boardOnStuds'
      ? 'a backing board across the studs'
      : 'a backing board with more fixings of its own'
  return `No fixing at these holes carries the load: fit ${across}, and drill into that. It brings the emitter further off the wall by its thickness.`
}
