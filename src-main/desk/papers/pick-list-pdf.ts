import type { UseCase } from '../desk.ts'
import { pickListDocument } from '../../documents/pick-list-document.ts'
import { pickListView } from '../../documents/pick-list-view.ts'
import { pickListHow } from '../buying/pick-list-how.ts'
import { printPdf } from './print-pdf.ts'
import { printable } from './printable.ts'
import { workForPaper } from './work-for-paper.ts'
import { paperPath, writePaper } from './write-paper.ts'

/** What goes into the van, on paper. */
export const pickListPdf: UseCase<'pickList.pdf'> = async (input, desk) => {
  const worked = await workForPaper(input, desk)
  if (!worked.ok) return worked
  const { job, quote, firm, reference, quotedOn, fileKey } = worked.value
  const list = await pickListHow(worked.value, input)
  if (!list.ok) return list
  const pickList = list.value
  const where = { out: input.out, name: `pick-list-${fileKey}` }
  const place = paperPath(where, desk)
  if (!place.ok) return place
  const firmName = firm?.name ?? ''
  const view = await printable(pickListView({ job, pickList, quote, firmName, reference, madeOn: quotedOn }))
  if (!view.ok) return view
  const printed = await printPdf(pickListDocument(view.value), { createdOn: quotedOn })
  return writePaper(printed, where, desk)
}
