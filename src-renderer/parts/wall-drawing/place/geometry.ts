import type { Box, Zoom } from '../../../../src-main/engine/wall/drawing/sheet.ts'

export type SizePx = { readonly widthPx: number; readonly heightPx: number }
export type PlaceMm = { readonly xMm: number; readonly yMm: number }
export type PointPx = { readonly x: number; readonly y: number }

/** A millimetre of the drawing's paper on the screen: its larger text comes out at 21 pixels, its smaller at 17. */
export const pxPerPaperMm = 6.55

/** The paper that a screen of so many pixels stands for. */
export function paperOf({ widthPx, heightPx }: SizePx): {
  readonly widthMm: number
  readonly heightMm: number
} {
  return { widthMm: widthPx / pxPerPaperMm, heightMm: heightPx / pxPerPaperMm }
}

/** Millimetres on the wall for each pixel, when a picture is shown whole in the middle of a screen. */
export function mmPerPx(whole: Box, { widthPx, heightPx }: SizePx): number {
  return Math.max(whole.width / Math.max(1, widthPx), whole.height / Math.max(1, heightPx))
}

/** The place on the wall under a point of the screen, counted from its top left corner. */
export function wallPlace({ x, y }: PointPx, whole: Box, size: SizePx): PlaceMm {
  const scale = mmPerPx(whole, size)
  const left = whole.x + whole.width / 2 - (size.widthPx * scale) / 2
  const top = whole.y + whole.height / 2 - (size.heightPx * scale) / 2
  return { xMm: left + x * scale, yMm: -(top + y * scale) }
}

/** The point of the screen where a place on the wall is drawn. */
export function screenPoint({ xMm, yMm }: PlaceMm, whole: Box, size: SizePx): PointPx {
  const scale = mmPerPx(whole, size)
  return {
    x: (xMm - whole.x - whole.width / 2) / scale + size.widthPx / 2,
    y: (-yMm - whole.y - whole.height / 2) / scale + size.heightPx / 2,
  }
}

export const mostTimes = 10

/** The middle of a rectangle of the picture, as a place on the wall. */
export function middleOf({ x, y, width, height }: Box): PlaceMm {
  return { xMm: x + width / 2, yMm: -(y + height / 2) }
}

/** Larger or smaller about a place, which stays where it is on the screen. Whole again, it is back in the middle. */
export function zoomedBy(zoom: Zoom, by: number, { about, fit }: { about: PlaceMm; fit: Box }): Zoom {
  const times = Math.min(mostTimes, Math.max(1, zoom.times * by))
  if (times === 1) return { times, ...middleOf(fit) }
  const share = zoom.times / times
  const at = {
    xMm: about.xMm + (zoom.xMm - about.xMm) * share,
    yMm: about.yMm + (zoom.yMm - about.yMm) * share,
  }
  return within({ times, ...at }, fit)
}

/** Moved along the wall, but never off what there is to see. */
export function pannedBy(zoom: Zoom, { xMm, yMm }: PlaceMm, fit: Box): Zoom {
  if (zoom.times === 1) return zoom
  return within({ ...zoom, xMm: zoom.xMm + xMm, yMm: zoom.yMm + yMm }, fit)
}

function within({ times, xMm, yMm }: Zoom, { x, y, width, height }: Box): Zoom {
  return {
    times,
    xMm: Math.min(Math.max(xMm, x), x + width),
    yMm: Math.min(Math.max(yMm, 0 - (y + height)), 0 - y),
  }
}

/** The rectangle between two corners, in whole millimetres. */
export function rectangleBetween(
  a: PlaceMm,
  b: PlaceMm,
): PlaceMm & { readonly widthMm: number; readonly heightMm: number } {
  const [left, right] = [a.xMm, b.xMm].map(Math.round).toSorted((one, other) => one - other) as [
    number,
    number,
  ]
  const [low, high] = [a.yMm, b.yMm].map(Math.round).toSorted((one, other) => one - other) as [number, number]
  return { xMm: left, yMm: low, widthMm: right - left, heightMm: high - low }
}
