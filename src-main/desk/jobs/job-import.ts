import type { InputOf } from '../../contract/requests.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { readJob, saveJob } from '../../store/jobs.ts'
import { readItems } from '../../store/items.ts'
import { writing } from '../../store/store.ts'
import type { WriteTx } from '../../store/tables.ts'
import type { Desk, UseCase } from '../desk.ts'
import { ioRefusal } from '../papers/io-sentence.ts'
import { photoFolder } from '../photos/photo-files.ts'
import { photoLimits } from '../photos/photo-limits.ts'
import { photosInFile } from '../photos/photos-in-file.ts'
import type { FilePhoto } from '../photos/photos-in-file.ts'
import { putPhotos } from '../photos/put-photos.ts'
import type { PhotosPut } from '../photos/put-photos.ts'
import { storeOf } from '../store-of.ts'
import { checkJob } from './check-job.ts'

type Given = InputOf<'job.import'>

/** The job and its photos are taken in together: where either can't be, neither is. */
export const jobImport: UseCase<'job.import'> = async (given, desk) => {
  const photos = await photosOf(given, desk)
  if (!photos.ok) return photos
  const taken = await takenIn(given, { photos: photos.value, desk })
  if (!taken.ok) return taken
  return accept({ ...taken.value, ...(given.photos === undefined ? {} : { photos: photos.value.length }) })
}

type With = { readonly photos: readonly FilePhoto[]; readonly desk: Desk }

/** Once the job stands in the data file its photos stay; until then all can be taken back. */
async function takenIn(given: Given, { photos, desk }: With) {
  const { jobId } = given.job
  let put: PhotosPut | null = null
  const work = async (tx: WriteTx) => {
    const kept = await keep(tx, given, desk)
    if (!kept.ok) return kept
    try {
      put = await putPhotos(desk, { jobId, photos })
    } catch (error) {
      return ioRefusal(error, photoFolder(desk, jobId), 'photos')
    }
    return kept
  }
  const stands = () => put
  const taken = await writing(storeOf(desk), work).catch(async (error: unknown) => {
    await stands()?.undo()
    throw error
  })
  await stands()?.finish()
  return taken
}

async function photosOf({ job, photos }: Given, desk: Desk): Promise<Outcome<readonly FilePhoto[]>> {
  if (photos === undefined) return accept([])
  const limits = await photoLimits(desk)
  return limits.ok ? photosInFile(photos, { job, limits: limits.value }) : limits
}

async function keep(tx: WriteTx, { job, replace = false }: Given, desk: Desk) {
  const items = await readItems(
    tx,
    job.swaps.map(({ emitterId }) => emitterId),
  )
  const checked = checkJob(job, { items })
  if (!checked.ok) return checked
  const there = await readJob(tx, job.jobId)
  if (there !== null && !replace) {
    const says = `There is a job ${job.jobId} already (${there.title}): import under another id, or say to replace it.`
    return refuse('conflict', says, 'job.jobId', 'Set replace to true to put this one in its place.')
  }
  await saveJob(tx, job, desk.now())
  return accept({ jobId: job.jobId, replaced: there !== null })
}
