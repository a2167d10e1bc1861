import type { Figures } from '../../../src-main/domain/figures.ts'
import type { Emitter } from '../../../src-main/domain/item.ts'
import type { Swap } from '../../../src-main/domain/job.ts'
import { accept } from '../../../src-main/domain/outcome.ts'
import type { Outcome } from '../../../src-main/domain/outcome.ts'
import type { Fit, SetOut } from '../../../src-main/domain/set-out.ts'
import type { Wall } from '../../../src-main/domain/wall.ts'
import { cableZones } from '../../../src-main/engine/wall/drawing/marks/cable-zones.ts'
import type { CableZone } from '../../../src-main/engine/wall/drawing/marks/cable-zones.ts'
import { lookedAt } from '../../../src-main/engine/wall/drawing/marks/looked.ts'
import type { Looked } from '../../../src-main/engine/wall/drawing/marks/looked.ts'
import type { OldEmitter } from '../../../src-main/engine/wall/drawing/sheet.ts'
import { formOnWall, shapeOf } from '../../../src-main/engine/wall/emitter-on-wall.ts'
import { fitOfPlaced } from '../../../src-main/engine/wall/fit-wall.ts'
import { placeEmitter } from '../../../src-main/engine/wall/place-emitter.ts'
import { setOutWall } from '../../../src-main/engine/wall/set-out-wall.ts'

/** The figures that the desk gives for walls. */
export type WallFigures = Pick<Figures, 'settings' | 'fixings'>

export type Asked = {
  readonly swap: Pick<Swap, 'centre' | 'bottomMm' | 'pipes'>
  readonly wall: Wall
  readonly emitter: Emitter
  readonly figures: WallFigures
}

export type Answered = {
  readonly fit: Fit
  readonly setOut: SetOut
  readonly looked: readonly Looked[]
  readonly zones: readonly CableZone[]
}

/** One emitter set out on its wall, here in the window, by what the desk itself asks. */
export function setOutHere({ swap, wall, emitter, figures: given }: Asked): Outcome<Answered> {
  const figures: Figures = { ...given, tasks: {} }
  const { centre, bottomMm, pipes } = swap
  const { curved, extraKg } = formOnWall(emitter)
  const input = { wall, emitter: shapeOf(emitter), valves: {}, centre, bottomMm, pipes, curved }
  const placed = placeEmitter(input, figures)
  if (!placed.ok) return placed
  const setOut = setOutWall({ ...input, ...(extraKg === undefined ? {} : { extraKg }) }, figures)
  if (!setOut.ok) return setOut
  return accept({
    fit: fitOfPlaced(input, placed.value, figures),
    setOut: setOut.value,
    looked: lookedAt(input, placed.value, figures),
    zones: cableZones(wall, figures),
  })
}

/** The old emitter where it was measured to hang; else midway between the pipes, as high as the new one, and said to be so. */
export function oldOnWall({ existing, pipes, bottomMm }: Swap): OldEmitter | undefined {
  if (existing === undefined) return undefined
  const { name, widthMm, heightMm } = existing
  if (existing.leftMm !== undefined) {
    return { name, widthMm, heightMm, leftMm: existing.leftMm, bottomMm: existing.bottomMm ?? bottomMm }
  }
  const left = pipes.find(({ side }) => side === 'left')
  const right = pipes.find(({ side }) => side === 'right')
  if (left === undefined || right === undefined) return undefined
  const leftMm = (left.xMm + right.xMm) / 2 - widthMm / 2
  return { name: 'Old one, place not measured', widthMm, heightMm, leftMm, bottomMm }
}
