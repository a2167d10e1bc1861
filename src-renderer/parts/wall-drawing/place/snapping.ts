import type { Looked } from '../../../../src-main/engine/wall/drawing/marks/looked.ts'
import type { Emitter } from '../../../../src-main/domain/item.ts'
import type { Pipe, Wall } from '../../../../src-main/domain/wall.ts'
import { words } from '../wall-drawing.words.ts'

const its = words.guides

/** A line across the wall that a thing likes to stand on. */
export type Guide = {
  /** Where the thing's own place comes. */
  readonly mm: number
  readonly says: string
  /** Where the line is drawn. */
  readonly line: number
}

export type Snapped = { readonly mm: number; readonly guide: Guide | null }

/** To the nearest guide within reach, else to a whole millimetre. */
export function snapped(mm: number, guides: readonly Guide[], reachMm: number): Snapped {
  const near = guides
    .filter((guide) => Math.abs(guide.mm - mm) <= reachMm)
    .toSorted((a, b) => Math.abs(a.mm - mm) - Math.abs(b.mm - mm))[0]
  return near === undefined ? { mm: wholeMm(mm), guide: null } : { mm: near.mm, guide: near }
}

/** Never minus nothing. */
export function wholeMm(mm: number): number {
  const whole = Math.round(mm)
  return whole === 0 ? 0 : whole
}

/** Where the middle of an emitter likes to stand. */
export function emitterGuides(
  wall: Wall,
  pipes: readonly Pipe[],
  { pipeCentresMm }: Pick<Emitter, 'pipeCentresMm'>,
): readonly Guide[] {
  const left = pipes.find(({ side }) => side === 'left')
  const right = pipes.find(({ side }) => side === 'right')
  return [
    ...(left !== undefined && right !== undefined ? [at((left.xMm + right.xMm) / 2, its.betweenPipes)] : []),
    ...(left === undefined
      ? []
      : [
          { mm: left.xMm + pipeCentresMm / 2, says: its.valveOnPipe('left'), line: left.xMm },
          at(left.xMm, its.pipe('left')),
        ]),
    ...(right === undefined
      ? []
      : [
          { mm: right.xMm - pipeCentresMm / 2, says: its.valveOnPipe('right'), line: right.xMm },
          at(right.xMm, its.pipe('right')),
        ]),
    ...wallGuides(wall, undefined),
  ]
}

/** Where the left edge of a thing as wide as that likes to stand: by its middle, by its edges. */
export function edgeGuides(
  wall: Wall,
  { widthMm, obstacleId }: { readonly widthMm: number; readonly obstacleId?: string },
): readonly Guide[] {
  const middles = wallGuides(wall, obstacleId).map((guide) => ({ ...guide, mm: guide.mm - widthMm / 2 }))
  return [
    ...middles,
    at(0, its.end('left')),
    { mm: wall.widthMm - widthMm, says: its.end('right'), line: wall.widthMm },
  ]
}

/** A line that a place itself comes to. */
function at(mm: number, says: string): Guide {
  return { mm, says, line: mm }
}

function wallGuides(wall: Wall, exceptId: string | undefined): readonly Guide[] {
  const windows = (wall.obstacles ?? []).filter(
    ({ kind, obstacleId }) => kind === 'window' && obstacleId !== exceptId,
  )
  return [
    at(wall.widthMm / 2, its.middleOfWall),
    ...windows.map(({ xMm, widthMm, name }) => at(xMm + widthMm / 2, its.middleOf(name))),
  ]
}

/** Where the bottom edge of an emitter likes to stand: as low as the floor lets it, or just clear under something. */
export function bottomGuides(
  looked: readonly Looked[],
  { heightMm }: Pick<Emitter, 'heightMm'>,
): readonly Guide[] {
  return looked.flatMap(({ obstacleId, with: what, asks, needMm }): readonly Guide[] => {
    if (obstacleId === null) return what === 'floor' ? [at(needMm, its.leastAboveFloor)] : []
    const mm = asks.bottomMm - heightMm
    return mm < 0 ? [] : [{ mm, says: its.justUnder(what), line: asks.bottomMm }]
  })
}
