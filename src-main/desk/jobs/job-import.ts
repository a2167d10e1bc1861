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
import { quotesInFile, takeInQuotes } from '../quote-life/quotes-in-file.ts'
import type { QuotesTaken, SoundQuote } from '../quote-life/quotes-in-file.ts'
import { storeOf } from '../store-of.ts'
import { checkJob } from './check-job.ts'

type Given = InputOf<'job.import'>

/** The job, its photos and its quotes are taken in together: where one can't be, none is. */
export const jobImport: UseCase<'job.import'> = async (given, desk) => {
  const photos = await photosOf(given, desk)
  if (!photos.ok) return photos
  const quotes = quotesInFile(given.quotes ?? [], { job: given.job, today: desk.today })
  if (!quotes.ok) return quotes
  const taken = await takenIn(given, { photos: photos.value, quotes: quotes.value, desk })
  if (!taken.ok) return taken
  return accept({ ...taken.value, ...(given.photos === undefined ? {} : { photos: photos.value.length }) })
}

type With = {
  readonly photos: readonly FilePhoto[]
  readonly quotes: readonly SoundQuote[]
  readonly desk: Desk
}

/** Once the job stands in the data file its photos stay; until then all can be taken back. */
async function takenIn(given: Given, { photos, quotes, desk }: With) {
  const { jobId } = given.job
  let put: PhotosPut | null = null
  const work = async (tx: WriteTx) => {
    const kept = await keep(tx, given, desk)
    if (!kept.ok) return kept
    const said = given.quotes === undefined ? {} : await takeInQuotes(tx, quotes, desk.now())
    try {
      put = await putPhotos(desk, { jobId, photos })
    } catch (error) {
      return ioRefusal(error, photoFolder(desk, jobId), 'photos')
    }
    return accept({ ...kept.value, ...told(said) })
  }
  const stands = () => put
  const taken = await writing(storeOf(desk), work).catch(async (error: unknown) => {
    await stands()?.undo()
    throw error
  })
  await stands()?.finish()
  return taken
}

/** What is said of the quotes; nothing is said of leaving none out. */
function told({ quotes, leftOut = [] }: Partial<QuotesTaken>): Partial<QuotesTaken> {
  return { ...(quotes === undefined ? {} : { quotes }), ...(leftOut.length === 0 ? {} : { leftOut }) }
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
