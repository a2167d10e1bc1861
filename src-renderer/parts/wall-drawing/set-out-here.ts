import type { Figures } from '../../../src-main/domain/figures.ts'
import type { Emitter } from '../../../src-main/domain/item.ts'
import type { Swap } from '../../../src-main/domain/job.ts'
import { measuredOldHoles } from '../../../src-main/domain/wall.ts'
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
import { oldHolesOnWall } from '../../../src-main/engine/wall/old-hole-warnings.ts'
import { placeEmitter } from '../../../src-main/engine/wall/place-emitter.ts'
import { setOutWall } from '../../../src-main/engine/wall/set-out-wall.ts'
import { words } from './wall-drawing.words.ts'

/** The figures that the desk gives for walls. */
export type WallFigures = Pick<Figures, 'settings' | 'fixings'>

export type Asked = {
  readonly swap: Pick<Swap, 'centre' | 'bottomMm' | 'pipes' | 'existing'>
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
  const oldHoles = oldHolesOnWall(swap.existing)
  const setOut = setOutWall({ ...input, oldHoles, ...(extraKg === undefined ? {} : { extraKg }) }, figures)
  if (!setOut.ok) return setOut
  return accept({
    fit: fitOfPlaced(input, placed.value, figures),
    setOut: setOut.value,
    looked: lookedAt(input, placed.value, figures),
    zones: cableZones(wall, figures),
  })
}

/**
 * The old emitter where it was measured to hang; else over its holes, where those were measured; else midway between the pipes. As high
 * as the new one where its height was not measured. What was not measured is said in its name.
 */
export function oldOnWall({ existing, pipes, bottomMm }: Swap): OldEmitter | undefined {
  if (existing === undefined) return undefined
  const holes = measuredOldHoles(existing).map(({ xMm, yMm }) => ({ xMm, yMm }))
  const { name, widthMm, heightMm } = existing
  const ring = holes.length === 0 ? {} : { holes }
  if (existing.leftMm !== undefined) {
    return {
      name,
      widthMm,
      heightMm,
      ...ring,
      leftMm: existing.leftMm,
      bottomMm: existing.bottomMm ?? bottomMm,
    }
  }
  const middleMm = middleOf(holes) ?? middleOf(pipesBothSides(pipes))
  if (middleMm === null) return undefined
  return {
    name: holes.length === 0 ? words.named.oldNotMeasured : words.named.oldByHoles,
    widthMm,
    heightMm,
    ...ring,
    leftMm: middleMm - widthMm / 2,
    bottomMm: existing.bottomMm ?? bottomMm,
  }
}

function pipesBothSides(pipes: Swap['pipes']): Swap['pipes'] {
  const both = (['left', 'right'] as const).flatMap((side) => pipes.find((pipe) => pipe.side === side) ?? [])
  return both.length === 2 ? both : []
}

function middleOf(places: readonly { readonly xMm: number }[]): number | null {
  if (places.length === 0) return null
  const across = places.map(({ xMm }) => xMm)
  return (Math.min(...across) + Math.max(...across)) / 2
}
