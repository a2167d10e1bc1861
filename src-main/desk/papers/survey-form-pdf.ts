import { surveyFormDocument } from '../../documents/survey-form/form-document.ts'
import { surveyFormView } from '../../documents/survey-form/form-view.ts'
import type { UseCase } from '../desk.ts'
import { printPdf } from './print-pdf.ts'
import { printable } from './printable.ts'
import { paperPath, writePaper } from './write-paper.ts'

const usualRooms = 2

/** The survey form, to be written on at the site. A job need not be whole: it is only read for what it says. */
export const surveyFormPdf: UseCase<'surveyForm.pdf'> = async ({ job, rooms, out }, desk) => {
  const where = { out, name: job === undefined ? 'survey-form' : `survey-form-${job.jobId}` }
  const place = paperPath(where, desk)
  if (!place.ok) return place
  const view = await printable(surveyFormView(job ?? null, rooms ?? usualRooms))
  if (!view.ok) return view
  return writePaper(await printPdf(surveyFormDocument(view.value), { createdOn: desk.today }), where, desk)
}
