import type { Desk, UseCase } from '../desk.ts'
import { settings } from '../../documents/set-out/closeness.ts'
import { drawnToScale } from '../../documents/set-out/drawing-scale.ts'
import type { ScaledDrawing } from '../../documents/set-out/drawing-scale.ts'
import { mostHoles } from '../../documents/set-out/hole-table.ts'
import { emitterOnDrawing, shortNamed } from '../../documents/set-out/names-on-drawing.ts'
import { setOutDocument, setOutWithoutDrawings } from '../../documents/set-out-document.ts'
import type { Room, SheetToFit } from '../../documents/set-out-document.ts'
import { setOutSheet } from '../../documents/set-out-view.ts'
import type { SetOutSheetWords } from '../../documents/set-out-view.ts'
import { accept, refuse, under } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { Swap } from '../../domain/job.ts'
import { wallDrawing, wallFrame } from '../../engine/wall/drawing.ts'
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
type Draft = { readonly words: SetOutSheetWords; readonly draw: (heightPt: number) => ScaledDrawing }

/** Lays the words out first, and then makes each drawing as large as they leave room for. */
async function printSheets(work: PaperWork, drafts: readonly Draft[]): Promise<Outcome<Printed>> {
  const words = await printable({ ...headOf(work), sheets: drafts.map((draft) => draft.words) })
  if (!words.ok) return words
  const fitted = await fittedSheets(words.value, { createdOn: work.quotedOn })
  if (!fitted.ok) return fitted
  const drawings = await printable(drafts.map(({ draw }, index) => drawingOf(draw, fitted.value[index])))
  if (!drawings.ok) return drawings
  const sheets = fitted.value.flatMap(({ words: sheet, setting }, index) => {
    const drawing = drawings.value[index]
    return drawing === undefined ? [] : [{ ...sheet, setting, drawing }]
  })
  return accept(await printPdf(setOutDocument({ ...words.value, sheets }), { createdOn: work.quotedOn }))
}

type Head = ReturnType<typeof headOf>
type Fitted = SheetToFit & Room

/** Each sheet's words as closely set as they must be to leave its drawing room. */
async function fittedSheets(
  { sheets: words, ...head }: Head & { readonly sheets: readonly SetOutSheetWords[] },
  on: { readonly createdOn: string },
): Promise<Outcome<readonly Fitted[]>> {
  let sheets: readonly SheetToFit[] = words.map((sheet) => ({ words: sheet, setting: 0 }))
  for (;;) {
    const blank = setOutWithoutDrawings({ ...head, sheets })
    await printPdf(blank.definition, on)
    const rooms = blank.rooms()
    const fitted = sheets.map((sheet, index): Fitted => ({ ...sheet, ...roomAt(rooms, index) }))
    const tooLong = fitted.findIndex(({ fits, setting }) => !fits && setting === settings.length - 1)
    if (tooLong >= 0) return noRoom(tooLong)
    if (fitted.every(({ fits }) => fits)) return accept(fitted)
    sheets = fitted.map(({ words: sheet, setting, fits }) => ({
      words: sheet,
      setting: fits ? setting : setting + 1,
    }))
  }
}

function noRoom(index: number) {
  return refuse(
    'impossible',
    'The words of this set-out sheet leave no room on one page for its drawing; shorter names would.',
    `job.swaps[${index}]`,
    'Shorten the names of its room, its wall, its emitter and its fixings.',
  )
}

function roomAt(rooms: readonly Room[], index: number): Room {
  const room = rooms[index]
  if (room === undefined) throw new Error('A sheet was not laid out')
  return room
}

function drawingOf(draw: Draft['draw'], fitted: Fitted | undefined): ScaledDrawing {
  if (fitted === undefined) throw new Error('A sheet was not laid out')
  return draw(fitted.heightPt)
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
  if (setOut.holes.length > mostHoles) return tooManyHoles(setOut.holes.length)
  const { pipes, centre, bottomMm } = swap
  const fit = fitWall(
    { wall, emitter: shapeOf(emitter), valves: {}, centre, bottomMm, pipes, ...formOnWall(emitter) },
    figures,
  )
  if (!fit.ok) return fit
  const { envelope, clashes } = fit.value
  const lifts = work.pickList.lifts.filter((lift) => lift.swapId === swap.swapId)
  const said = { clashes: clashes.map((clash) => clash.says), jobCautions: quote.cautions, lifts }
  const named = { ...emitter, name: emitterOnDrawing(emitter) }
  const shown = { wall: shortNamed(wall), emitter: named, envelope, setOut, pipes }
  return accept({
    words: setOutSheet({ swap, room, wall, emitter, setOut, ...said }),
    draw: (heightPt) =>
      drawnToScale(
        {
          frame: (looking) => wallFrame({ ...shown, ...looking }),
          draw: (looking) => wallDrawing({ ...shown, ...looking }),
          envelope,
        },
        heightPt,
      ),
  })
}

function tooManyHoles(count: number) {
  return refuse(
    'impossible',
    `This emitter hangs on ${count} holes, and a set-out sheet has room for ${mostHoles} on its one page.`,
    'emitterId',
    'Take brackets off it in the catalogue.',
  )
}
