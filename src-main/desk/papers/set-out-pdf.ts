import type { UseCase } from '../desk.ts'
import { drawingPaper, setOutDocument } from '../../documents/set-out-document.ts'
import { setOutSheet } from '../../documents/set-out-view.ts'
import type { SetOutSheetView, SetOutView } from '../../documents/set-out-view.ts'
import { figure } from '../../domain/figures.ts'
import { accept, refuse, under } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { Emitter } from '../../domain/item.ts'
import type { Swap } from '../../domain/job.ts'
import { wallDrawing } from '../../engine/wall/drawing.ts'
import { fitWall } from '../../engine/wall/fit-wall.ts'
import { shapeOf } from '../quoting/place-swaps.ts'
import { printPdf } from './print-pdf.ts'
import { printable } from './printable.ts'
import { workForPaper } from './work-for-paper.ts'
import type { PaperWork } from './work-for-paper.ts'
import { paperPath, writePaper } from './write-paper.ts'

/** Where to drill: one page a swap. */
export const setOutPdf: UseCase<'setOut.pdf'> = async (input, desk) => {
  const worked = await workForPaper(input, desk)
  if (!worked.ok) return worked
  const work = worked.value
  if (work.job.swaps.length === 0) {
    return refuse('invalid', 'This job has no swaps, so there is nothing to set out; add one.', 'job.swaps')
  }
  const where = { out: input.out, name: `set-out-${work.fileKey}` }
  const place = paperPath(where, desk)
  if (!place.ok) return place
  const sheets = sheetsOf(work)
  if (!sheets.ok) return sheets
  const view = await printable(viewOf(work, sheets.value))
  if (!view.ok) return view
  const printed = await printPdf(setOutDocument(view.value), { createdOn: work.quotedOn })
  return writePaper(printed, where, desk)
}

function viewOf({ job, firm, reference, quotedOn }: PaperWork, sheets: SetOutView['sheets']): SetOutView {
  const siteLines = job.site.addressLines.length > 0 ? job.site.addressLines : job.customer.addressLines
  return {
    reference,
    madeOn: quotedOn,
    firmName: firm?.name ?? '',
    customerName: job.customer.name,
    siteLines,
    sheets,
  }
}

function sheetsOf(work: PaperWork): Outcome<readonly SetOutSheetView[]> {
  const sheets: SetOutSheetView[] = []
  for (const [index, swap] of work.job.swaps.entries()) {
    const sheet = sheetOf(work, swap)
    if (!sheet.ok) return under(`job.swaps[${index}]`, sheet)
    sheets.push(sheet.value)
  }
  return accept(sheets)
}

function sheetOf(work: PaperWork, swap: Swap): Outcome<SetOutSheetView> {
  const { quote, figures } = work
  const room = work.job.rooms.find((one) => one.roomId === swap.roomId)
  const wall = room?.walls.find((one) => one.wallId === swap.wallId)
  const emitter = work.emitters[swap.swapId]
  const setOut = work.setOuts[swap.swapId]
  if (room === undefined || wall === undefined || emitter === undefined || setOut === undefined) {
    throw new Error(`The swap ${swap.swapId} was not worked up`)
  }
  const { pipes, centre, bottomMm } = swap
  const curved = emitter.form.kind === 'towelRail' && emitter.form.curve === 'curved'
  const fit = fitWall(
    { wall, emitter: shapeOf(emitter), valves: {}, centre, bottomMm, pipes, curved },
    figures,
  )
  if (!fit.ok) return fit
  const sheet = setOutSheet({
    swap,
    room,
    wall,
    emitter,
    setOut,
    clashes: fit.value.clashes.map((clash) => clash.says),
    jobCautions: quote.cautions,
    onePersonKg: figure(figures, 'lift.onePersonKg'),
  })
  const { envelope } = fit.value
  const drawing = wallDrawing({
    wall,
    emitter: { ...emitter, name: nameOnDrawing(emitter) },
    envelope,
    setOut,
    pipes,
    paper: drawingPaper(sheet),
  })
  return accept({ ...sheet, drawing })
}

/** Short, because the sheet's title has the whole name and the drawing needs its room for figures. */
function nameOnDrawing({ form }: Emitter): string {
  return form.kind === 'towelRail' ? 'New rail' : 'New radiator'
}
