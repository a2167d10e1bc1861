import type { InputOf } from '../../contract/requests.ts'
import type { Job } from '../../domain/job.ts'
import { accept, under } from '../../domain/outcome.ts'
import type { Outcome, Problem } from '../../domain/outcome.ts'
import { usablePhoto } from './usable-photo.ts'
import type { PhotoLimits } from './photo-limits.ts'

export type FilePhoto = { readonly photoId: string; readonly bytes: Uint8Array }
type Given = NonNullable<InputOf<'job.import'>['photos']>

/** The ids of the photos that a job's rooms name, in their order, each once. */
export function photosNamed(job: Job): readonly string[] {
  return [...new Set(job.rooms.flatMap(({ photos = [] }) => photos.map(({ photoId }) => photoId)))]
}

/** The photos of a job file, if each one is a clean JPEG within the limits and belongs to a room of the job; otherwise all that is wrong. */
export function photosInFile(
  given: Given,
  { job, limits }: { readonly job: Job; readonly limits: PhotoLimits },
): Outcome<readonly FilePhoto[]> {
  const named = new Set(photosNamed(job))
  const seen = new Set<string>()
  const photos: FilePhoto[] = []
  const problems: Problem[] = []
  for (const [at, { photoId, base64 }] of given.entries()) {
    const path = `photos[${at}].photoId`
    if (!named.has(photoId)) {
      const message = `No room of the job has the photo ${photoId}: name it in a room’s photos, or leave it out.`
      problems.push({ code: 'invalid', message, path })
      continue
    }
    // Two names that differ only in capitals are one file on some computers.
    if (seen.has(photoId.toLowerCase())) {
      const message = `The photo ${photoId} is in the file twice: it should be there once.`
      problems.push({ code: 'invalid', message, path })
      continue
    }
    seen.add(photoId.toLowerCase())
    const photo = under(`photos[${at}]`, usablePhoto(base64, limits))
    if (photo.ok) photos.push({ photoId, bytes: photo.value.bytes })
    else problems.push(...photo.problems)
  }
  return problems.length === 0 ? accept(photos) : { ok: false, problems }
}
