import type { Swap } from '../../../../src-main/domain/job.ts'
import type { Wall } from '../../../../src-main/domain/wall.ts'
import type { PlaceMm } from './geometry.ts'

/** Something on the wall that can be moved. */
export type Thing = 'emitter' | 'old' | { readonly obstacleId: string }

/** What is being placed: the swap and its wall. */
export type Hung = { readonly swap: Swap; readonly wall: Wall }

export function sameThing(a: Thing | null, b: Thing): boolean {
  if (a === null || typeof a === 'string' || typeof b === 'string') return a === b
  return a.obstacleId === b.obstacleId
}

/** The same wall with one thing elsewhere: an emitter by its middle and bottom edge, others by their bottom left corner. */
export function movedTo({ swap, wall }: Hung, thing: Thing, { xMm, yMm }: PlaceMm): Hung {
  if (thing === 'emitter') {
    return { wall, swap: { ...swap, centre: { kind: 'at', xMm }, bottomMm: Math.max(0, yMm) } }
  }
  if (thing === 'old') {
    if (swap.existing === undefined) return { swap, wall }
    const existing = { ...swap.existing, leftMm: xMm, bottomMm: Math.max(0, yMm) }
    return { wall, swap: { ...swap, existing } }
  }
  const obstacles = (wall.obstacles ?? []).map((one) =>
    one.obstacleId === thing.obstacleId ? { ...one, xMm, yMm } : one,
  )
  return { swap, wall: { ...wall, obstacles } }
}

/** What an arrow key moves by, mm; null for another key. With Shift ten times as far. */
export function stepOf({
  key,
  shiftKey,
}: {
  readonly key: string
  readonly shiftKey: boolean
}): PlaceMm | null {
  const by = shiftKey ? 10 : 1
  switch (key) {
    case 'ArrowLeft':
      return { xMm: -by, yMm: 0 }
    case 'ArrowRight':
      return { xMm: by, yMm: 0 }
    case 'ArrowUp':
      return { xMm: 0, yMm: by }
    case 'ArrowDown':
      return { xMm: 0, yMm: -by }
    default:
      return null
  }
}
