import type { CentreChoice } from '../../../src-main/domain/wall.ts'
import type { Looked } from '../../../src-main/engine/wall/drawing/marks/looked.ts'
import type { WallView } from '../../../src-main/engine/wall/drawing/sheet.ts'
import { mmInWords } from '../../../src-main/engine/wall/in-words.ts'
import { obstacleKinds } from '../words.ts'
import { words } from './wall-drawing.words.ts'

/** A thing on the wall in words: what, where, how large, and the clear space that it has and needs. */
export type ThingInWords = {
  readonly id: string
  readonly what: string
  readonly fromLeft: string
  readonly fromFloor: string
  readonly size: string
  readonly room: string
}

export const mm = mmInWords

const its = words.things

type Told = {
  readonly view: WallView
  readonly looked: readonly Looked[]
  readonly fixing: string
}

/** All that the drawing shows, thing by thing. */
export function thingsInWords({ view, looked, fixing }: Told): readonly ThingInWords[] {
  const { wall, emitter, setOut, pipes, old } = view
  const ofRoom = looked.filter(({ obstacleId }) => obstacleId === null)
  return [
    { id: 'wall', what: wall.name, fromLeft: '', fromFloor: '', size: sized(wall), room: '' },
    {
      id: 'emitter',
      what: its.newOne(emitter.name),
      fromLeft: its.centre(mm(setOut.centreMm)),
      fromFloor: its.bottom(mm(setOut.bottomMm)),
      size: sized(emitter),
      room: ofRoom.map(roomInWords).join('; '),
    },
    ...(old === undefined
      ? []
      : [
          {
            id: 'old',
            what: its.oldOne(old.name),
            fromLeft: its.leftEdge(mm(old.leftMm)),
            fromFloor: its.bottom(mm(old.bottomMm)),
            size: sized(old),
            room: '',
          },
        ]),
    ...(old?.holes ?? []).map(({ xMm, yMm }, at) => ({
      id: `old hole ${at + 1}`,
      what: its.oldHole(at + 1),
      fromLeft: mm(xMm),
      fromFloor: mm(yMm),
      size: '',
      room: '',
    })),
    ...(wall.obstacles ?? []).map((one) => ({
      id: one.obstacleId,
      what: its.ofKind(one.name, kindInWords(one.kind)),
      fromLeft: one.leaf?.in === 'wallAtCorner' ? its.inWall(one.leaf.corner) : mm(one.xMm),
      fromFloor: mm(one.yMm),
      size: one.leaf === undefined ? sized(one) : its.leaf(sized(one), mm(one.leaf.leafMm)),
      room: looked
        .filter(({ obstacleId }) => obstacleId === one.obstacleId)
        .map(roomInWords)
        .join('; '),
    })),
    ...pipes.map((pipe) => ({
      id: `pipe ${pipe.side}`,
      what: its.pipe(pipe.side, pipe.from),
      fromLeft: mm(pipe.xMm),
      fromFloor: pipe.yMm === undefined ? its.endNotMeasured : its.end(mm(pipe.yMm)),
      size: mm(pipe.outsideMm),
      room: '',
    })),
    ...drilledInWords(setOut, fixing),
  ]
}

/** Pipe entries of the valves, and every hole with what goes into it. */
function drilledInWords({ valves, holes }: WallView['setOut'], fixing: string): readonly ThingInWords[] {
  return [
    ...valves.map((valve) => ({
      id: `valve ${valve.side}`,
      what: its.valve(valve.side),
      fromLeft: mm(valve.xMm),
      fromFloor: mm(valve.yMm),
      size: '',
      room: '',
    })),
    ...holes.map((hole) => ({
      id: `hole ${hole.id}`,
      what: its.hole(hole.id, hole.fixing?.name ?? fixing),
      fromLeft: mm(hole.xMm),
      fromFloor: mm(hole.yMm),
      size: its.drilled(mm(hole.drillMm), mm(hole.depthMm)),
      room: hole.tileEdgeMm === undefined ? '' : tileInWords(hole.tileEdgeMm),
    })),
  ]
}

function sized({ widthMm, heightMm }: { readonly widthMm: number; readonly heightMm: number }): string {
  return its.size(mm(widthMm), mm(heightMm))
}

function tileInWords(edgeMm: number): string {
  return edgeMm < 0 ? its.inJoint : its.fromTileEdge(mm(edgeMm))
}

/** The clear space of one thing: what there is, what is needed, and whether that clashes. */
export function roomInWords({ with: what, haveMm, needMm, clashes, obstacleId }: Looked): string {
  const name = obstacleId === null || what.startsWith('the leaf of ') ? `${what}: ` : ''
  const has = haveMm < 0 ? its.overlaps(mm(-haveMm)) : its.clear(mm(haveMm))
  return `${clashes ? its.clash : ''}${name}${its.needed(has, mm(needMm))}`
}

function kindInWords(kind: string): string {
  return (obstacleKinds.find(({ value }) => value === kind)?.label ?? kind).toLowerCase()
}

/** Where a centre line comes from. */
export function centreInWords(centre: CentreChoice, centreMm: number): string {
  const at = words.centre.at(mm(centreMm))
  switch (centre.kind) {
    case 'betweenPipes':
      return words.centre.betweenPipes(at)
    case 'fromPipe':
      return words.centre.fromPipe(centre.side, at)
    case 'middleOfWall':
      return words.centre.middleOfWall(at)
    case 'at':
      return words.centre.put(at)
  }
}
