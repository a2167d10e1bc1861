import { describe, expect, it } from 'vitest'
import { printPdf } from '../../src-main/desk/papers/print-pdf.ts'
import {
  drawingPaper,
  setOutDocument,
  setOutWithoutDrawings,
} from '../../src-main/documents/set-out-document.ts'
import { setOutSheet } from '../../src-main/documents/set-out-view.ts'
import type {
  SetOutSheetView,
  SetOutSheetWords,
  SheetMaterial,
} from '../../src-main/documents/set-out-view.ts'
import { bedroomJob } from '../job-for-tests.ts'
import { quoteOf, testEmitter, testLines, testSetOut } from './material-for-tests.ts'
import { readPdf } from './read-pdf.ts'

const job = bedroomJob()

function material(changes: Partial<SheetMaterial> = {}): SheetMaterial {
  const [room] = job.rooms
  const [swap] = job.swaps
  const [wall] = room?.walls ?? []
  if (room === undefined || swap === undefined || wall === undefined) throw new Error('The test job is whole')
  const given = { swap, room, wall, emitter: testEmitter, setOut: testSetOut, clashes: [], lifts: [] }
  return { ...given, jobCautions: quoteOf(testLines).cautions, ...changes }
}

/** A drawing that fills its place, with one word in it. */
function drawn(sheet: SetOutSheetWords, heightPt: number): SetOutSheetView {
  const { widthMm, heightMm } = drawingPaper(heightPt)
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${widthMm} ${heightMm}"><rect x="0" y="0" width="${widthMm}" height="${heightMm}" fill="none" stroke="#000"/><text x="10" y="20" font-size="3.2" font-family="Inter">drawing-word</text></svg>`
  return { ...sheet, drawing: { svg, heightPt } }
}

const createdOn = '2026-03-02'
const head = {
  reference: 'TEST-7',
  madeOn: createdOn,
  firmName: 'Test Heating',
  customerName: 'Test Customer',
  siteLines: ['1 Example Row', 'Sampleton'],
}

async function print(...sheets: readonly SetOutSheetWords[]) {
  const blank = setOutWithoutDrawings({ ...head, sheets })
  await printPdf(blank.definition, { createdOn })
  const heights = blank.heightsPt()
  const whole = sheets.map((sheet, index) => drawn(sheet, heights[index] ?? 0))
  const { bytes } = await printPdf(setOutDocument({ ...head, sheets: whole }), { createdOn })
  return { bytes, heights }
}

async function read(...sheets: readonly SetOutSheetWords[]) {
  const { bytes, heights } = await print(...sheets)
  return { ...(await readPdf(bytes)), heights }
}

describe('the set-out sheet', { timeout: 60_000 }, () => {
  it('has every hole with its distances, bit and depth', async () => {
    const { text } = await read(setOutSheet(material()))
    expect(text).toMatch(/A1 350 left 690 1200 8 60/)
    expect(text).toMatch(/B1 350 right 690 1900 8 60/)
    expect(text).toContain('drawing-word')
  })

  it('says plug and screw, what each pipe needs, and the order of work', async () => {
    const { told: flat } = await read(setOutSheet(material()))
    expect(flat).toContain('Carries 40% of what it may.')
    expect(flat).toMatch(/The valve is 12 mm to the left/)
    const sheet = setOutSheet(material())
    expect(sheet.pipes.map((pipe) => pipe.says.replaceAll('\u00a0', ' '))).toEqual([
      'Ease the pipe to its valve. The valve is 12 mm to the left of the pipe.',
      'Cut and re-pipe. The valve is 80 mm to the right of the pipe and 20 mm below its end. Takes 240 mm of pipe, 2 elbows, 1 coupler and 1 clip.',
    ])
    expect(flat).toContain('Centre line 1550 mm from the wall’s left end: midway between the two pipes.')
    expect(flat).toContain('Drill: 8 mm bit, 60 mm deep.')
    expect(flat).toContain('Hidden pipes, cables: detector first.')
    expect(flat).toContain('Asbestos? In doubt, stop and test.')
  })

  it('warns in words when the fixing does not hold or the emitter does not fit', async () => {
    const fixing = { ...testSetOut.fixing, load: { ...testSetOut.fixing.load, holds: false, pullUse: 1.31 } }
    const clashes = ['The emitter comes 40 mm into the window.']
    const { told: flat } = await read(setOutSheet(material({ setOut: { ...testSetOut, fixing }, clashes })))
    expect(flat).toContain('Does not hold: 131% of what it may carry.')
    expect(flat).toContain('Stop and look. The emitter comes 40 mm into the window.')
  })

  it('is one page a swap, however the sizes fall, from two holes to twelve', async () => {
    const holes = (count: number) =>
      Array.from({ length: count }, (_, index) => ({
        id: `H${index}`,
        bracket: 'bracket',
        upper: index < 2,
        xMm: 1000 + index,
        yMm: 300 + 100 * Math.floor(index / 2),
        fromCentreMm: index % 2 === 0 ? -240 : 240,
        drillMm: 8,
        depthMm: 60,
      }))
    const long =
      'Holes A1, A2, B1 and B2 miss the studs and are held by the board alone, so mind the load on them.'
    const sheets = [2, 4, 6, 8, 12].map((count) =>
      setOutSheet(material({ setOut: { ...testSetOut, holes: holes(count), warnings: [long] } })),
    )
    const { pages, heights } = await read(...sheets)
    expect(pages).toHaveLength(5)
    expect(heights.toSorted((a, b) => b - a)).toEqual(heights)
    // With few holes the drawing takes a third of the page or more.
    expect(heights[0]).toBeGreaterThan(842 / 3)
    for (const [index, count] of [2, 4, 6, 8, 12].entries()) {
      expect(pages[index]?.filter((row) => /^H\d+ 240 (left|right)/.test(row))).toHaveLength(count)
    }
  })

  it('loses no hole of forty', async () => {
    const [hole] = testSetOut.holes
    if (hole === undefined) throw new Error('The test set-out has holes')
    const holes = Array.from({ length: 40 }, (_, index) => ({ ...hole, id: `H${index}.` }))
    const { text } = await read(setOutSheet(material({ setOut: { ...testSetOut, holes } })))
    for (const { id } of holes) expect(text).toContain(id)
  })

  it('prints nothing smaller than 10 points, its figures at 11 or more', async () => {
    const { getDocument } = await import('pdfjs-dist/legacy/build/pdf.mjs')
    const { bytes } = await print(setOutSheet(material()))
    const loading = getDocument({ data: new Uint8Array(bytes), verbosity: 0 })
    const content = await (await (await loading.promise).getPage(1)).getTextContent()
    await loading.destroy()
    const sizes = content.items.flatMap((item) =>
      'str' in item && item.str.trim() !== ''
        ? [{ text: item.str, size: Math.abs(Number(item.transform[3])) }]
        : [],
    )
    expect(Math.min(...sizes.map(({ size }) => size))).toBeGreaterThan(9.95)
    expect(sizes.find(({ text }) => text === 'drawing-word')?.size).toBeGreaterThan(10.9)
    expect(sizes.find(({ text }) => text === 'A1')?.size).toBeGreaterThan(10.9)
  })
})
