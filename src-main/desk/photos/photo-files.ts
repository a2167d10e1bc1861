import { readdir, readFile, rm } from 'node:fs/promises'
import { join } from 'node:path'
import { refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { Desk } from '../desk.ts'

/** Where a job's photos lie. A job's id has no sign in it that leads out of the folder. */
export function photoFolder(desk: Desk, jobId: string): string {
  if (desk.dataFolder === null) throw new Error('This request needs a data folder, and none is open')
  return join(desk.dataFolder, 'photos', jobId)
}

export function photoFile(desk: Desk, { jobId, photoId }: PhotoPlace): string {
  return join(photoFolder(desk, jobId), `${photoId}.jpg`)
}

export type PhotoPlace = { readonly jobId: string; readonly photoId: string }

/** The ids of a job's photos, in the order of their names. */
export async function photoIds(folder: string): Promise<readonly string[]> {
  const names = (await orNone(readdir(folder))) ?? []
  return names
    .filter((name) => name.endsWith('.jpg'))
    .map((name) => name.slice(0, -'.jpg'.length))
    .toSorted()
}

/** A photo's bytes; null where it is not there. */
export async function photoBytes(path: string): Promise<Uint8Array | null> {
  return orNone(readFile(path))
}

/** Takes a job's photos away with it. */
export async function removePhotosOf(desk: Desk, jobId: string): Promise<void> {
  await rm(photoFolder(desk, jobId), { recursive: true, force: true })
}

export function noSuchPhoto({ jobId, photoId }: PhotoPlace): Outcome<never> {
  return refuse(
    'not-found',
    `There is no photo ${photoId} of the job ${jobId}: it was removed, or never kept here.`,
    'photoId',
  )
}

async function orNone<T>(asked: Promise<T>): Promise<T | null> {
  try {
    return await asked
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return null
    throw error
  }
}
