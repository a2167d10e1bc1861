import { randomUUID } from 'node:crypto'
import { mkdir, rename, rm, writeFile } from 'node:fs/promises'
import type { Desk } from '../desk.ts'
import { photoFile, photoFolder } from './photo-files.ts'
import type { FilePhoto } from './photos-in-file.ts'

/** Photos that stand in their places, until it is known whether they stay. */
export type PhotosPut = {
  /** Everything as it was before. */
  readonly undo: () => Promise<void>
  /** They stay: what stood in their places before is let go. */
  readonly finish: () => Promise<void>
}

/** One photo on its way, and the steps to take back. */
type Way = {
  readonly path: string
  readonly part: string
  readonly before: string
  readonly bytes: Uint8Array
  aside: boolean
  stands: boolean
}

/** Puts a job's photos into the data folder, all or none: each is written beside its place first, and one that was there is set aside. */
export async function putPhotos(
  desk: Desk,
  { jobId, photos }: { readonly jobId: string; readonly photos: readonly FilePhoto[] },
): Promise<PhotosPut> {
  const ways = photos.map(({ photoId, bytes }): Way => {
    const path = photoFile(desk, { jobId, photoId })
    const own = `${path}.${randomUUID()}`
    return { path, bytes, part: `${own}.part`, before: `${own}.before`, aside: false, stands: false }
  })
  const undo = async () => {
    for (const way of ways) await takeBack(way)
  }
  try {
    if (ways.length > 0) await mkdir(photoFolder(desk, jobId), { recursive: true })
    for (const { part, bytes } of ways) await writeFile(part, bytes, { flag: 'wx', flush: true })
    for (const way of ways) await place(way)
  } catch (error) {
    await undo()
    throw error
  }
  return {
    undo,
    finish: async () => {
      for (const { before } of ways) await rm(before, { force: true })
    },
  }
}

async function place(way: Way): Promise<void> {
  way.aside = await movedIfThere(way.path, way.before)
  await rename(way.part, way.path)
  way.stands = true
}

async function takeBack({ path, part, before, aside, stands }: Way): Promise<void> {
  await rm(part, { force: true })
  if (stands) await rm(path, { force: true })
  if (aside) await rename(before, path)
}

async function movedIfThere(from: string, to: string): Promise<boolean> {
  try {
    await rename(from, to)
    return true
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return false
    throw error
  }
}
