import { rm } from 'node:fs/promises'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { ioRefusal } from '../papers/io-sentence.ts'
import type { Desk, UseCase } from '../desk.ts'
import { cleanJpeg } from './clean-jpeg.ts'
import { noSuchPhoto, photoBytes, photoFile, photoFolder, photoIds } from './photo-files.ts'
import type { PhotoPlace } from './photo-files.ts'
import { photoLimits } from './photo-limits.ts'

type Kept = {
  readonly photoId: string
  readonly bytes: number
  readonly widthPx: number
  readonly heightPx: number
  readonly picture: Uint8Array
}

/** A photo that was kept, read and looked through again: the folder is open to other programs. */
async function keptPhoto(place: PhotoPlace, desk: Desk): Promise<Outcome<Kept>> {
  const picture = await photoBytes(photoFile(desk, place))
  if (picture === null) return noSuchPhoto(place)
  const size = cleanJpeg(picture)
  if (size.ok) return accept({ photoId: place.photoId, bytes: picture.length, ...size.value, picture })
  const message = `The file of the photo ${place.photoId} was changed by something else since it was kept.`
  return refuse('io', message, 'photoId')
}

export const photoRead: UseCase<'photo.read'> = async (place, desk) => {
  const kept = await keptPhoto(place, desk)
  if (!kept.ok) return kept
  const { picture, ...facts } = kept.value
  return accept({ ...facts, base64: Buffer.from(picture).toString('base64') })
}

export const photoList: UseCase<'photo.list'> = async ({ jobId }, desk) => {
  const limits = await photoLimits(desk)
  if (!limits.ok) return limits
  const photos: Omit<Kept, 'picture'>[] = []
  for (const photoId of await photoIds(photoFolder(desk, jobId))) {
    const kept = await keptPhoto({ jobId, photoId }, desk)
    if (!kept.ok) return kept
    const { picture: _, ...facts } = kept.value
    photos.push(facts)
  }
  return accept({ photos, ...limits.value })
}

export const photoRemove: UseCase<'photo.remove'> = async (place, desk) => {
  const path = photoFile(desk, place)
  if ((await photoBytes(path)) === null) return noSuchPhoto(place)
  try {
    await rm(path)
  } catch (error) {
    return ioRefusal(error, path)
  }
  return accept({ photoId: place.photoId })
}

type FilePhoto = { readonly photoId: string; readonly base64: string }

/** Photos as they travel in a job file. One that is not kept here any more is left out. */
export async function keptPhotos(
  { jobId, photoIds }: { readonly jobId: string; readonly photoIds: readonly string[] },
  desk: Desk,
): Promise<Outcome<readonly FilePhoto[]>> {
  const photos: FilePhoto[] = []
  for (const photoId of photoIds) {
    if ((await photoBytes(photoFile(desk, { jobId, photoId }))) === null) continue
    const kept = await keptPhoto({ jobId, photoId }, desk)
    if (!kept.ok) return kept
    photos.push({ photoId, base64: Buffer.from(kept.value.picture).toString('base64') })
  }
  return accept(photos)
}
