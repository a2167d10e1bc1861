import type { Job } from '../../domain/job.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { sizedJobFile } from '../../exchange/job-file.ts'
import { readFirm } from '../../store/firm.ts'
import { readJob } from '../../store/jobs.ts'
import { reading } from '../../store/store.ts'
import type { AnswerOf, InputOf } from '../../contract/requests.ts'
import type { Desk, UseCase } from '../desk.ts'
import { keptPhotos } from '../photos/photo-read.ts'
import { photosNamed } from '../photos/photos-in-file.ts'
import { quotesOfJob } from '../quote-life/quotes-in-file.ts'
import { storeOf } from '../store-of.ts'
import { noSuchJob } from './no-such-job.ts'

type Asked = InputOf<'job.export'>

export const jobExport: UseCase<'job.export'> = async (asked, desk) => {
  const { jobId } = asked
  const file = await reading(storeOf(desk), async (tx) => {
    const kept = await readJob(tx, jobId)
    if (kept === null) return null
    const firm = kept.firm ?? (await readFirm(tx))
    const job = firm === null ? kept : { ...kept, firm }
    return asked.quotes === true ? { job, quotes: await quotesOfJob(tx, jobId) } : { job }
  })
  if (file === null) return noSuchJob(jobId)
  const wanted = asked.photos ?? asked.photosOf !== undefined
  if (wanted) return withPhotos(file, asked, desk)
  return file.quotes === undefined ? accept(file) : sizedJobFile(file)
}

/** With those of its photos that are still kept here. */
async function withPhotos(
  file: AnswerOf<'job.export'>,
  { jobId, photosOf }: Asked,
  desk: Desk,
): Promise<Outcome<AnswerOf<'job.export'>>> {
  const { job } = file
  const unknown = refuseUnknownRoom(job, photosOf ?? [])
  if (unknown !== null) return unknown
  const rooms =
    photosOf === undefined ? job.rooms : job.rooms.filter(({ roomId }) => photosOf.includes(roomId))
  const photos = await keptPhotos({ jobId, photoIds: photosNamed({ ...job, rooms }) }, desk)
  return photos.ok ? sizedJobFile({ ...file, photos: photos.value }) : photos
}

/** A refusal where a room is named that the job does not have; null where it has them all. */
function refuseUnknownRoom(job: Job, roomIds: readonly string[]): Outcome<never> | null {
  const has = new Set(job.rooms.map(({ roomId }) => roomId))
  const at = roomIds.findIndex((roomId) => !has.has(roomId))
  if (at < 0) return null
  const known = [...has].slice(0, 10).join(' or ')
  const right = known === '' ? 'it has none yet' : `it should be ${known}`
  const message = `The job has no room ${roomIds[at]}: ${right}.`
  return refuse('not-found', message, `photosOf[${at}]`)
}
