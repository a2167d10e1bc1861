import { describe, expect, it } from 'vitest'
import { printPdf } from '../../src-main/desk/papers/print-pdf.ts'
import { settings, warningsKept } from '../../src-main/documents/set-out/closeness.ts'
import { drawingPaper, textWidthPt } from '../../src-main/documents/set-out/drawing-scale.ts'
import { mostHoles } from '../../src-main/documents/set-out/hole-table.ts'
import { setOutDocument, setOutWithoutDrawings } from '../../src-main/documents/set-out-document.ts'
import type { SheetToFit } from '../../src-main/documents/set-out-document.ts'
import { setOutSheet } from '../../src-main/documents/set-out-view.ts'
import type {
  SetOutSheetView,
  SetOutSheetWords,
  SheetMaterial,
} from '../../src-main/documents/set-out-view.ts'
import { bedroomJob } from '../job-for-tests.ts'
import { quoteOf, testEmitter, testLines, testSetOut } from './material-for-tests.ts'
import { readPdf } from './read-pdf.ts'
import { drawnPaths } from './set-out-paths.ts'

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
function drawn(heightPt: number): SetOutSheetView['drawing'] {
  const { widthMm, heightMm } = drawingPaper(heightPt)
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${widthMm} ${heightMm}"><rect x="0" y="0" width="${widthMm}" height="${heightMm}" fill="none" stroke="#000"/><text x="10" y="20" font-size="2.6" font-family="Inter">drawing-word</text></svg>`
  return { svg, widthPt: textWidthPt, heightPt, scale: 25, whole: true }
}

const createdOn = '2026-03-02'
const head = {
  reference: 'TEST-7',
  madeOn: createdOn,
  firmName: 'Test Heating',
  customerName: 'Test Customer',
  siteLines: ['1 Example Row', 'Sampleton'],
}

/** Set closer until it fits, as the desk does. */
async function print(...words: readonly SetOutSheetWords[]) {
  for (let set: readonly SheetToFit[] = words.map((one) => ({ words: one, setting: 0 })); ;) {
    const blank = setOutWithoutDrawings({ ...head, sheets: set })
    await printPdf(blank.definition, { createdOn })
    const rooms = blank.rooms()
    if (rooms.every(({ fits }) => fits)) {
      const sheets = set.map(({ words: one, setting }, nth) => ({
        ...one,
        setting,
        drawing: drawn(rooms[nth]?.heightPt ?? 0),
      }))
      const { bytes } = await printPdf(setOutDocument({ ...head, sheets }), { createdOn })
      return { bytes, heights: rooms.map(({ heightPt }) => heightPt), set: set.map(({ setting }) => setting) }
    }
    set = set.map((one, nth) => (rooms[nth]?.fits === true ? one : { ...one, setting: one.setting + 1 }))
  }
}

async function read(...sheets: readonly SetOutSheetWords[]) {
  const made = await print(...sheets)
  return { ...(await readPdf(made.bytes)), ...made }
}

/** Nothing is drawn past it but half the thickness of a frame. */
const rightMargin = 595.28 - 30 + 1

async function farthestRight(bytes: Uint8Array, page: number): Promise<number> {
  return Math.max(...(await drawnPaths(bytes, page)).map(({ right }) => right))
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
    const { bytes, pages, heights, set } = await read(...sheets)
    expect(pages).toHaveLength(5)
    for (const [nth, heightPt] of heights.entries()) {
      expect(heightPt).toBeGreaterThanOrEqual(settings[set[nth] ?? 0]?.leastDrawingPt ?? Infinity)
    }
    // With few holes the drawing takes a third of the page or more.
    expect(heights[0]).toBeGreaterThan(842 / 3)
    for (const [index, count] of [2, 4, 6, 8, 12].entries()) {
      const found = pages[index]?.join('\n').match(/\bH\d+ 240 (left|right) \d+ \d+/g)
      expect(found).toHaveLength(count)
    }
    // Past eight the holes stand in two columns, and bit and depth under them.
    expect(await farthestRight(bytes, 5)).toBeLessThan(rightMargin)
    expect(pages[4]).toContain('Centre line 1550 H6 240 left 600 1006')
    expect(pages[4]).toContain('H0 240 left 300 1000 H7 240 right 600 1007')
    expect(pages[4]?.join(' ')).toContain('Bit and depth: 8 mm bit, 60 mm deep, all holes.')
  })

  it('holds the most holes that a sheet may have, in three columns on one page, and loses none', async () => {
    const holes = Array.from({ length: mostHoles }, (_, index) => ({
      id: `H${index}`,
      bracket: 'bracket',
      upper: true,
      xMm: 1000 + index,
      yMm: 300 + 150 * (index % 4),
      fromCentreMm: index % 2 === 0 ? -(100.5 + index) : 100.5 + index,
      drillMm: index < 3 ? 10 : 8,
      depthMm: 60,
    }))
    const warnings = Array.from(
      { length: 40 },
      (_, nth) => `Warning ${nth} ${'is long enough to wrap '.repeat(6)}.`,
    )
    const setOut = { ...testSetOut, holes, warnings }
    const { bytes, pages, told, set } = await read(setOutSheet(material({ setOut })))
    expect(await farthestRight(bytes, 1)).toBeLessThan(rightMargin)
    expect(pages).toHaveLength(1)
    expect(set).toEqual([settings.length - 1])
    for (const { id, yMm, fromCentreMm } of holes) {
      const across = `${Math.abs(fromCentreMm)} ${fromCentreMm < 0 ? 'L' : 'R'}`
      expect(pages[0]?.join('\n')).toMatch(new RegExp(`\\b${id} ${across} ${yMm}\\b`))
    }
    expect(told).toContain('H0, H1 and H2: 10 mm bit, 60 mm deep; all others: 8 mm bit, 60 mm deep.')
    expect(told).toContain('39 more are on the screen: read them before you drill.')
  })

  it('counts the warnings that it leaves out, and cuts a long one at a word', () => {
    const [, , cut, , closest] = settings
    if (cut === undefined || closest === undefined) throw new Error('There are five settings')
    const warnings = ['one', 'two', 'three', `four ${'words '.repeat(60)}`, 'five', 'six', 'seven']
    const kept = warningsKept(warnings, cut)
    expect(kept).toHaveLength(7)
    expect(kept.at(-1)).toBe('1 more is on the screen: read it before you drill.')
    expect(kept[3]).toMatch(/^four (words )+words…$/)
    expect(kept[3]?.length).toBeLessThanOrEqual(250)
    expect(warningsKept(warnings.slice(0, 2), closest)).toEqual(['one', 'two'])
  })

  it('prints nothing smaller than 11 points', async () => {
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
    expect(Math.min(...sizes.map(({ size }) => size))).toBeGreaterThan(10.95)
    expect(sizes.find(({ text }) => text === 'drawing-word')?.size).toBeGreaterThan(10.95)
    expect(sizes.find(({ text }) => text === 'A1')?.size).toBeGreaterThan(10.95)
  })
})
