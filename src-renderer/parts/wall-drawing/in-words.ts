import type { CentreChoice } from '../../../src-main/domain/wall.ts'
import type { Looked } from '../../../src-main/engine/wall/drawing/marks/looked.ts'
import type { WallView } from '../../../src-main/engine/wall/drawing/sheet.ts'
import { mmInWords } from '../../../src-main/engine/wall/in-words.ts'
import { obstacleKinds } from '../words.ts'

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
      what: `New: ${emitter.name}`,
      fromLeft: `centre ${mm(setOut.centreMm)}`,
      fromFloor: `bottom ${mm(setOut.bottomMm)}`,
      size: sized(emitter),
      room: ofRoom.map(roomInWords).join('; '),
    },
    ...(old === undefined
      ? []
      : [
          {
            id: 'old',
            what: `Old: ${old.name}`,
            fromLeft: `left edge ${mm(old.leftMm)}`,
            fromFloor: `bottom ${mm(old.bottomMm)}`,
            size: sized(old),
            room: '',
          },
        ]),
    ...(old?.holes ?? []).map(({ xMm, yMm }, at) => ({
      id: `old hole ${at + 1}`,
      what: `Old hole ${at + 1}`,
      fromLeft: mm(xMm),
      fromFloor: mm(yMm),
      size: '',
      room: '',
    })),
    ...(wall.obstacles ?? []).map((one) => ({
      id: one.obstacleId,
      what: `${one.name} (${kindInWords(one.kind)})`,
      fromLeft: one.leaf?.in === 'wallAtCorner' ? `in the wall on the ${one.leaf.corner}` : mm(one.xMm),
      fromFloor: mm(one.yMm),
      size: one.leaf === undefined ? sized(one) : `${sized(one)}; leaf ${mm(one.leaf.leafMm)}`,
      room: looked
        .filter(({ obstacleId }) => obstacleId === one.obstacleId)
        .map(roomInWords)
        .join('; '),
    })),
    ...pipes.map((pipe) => ({
      id: `pipe ${pipe.side}`,
      what: `${pipe.side === 'left' ? 'Left' : 'Right'} pipe, from the ${pipe.from}`,
      fromLeft: mm(pipe.xMm),
      fromFloor: pipe.yMm === undefined ? 'end not measured' : `end ${mm(pipe.yMm)}`,
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
      what: `${valve.side === 'left' ? 'Left' : 'Right'} valve, pipe entry`,
      fromLeft: mm(valve.xMm),
      fromFloor: mm(valve.yMm),
      size: '',
      room: '',
    })),
    ...holes.map((hole) => ({
      id: `hole ${hole.id}`,
      what: `Hole ${hole.id}: ${hole.fixing?.name ?? fixing}`,
      fromLeft: mm(hole.xMm),
      fromFloor: mm(hole.yMm),
      size: `${mm(hole.drillMm)} bit, ${mm(hole.depthMm)} deep`,
      room: hole.tileEdgeMm === undefined ? '' : tileInWords(hole.tileEdgeMm),
    })),
  ]
}

function sized({ widthMm, heightMm }: { readonly widthMm: number; readonly heightMm: number }): string {
  return `${mm(widthMm)} wide, ${mm(heightMm)} high`
}

function tileInWords(edgeMm: number): string {
  return edgeMm < 0 ? 'in a tile joint' : `${mm(edgeMm)} from the edge of its tile`
}

/** The clear space of one thing: what there is, what is needed, and whether that clashes. */
export function roomInWords({ with: what, haveMm, needMm, clashes, obstacleId }: Looked): string {
  const name = obstacleId === null || what.startsWith('the leaf of ') ? `${what}: ` : ''
  const has = haveMm < 0 ? `overlaps by ${mm(-haveMm)}` : `${mm(haveMm)} clear`
  return `${clashes ? 'Clash: ' : ''}${name}${has}, ${mm(needMm)} needed`
}

function kindInWords(kind: string): string {
  return (obstacleKinds.find(({ value }) => value === kind)?.label ?? kind).toLowerCase()
}

/** Where a centre line comes from. */
export function centreInWords(centre: CentreChoice, centreMm: number): string {
  const at = `${mm(centreMm)} from the wall’s left end`
  switch (centre.kind) {
    case 'betweenPipes':
      return `Its centre line is midway between the pipes, ${at}.`
    case 'fromPipe':
      return `Its centre line is set from the ${centre.side} pipe, ${at}.`
    case 'middleOfWall':
      return `Its centre line is the middle of the wall, ${at}.`
    case 'at':
      return `Its centre line is where you put it, ${at}.`
  }
}
