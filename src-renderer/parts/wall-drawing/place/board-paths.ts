import type { Job } from '../../../../src-main/domain/job.ts'
import type { Wall } from '../../../../src-main/domain/wall.ts'
import type { Hung, Thing } from './moving.ts'

/** Where a swap and its wall lie in the job. */
export type Paths = { readonly swap: string; readonly wall: string }

/** A swap with its wall and where both lie; null where the job does not have them. */
export function hungAt(job: Job, at: number): { readonly hung: Hung; readonly paths: Paths } | null {
  const swap = job.swaps[at]
  const roomAt = job.rooms.findIndex(({ roomId }) => roomId === swap?.roomId)
  const walls: readonly Wall[] = job.rooms[roomAt]?.walls ?? []
  const wallAt = walls.findIndex(({ wallId }) => wallId === swap?.wallId)
  const wall = walls[wallAt]
  if (swap === undefined || wall === undefined) return null
  return { hung: { swap, wall }, paths: { swap: `swaps[${at}]`, wall: `rooms[${roomAt}].walls[${wallAt}]` } }
}

/** What to write into the job, and where, once a thing has been moved. */
export function writtenOf(
  { swap, wall }: Hung,
  thing: Thing,
  paths: Paths,
): { readonly path: string; readonly value: unknown } {
  if (thing === 'emitter') return { path: paths.swap, value: swap }
  if (thing === 'old') return { path: `${paths.swap}.existing`, value: swap.existing }
  const obstacles = wall.obstacles ?? []
  const nth = obstacles.findIndex(({ obstacleId }) => obstacleId === thing.obstacleId)
  return { path: `${paths.wall}.obstacles[${nth}]`, value: obstacles[nth] }
}
