import type { Desk, UseCase } from '../desk.ts'
import { drawingPaper, setOutDocument, setOutWithoutDrawings } from '../../documents/set-out-document.ts'
import { setOutSheet } from '../../documents/set-out-view.ts'
import type { SetOutSheetWords } from '../../documents/set-out-view.ts'
import { accept, refuse, under } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { Emitter } from '../../domain/item.ts'
import type { Swap } from '../../domain/job.ts'
import { wallDrawing } from '../../engine/wall/drawing.ts'
import { formOnWall, shapeOf } from '../../engine/wall/emitter-on-wall.ts'
import { fitWall } from '../../engine/wall/fit-wall.ts'
import { printPdf } from './print-pdf.ts'
import type { Printed } from './print-pdf.ts'
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
  return printed(work, where, desk)
}

type Where = Parameters<typeof writePaper>[1]

async function printed(work: PaperWork, where: Where, desk: Desk) {
  const place = paperPath(where, desk)
  if (!place.ok) return place
  const drafts = draftsOf(work)
  if (!drafts.ok) return drafts
  const pdf = await printSheets(work, drafts.value)
  return pdf.ok ? writePaper(pdf.value, where, desk) : pdf
}

/** A sheet's words, and its drawing once it is known how high it may be. */
type Draft = { readonly words: SetOutSheetWords; readonly draw: (heightPt: number) => string }

/** Lays the words out first, and then makes each drawing as large as they leave room for. */
async function printSheets(work: PaperWork, drafts: readonly Draft[]): Promise<Outcome<Printed>> {
  const createdOn = work.quotedOn
  const words = await printable({ ...headOf(work), sheets: drafts.map((draft) => draft.words) })
  if (!words.ok) return words
  const blank = setOutWithoutDrawings(words.value)
  await printPdf(blank.definition, { createdOn })
  const heights = blank.heightsPt()
  const drawings = await printable(drafts.map(({ draw }, index) => drawingOf(draw, heights[index])))
  if (!drawings.ok) return drawings
  const sheets = words.value.sheets.flatMap((sheet, index) => {
    const drawing = drawings.value[index]
    return drawing === undefined ? [] : [{ ...sheet, drawing }]
  })
  return accept(await printPdf(setOutDocument({ ...words.value, sheets }), { createdOn }))
}

function drawingOf(draw: Draft['draw'], heightPt: number | undefined) {
  if (heightPt === undefined) throw new Error('A sheet was not laid out')
  return { svg: draw(heightPt), heightPt }
}

function headOf({ job, firm, reference, quotedOn }: PaperWork) {
  const siteLines = job.site.addressLines.length > 0 ? job.site.addressLines : job.customer.addressLines
  const names = { firmName: firm?.name ?? '', customerName: job.customer.name }
  return { ...names, reference, madeOn: quotedOn, siteLines }
}

function draftsOf(work: PaperWork): Outcome<readonly Draft[]> {
  const drafts: Draft[] = []
  for (const [index, swap] of work.job.swaps.entries()) {
    const draft = draftOf(work, swap)
    if (!draft.ok) return under(`job.swaps[${index}]`, draft)
    drafts.push(draft.value)
  }
  return accept(drafts)
}

function draftOf(work: PaperWork, swap: Swap): Outcome<Draft> {
  const { quote, figures } = work
  const room = work.job.rooms.find((one) => one.roomId === swap.roomId)
  const wall = room?.walls.find((one) => one.wallId === swap.wallId)
  const emitter = work.emitters[swap.swapId]
  const setOut = work.setOuts[swap.swapId]
  if (room === undefined || wall === undefined || emitter === undefined || setOut === undefined) {
    throw new Error(`The swap ${swap.swapId} was not worked up`)
  }
  const { pipes, centre, bottomMm } = swap
  const fit = fitWall(
    { wall, emitter: shapeOf(emitter), valves: {}, centre, bottomMm, pipes, ...formOnWall(emitter) },
    figures,
  )
  if (!fit.ok) return fit
  const { envelope, clashes } = fit.value
  const lifts = work.pickList.lifts.filter((lift) => lift.swapId === swap.swapId)
  const said = { clashes: clashes.map((clash) => clash.says), jobCautions: quote.cautions, lifts }
  const named = { ...emitter, name: nameOnDrawing(emitter) }
  return accept({
    words: setOutSheet({ swap, room, wall, emitter, setOut, ...said }),
    draw: (heightPt) =>
      wallDrawing({ wall, emitter: named, envelope, setOut, pipes, paper: drawingPaper(heightPt) }),
  })
}

/** Short, because the sheet's title has the whole name and the drawing needs its room for figures. */
function nameOnDrawing({ form }: Emitter): string {
  return form.kind === 'towelRail' ? 'New rail' : 'New radiator'
}
