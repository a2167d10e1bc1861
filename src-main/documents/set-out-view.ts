import { inSentence, kg, listed, printedName } from './in-words.ts'
import type { ScaledDrawing } from './set-out/drawing-scale.ts'
import { orderOfWork } from './set-out/order-of-work.ts'
import { centreInWords, pipeLabel, pipeWork, wallBuild } from './things-in-words.ts'
import type { Emitter } from '../domain/item.ts'
import type { Room, Swap } from '../domain/job.ts'
import type { Caution } from '../domain/take-off.ts'
import type { SetOut } from '../domain/set-out.ts'
import type { Wall } from '../domain/wall.ts'

/** One swap's sheet for the wall. */
export type SetOutSheetView = {
  readonly roomName: string
  readonly wallName: string
  readonly wallBuild: string
  readonly emitterName: string
  readonly centre: { readonly fromLeftMm: number; readonly says: string }
  readonly bottomMm: number
  readonly holes: SetOut['holes']
  readonly fixing: {
    readonly name: string
    readonly holds: boolean
    readonly needsBoard: boolean
    /** The larger of its two loads, as a share of what it may carry. */
    readonly useRatio: number
  }
  readonly pipes: readonly { readonly label: string; readonly says: string }[]
  readonly steps: readonly string[]
  readonly warnings: readonly string[]
  readonly cautions: readonly string[]
  /** The place in `settings` of how closely its words are set. */
  readonly setting: number
  readonly drawing: ScaledDrawing
}

export type SetOutSheetWords = Omit<SetOutSheetView, 'drawing' | 'setting'>

export type SetOutView = {
  readonly reference: string
  readonly madeOn: string
  readonly firmName: string
  readonly customerName: string
  readonly siteLines: readonly string[]
  readonly sheets: readonly SetOutSheetView[]
}

/** A swap with all that its sheet is made from. */
export type SheetMaterial = {
  readonly swap: Swap
  readonly room: Room
  readonly wall: Wall
  readonly emitter: Emitter
  readonly setOut: SetOut
  /** What the emitter hits on this wall, in sentences. */
  readonly clashes: readonly string[]
  readonly jobCautions: readonly Caution[]
  /** What takes two people to lift here. */
  readonly lifts: readonly { readonly massKg: number }[]
}

/** A sheet but for its drawing, which is made to fit the room that the words leave. */
export function setOutSheet(from: SheetMaterial): SetOutSheetWords {
  const { swap, room, wall, emitter, setOut, clashes } = from
  const { load, needsBoard } = setOut.fixing
  return {
    roomName: room.name,
    wallName: wall.name,
    wallBuild: wallBuild(wall),
    emitterName: printedName(inSentence(emitter.name)),
    centre: { fromLeftMm: setOut.centreMm, says: centreInWords(swap, setOut) },
    bottomMm: setOut.bottomMm,
    holes: setOut.holes,
    fixing: {
      name: printedName(fixingsInWords(setOut)),
      holds: load.holds,
      needsBoard,
      useRatio: Math.max(load.shearUse, load.pullUse),
    },
    pipes: setOut.pipeOffsets.map((pipe) => ({ label: pipeLabel(pipe.side), says: pipeWork(pipe) })),
    steps: orderOfWork({ swap, wall, setOut }),
    // A set-out tells of the clashes too: each is said once.
    warnings: [...new Set([...clashes, ...(emitter.generic ? [genericBrackets] : []), ...setOut.warnings])],
    cautions: cautionsAtWall(from),
  }
}

/** The fixing; where holes differ, each with the holes it goes into. */
function fixingsInWords({ fixing, holes }: SetOut): string {
  const byName = Map.groupBy(holes, (hole) => hole.fixing?.name ?? fixing.name)
  if (byName.size < 2) return fixing.name
  return [...byName].map(([name, some]) => `${listed(some.map((hole) => hole.id))}: ${name}`).join('; ')
}

/** A hole drilled by an invented bracket is a hole in the wrong place. */
const genericBrackets =
  'The brackets are generic: lay the emitter’s own against these marks before you drill.'

/** Cautions for whoever stands at this wall with a drill, in a few words each; the pick list has them in full. */
function cautionsAtWall(from: SheetMaterial): readonly string[] {
  return from.jobCautions.flatMap(({ cautionId }) => shortCautions(cautionId, from))
}

function shortCautions(cautionId: string, { swap, room, wall, lifts }: SheetMaterial): readonly string[] {
  switch (cautionId) {
    case 'hidden-services':
      return ['Hidden pipes, cables: detector first.', 'Eye protection and dust mask.']
    case 'asbestos':
      return ['Asbestos? In doubt, stop and test.']
    case 'hot-work':
      return ['Hot work: heat mat, extinguisher, look again.']
    case 'tile-dust':
      return wall.finish === 'tile' ? ['No hammer until through the tile.'] : []
    case 'bathroom-zones':
      return room.use === 'bathroom' ? ['Bathroom: touch nothing electrical.'] : []
    case 'element-electrician':
      return swap.elementW === undefined ? [] : ['The element is for a qualified electrician.']
    case 'system-hot':
      return ['System hot? Cool it, prove it drained.']
    case 'two-person-lift':
      return lifts.map((lift) => `${kg(lift.massKg)}: two people to lift.`)
    default:
      return []
  }
}
