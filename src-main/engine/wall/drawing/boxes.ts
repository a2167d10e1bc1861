import type { Box, Ends } from './sheet.ts'

/**
 * A square about a middle.
 * @param x middle
 * @param y middle
 * @param side length, 0 or above
 * @source geometry
 * @example boxAt(5, 5, 2) // => { x: 4, y: 4, width: 2, height: 2 }
 */
export function boxAt(x: number, y: number, side: number): Box {
  return { x: x - side / 2, y: y - side / 2, width: side, height: side }
}

/**
 * A rectangle grown on all four sides; shrunk by a negative length, to its middle at most.
 * @param box in the picture
 * @param by how far each side moves out
 * @source geometry
 * @example grown({ x: 0, y: 0, width: 10, height: 2 }, -2) // => { x: 2, y: 1, width: 6, height: 0 }
 */
export function grown({ x, y, width, height }: Box, by: number): Box {
  const across = Math.max(by, -width / 2)
  const up = Math.max(by, -height / 2)
  return { x: x - across, y: y - up, width: width + 2 * across, height: height + 2 * up }
}

/**
 * The four edges of a rectangle, each as a thin rectangle.
 * @param box in the picture
 * @param thick how thin
 * @source geometry
 * @example edgesOf({ x: 0, y: 0, width: 10, height: 2 }, 2)[0] // => { x: 0, y: -1, width: 10, height: 2 }
 */
export function edgesOf({ x, y, width, height }: Box, thick: number): readonly Box[] {
  const half = thick / 2
  return [
    { x, y: y - half, width, height: thick },
    { x, y: y + height - half, width, height: thick },
    { x: x - half, y, width: thick, height },
    { x: x + width - half, y, width: thick, height },
  ]
}

/**
 * The area that two rectangles share.
 * @param a one
 * @param b the other
 * @source geometry
 * @example overlap({ x: 0, y: 0, width: 4, height: 4 }, { x: 2, y: 3, width: 4, height: 4 }) // => 2
 */
export function overlap(a: Box, b: Box): number {
  const across = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x)
  const up = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y)
  return Math.max(0, across) * Math.max(0, up)
}

/**
 * The rectangle that two rectangles share; null where they share none, not even an edge.
 * @param a one
 * @param b the other
 * @source geometry
 * @example shared({ x: 0, y: 0, width: 4, height: 4 }, { x: 2, y: 3, width: 4, height: 4 }) // => { x: 2, y: 3, width: 2, height: 1 }
 */
export function shared(a: Box, b: Box): Box | null {
  const x = Math.max(a.x, b.x)
  const y = Math.max(a.y, b.y)
  const width = Math.min(a.x + a.width, b.x + b.width) - x
  const height = Math.min(a.y + a.height, b.y + b.height) - y
  return width < 0 || height < 0 ? null : { x, y, width, height }
}

/**
 * How far apart two rectangles stand; 0 where they touch.
 * @param a one
 * @param b the other
 * @source geometry
 * @example apart({ x: 0, y: 0, width: 1, height: 1 }, { x: 4, y: 5, width: 1, height: 1 }) // => 5
 */
export function apart(a: Box, b: Box): number {
  const across = Math.max(a.x - b.x - b.width, b.x - a.x - a.width, 0)
  const up = Math.max(a.y - b.y - b.height, b.y - a.y - a.height, 0)
  return Math.hypot(across, up)
}

/**
 * The length of a straight line that lies within a rectangle: the line is cut to the box's range in x, then in y.
 * @param line its ends
 * @param box in the picture
 * @source geometry
 * @example crossing([0, 5, 10, 5], { x: 2, y: 0, width: 3, height: 9 }) // => 3
 */
export function crossing([x1, y1, x2, y2]: Ends, { x, y, width, height }: Box): number {
  if (Math.max(x1, x2) < x || Math.min(x1, x2) > x + width) return 0
  if (Math.max(y1, y2) < y || Math.min(y1, y2) > y + height) return 0
  const across = inside(x2 - x1, x - x1, x + width - x1)
  const up = inside(y2 - y1, y - y1, y + height - y1)
  const share = Math.min(1, across.to, up.to) - Math.max(0, across.from, up.from)
  return Math.max(0, share) * Math.hypot(x2 - x1, y2 - y1)
}

/** From where to where, as shares of its length, a line that goes so far along an axis lies between two values of it. */
function inside(along: number, low: number, high: number): { readonly from: number; readonly to: number } {
  if (along === 0) return { from: -Infinity, to: Infinity }
  return { from: Math.min(low / along, high / along), to: Math.max(low / along, high / along) }
}

/**
 * The point of a rectangle that is nearest to another point.
 * @param box in the picture
 * @param x of the point
 * @param y of the point
 * @source geometry
 * @example nearestIn({ x: 0, y: 0, width: 2, height: 2 }, 5, 1) // => [2, 1]
 */
export function nearestIn(
  { x: left, y: top, width, height }: Box,
  x: number,
  y: number,
): readonly [number, number] {
  return [Math.min(Math.max(x, left), left + width), Math.min(Math.max(y, top), top + height)]
}
