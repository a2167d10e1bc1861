import { randomUUID } from 'node:crypto'
import { mkdir, rename, rm, writeFile } from 'node:fs/promises'
import { accept } from '../../domain/outcome.ts'
import { readJob } from '../../store/jobs.ts'
import { reading } from '../../store/store.ts'
import type { UseCase } from '../desk.ts'
import { noSuchJob } from '../jobs/no-such-job.ts'
import { ioRefusal } from '../papers/io-sentence.ts'
import { storeOf } from '../store-of.ts'
import { photoFile, photoFolder } from './photo-files.ts'
import { photoLimits } from './photo-limits.ts'
import { usablePhoto } from './usable-photo.ts'

/** Keeps a photo, whole or not at all: it is written beside its place and then moved into it. */
export const photoSave: UseCase<'photo.save'> = async ({ jobId, base64 }, desk) => {
  const limits = await photoLimits(desk)
  if (!limits.ok) return limits
  const photo = usablePhoto(base64, limits.value)
  if (!photo.ok) return photo
  const job = await reading(storeOf(desk), (tx) => readJob(tx, jobId))
  if (job === null) return noSuchJob(jobId)
  const photoId = randomUUID()
  const path = photoFile(desk, { jobId, photoId })
  const { bytes, size } = photo.value
  try {
    await mkdir(photoFolder(desk, jobId), { recursive: true })
    await writeWhole(path, bytes)
  } catch (error) {
    return ioRefusal(error, path)
  }
  return accept({ photoId, bytes: bytes.length, ...size })
}

async function writeWhole(path: string, bytes: Uint8Array): Promise<void> {
  const beside = `${path}.${randomUUID()}.part`
  try {
    await writeFile(beside, bytes, { flag: 'wx' })
    await rename(beside, path)
  } finally {
    await rm(beside, { force: true })
  }
}
