import type { Marks } from '../../../src-main/engine/wall/drawing/marks/marks.ts'
import type { WallView, Zoom } from '../../../src-main/engine/wall/drawing/sheet.ts'
import { paperOf } from './place/geometry.ts'
import type { SizePx } from './place/geometry.ts'
import type { Placed } from './use-set-out-here.ts'
import type { Layers } from './view-tools.tsx'
import { words } from './wall-drawing.words.ts'

/** From this much larger on, each hole says its bit beside its id. */
const bitsFromTimes = 2

type Looking = { readonly size: SizePx; readonly layers: Layers; readonly zoom?: Zoom }

/** The view that the engine draws of what was set out. */
export function viewOf(placed: Placed, { size, layers, zoom }: Looking): WallView {
  const { wall, emitter, fit, setOut, swap, old, looked, zones } = placed
  const marks: Marks = {
    looked,
    showsAsked: layers.asked,
    showsTiles: layers.tiles,
    showsPlan: layers.plan,
    ...(layers.zones ? { zones } : {}),
    ...((zoom?.times ?? 1) < bitsFromTimes
      ? {}
      : {
          holeNames: Object.fromEntries(
            setOut.holes.map(({ id, drillMm }) => [id, words.named.bit(id, drillMm)]),
          ),
        }),
  }
  const named = {
    ...emitter,
    name: emitter.form.kind === 'towelRail' ? words.named.rail : words.named.radiator,
  }
  return {
    wall,
    emitter: named,
    envelope: fit.envelope,
    setOut,
    pipes: swap.pipes,
    old,
    paper: paperOf(size),
    zoom,
    marks,
  }
}
