import { randomUUID } from 'node:crypto'
import { mkdir, rename, rm, writeFile } from 'node:fs/promises'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { readJob } from '../../store/jobs.ts'
import { reading } from '../../store/store.ts'
import type { UseCase } from '../desk.ts'
import { noSuchJob } from '../jobs/no-such-job.ts'
import { ioRefusal } from '../papers/io-sentence.ts'
import { storeOf } from '../store-of.ts'
import { cleanJpeg } from './clean-jpeg.ts'
import type { JpegSize } from './clean-jpeg.ts'
import { photoFile, photoFolder } from './photo-files.ts'
import { photoLimits } from './photo-limits.ts'
import type { PhotoLimits } from './photo-limits.ts'

const base64Text = /^[A-Za-z0-9+/]*={0,2}$/

/** Keeps a photo, whole or not at all: it is written beside its place and then moved into it. */
export const photoSave: UseCase<'photo.save'> = async ({ jobId, base64 }, desk) => {
  const limits = await photoLimits(desk)
  if (!limits.ok) return limits
  const bytes = bytesOf(base64)
  if (!bytes.ok) return bytes
  const size = fitting(bytes.value, limits.value)
  if (!size.ok) return size
  const job = await reading(storeOf(desk), (tx) => readJob(tx, jobId))
  if (job === null) return noSuchJob(jobId)
  const photoId = randomUUID()
  const path = photoFile(desk, { jobId, photoId })
  try {
    await mkdir(photoFolder(desk, jobId), { recursive: true })
    await writeWhole(path, bytes.value)
  } catch (error) {
    return ioRefusal(error, path)
  }
  return accept({ photoId, bytes: bytes.value.length, ...size.value })
}

function bytesOf(base64: string): Outcome<Uint8Array> {
  if (base64.length % 4 === 0 && base64Text.test(base64)) return accept(Buffer.from(base64, 'base64'))
  return refuse(
    'invalid',
    'The photo is not written in base64: letters, figures, + and / in fours.',
    'base64',
  )
}

/** The photo's size, if it is a clean JPEG within the limits. */
function fitting(bytes: Uint8Array, { mostBytes, mostPx }: PhotoLimits): Outcome<JpegSize> {
  if (bytes.length > mostBytes) {
    const [has, may] = [bytes.length, mostBytes].map((count) => Math.ceil(count / 1024))
    return refuse('refused', `The photo has ${has} kB; at most ${may} kB are kept.`, 'base64')
  }
  const size = cleanJpeg(bytes)
  if (!size.ok) return size
  const { widthPx, heightPx } = size.value
  if (Math.max(widthPx, heightPx) <= mostPx) return size
  return refuse(
    'refused',
    `The photo is ${widthPx} by ${heightPx} dots; at most ${mostPx} either way are kept.`,
    'base64',
  )
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
