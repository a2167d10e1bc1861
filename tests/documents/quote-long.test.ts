import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { describe, expect, it } from 'vitest'
import { printPdf } from '../../src-main/desk/papers/print-pdf.ts'
import { printable } from '../../src-main/desk/papers/printable.ts'
import { customerQuoteView } from '../../src-main/documents/customer-quote-view.ts'
import type { QuoteMaterial } from '../../src-main/documents/customer-quote-view.ts'
import { quoteDocument } from '../../src-main/documents/quote-document.ts'
import { answered } from '../answered.ts'
import { quoteOf, testMaterial } from './material-for-tests.ts'
import { penceIn, readPdf, unbroken } from './read-pdf.ts'

const issued = { number: 'Q-2026-0007', revision: 1, issuedOn: '2026-03-02' } as const

async function printed(changes: Partial<QuoteMaterial>) {
  const view = customerQuoteView(testMaterial({ ...issued, ...changes }))
  return printPdf(quoteDocument(view), { createdOn: issued.issuedOn })
}

type Section = 'parts' | 'other'

/** A quote of so many lines, none of them an emitter, so that its price fills pages as it likes. */
function linesOf(count: number, section: Section) {
  return Array.from({ length: count }, (_, at) => [section, `Thing ${at + 1}`, 1, 'each', 1000 + at] as const)
}

/** A job with so many rooms, each with a swap. */
function manyRooms(count: number): Partial<QuoteMaterial> {
  const material = testMaterial()
  const [room] = material.job.rooms
  const [swap] = material.job.swaps
  const [setOut] = Object.values(material.setOuts)
  const [emitter] = Object.values(material.emitters)
  if (room === undefined || swap === undefined || setOut === undefined || emitter === undefined)
    throw new Error('The test job has a room and a swap')
  const numbers = Array.from({ length: count }, (_, at) => at + 1)
  const swaps = numbers.map((n) => ({ ...swap, roomId: `r${n}`, swapId: `s${n}` }))
  const each = <T>(thing: T) => Object.fromEntries(swaps.map(({ swapId }) => [swapId, thing]))
  return {
    job: {
      ...material.job,
      rooms: numbers.map((n) => ({ ...room, roomId: `r${n}`, name: `Room number ${n}` })),
      swaps,
    },
    setOuts: each(setOut),
    emitters: each(emitter),
  }
}

/** Where every piece of text stands: its left and right end, and the width of its page. */
async function places(bytes: Uint8Array) {
  const loading = getDocument({ data: new Uint8Array(bytes), useSystemFonts: false, verbosity: 0 })
  const file = await loading.promise
  const found: { text: string; left: number; right: number; page: number }[] = []
  for (let number = 1; number <= file.numPages; number += 1) {
    const page = await file.getPage(number)
    for (const item of (await page.getTextContent()).items) {
      if (!('str' in item) || item.str.trim() === '') continue
      const left = Number(item.transform[4])
      found.push({ text: item.str, left, right: left + item.width, page: page.view[2] ?? 0 })
    }
  }
  await loading.destroy()
  return found
}

describe('a long quote', { timeout: 180_000 }, () => {
  it('of more than sixty pages loses no room and no line, repeats its heads, and counts its pages', async () => {
    const count = 250
    const quote = quoteOf(linesOf(count, 'parts'))
    const { bytes, pages: counted } = await printed({ ...manyRooms(count), quote })
    const { pages, text } = await readPdf(bytes)
    expect(counted).toBeGreaterThanOrEqual(60)
    expect(pages).toHaveLength(counted)
    for (const [at, rows] of pages.entries()) expect(rows.at(-1)).toContain(`Page ${at + 1} of ${counted}`)
    const rows = new Set(text.split('\n'))
    for (let n = 1; n <= count; n += 1) expect(rows.has(`Room number ${n}`)).toBe(true)
    const shown = pages.flat().flatMap((row) => (row.startsWith('Thing ') ? penceIn(row) : []))
    expect(shown).toEqual(quote.lines.map(({ netPence }) => netPence))
    for (const page of pages.filter((one) => one.some((row) => row.startsWith('Thing '))))
      expect(page.some((row) => row.startsWith('Fittings and materials Quantity Before VAT'))).toBe(true)
  })

  it('keeps two lines beside each sum, wherever the page ends', async () => {
    for (const count of [1, 2, 3, 39, 40, 41, 42]) {
      const { pages } = await readPdf((await printed({ quote: quoteOf(linesOf(count, 'parts')) })).bytes)
      const page = pages.find((rows) =>
        rows.some((row) => row.startsWith('Fittings and materials, together')),
      )
      if (count === 1) {
        expect(page).toBeUndefined()
        continue
      }
      const at = page?.findIndex((row) => row.startsWith('Fittings and materials, together')) ?? 0
      expect(page?.slice(at - 2, at).map((row) => row.replace(/( \*)? \d £.*/, ''))).toEqual([
        `Thing ${count - 1}`,
        `Thing ${count}`,
      ])
      expect(page?.some((row) => row.startsWith('Fittings and materials Quantity'))).toBe(true)
    }
  })

  it('keeps up to eight rooms, and of more the last two, and the head beside the totals, and the totals whole, wherever the page ends', async () => {
    for (const count of [1, 3, 8, 9, 33, 36, 39]) {
      const { job } = testMaterial()
      const changes = {
        job: { ...job, priceDetail: 'rooms' as const },
        quote: quoteOf(linesOf(count, 'other')),
      }
      const { pages } = await readPdf((await printed(changes)).bytes)
      const page = pages.find((rows) => rows.some((row) => row.startsWith('Total before VAT'))) ?? []
      const at = page.findIndex((row) => row.startsWith('Total before VAT'))
      const kept = count <= 8 ? count : 2
      expect(page.slice(at - kept, at).every((row) => row.startsWith('Thing '))).toBe(true)
      expect(page.some((row) => row.startsWith('By room Before VAT'))).toBe(true)
      expect(page.some((row) => row.startsWith('Balance, when the work is done'))).toBe(true)
    }
  })

  it('leaves no heading of options alone at the foot of a page', async () => {
    for (const count of [22, 24, 25, 26, 27]) {
      const { pages } = await readPdf((await printed({ quote: quoteOf(linesOf(count, 'parts')) })).bytes)
      const page = pages.find((rows) => rows.includes('Options, not in the total')) ?? []
      expect(page.some((row) => row.startsWith('Clean the whole system'))).toBe(true)
    }
  })
})

const endless = 'Endless'.repeat(24)

describe('long words and foreign letters', { timeout: 120_000 }, () => {
  it.each(['lines', 'rooms', 'total'] as const)(
    'push nothing off the page where the price is shown by %s',
    async (priceDetail) => {
      const material = testMaterial()
      const lines = [
        ['emitter', endless, 1, 'each', 99_999_999],
        ['parts', `${endless} 1`, 1, 'each', 100],
        ['parts', `${endless} 2`, 1, 'each', 100],
        ['other', `Discount: ${endless}`, 1, 'sum', -100],
      ] as const
      const option = {
        optionId: 'o',
        name: endless,
        netPence: 99_999_999,
        rateKey: 'standard',
        chosen: false,
      }
      const { bytes } = await printed({
        reference: endless,
        firm: { ...material.firm, name: endless, addressLines: [endless], registrations: [endless] },
        job: {
          ...material.job,
          priceDetail,
          customer: { name: endless, addressLines: [endless] },
          site: { addressLines: [`${endless}.`] },
          rooms: material.job.rooms.map((room) => ({ ...room, name: endless })),
        },
        quote: quoteOf(lines, { options: [option] }),
      })
      const found = await places(bytes)
      expect(found.length).toBeGreaterThan(100)
      const off = found.filter(({ left, right, page }) => left < 40 || right > page - 40)
      expect(off).toEqual([])
      expect(found.map(({ text }) => text).join('')).toContain('£1,199,999.99')
    },
  )

  it('print as they are: Polish and Greek, in names that stand in bold and in sentences', async () => {
    const material = testMaterial()
    const names = ['Łazienka na piętrze', 'Κύρια κρεβατοκάμαρα', 'Żółty pokój', 'Ισόγειο']
    for (const name of names) {
      const rooms = material.job.rooms.map((room) => ({ ...room, name }))
      const firm = { ...material.firm, name: `${name} Heating` }
      const view = customerQuoteView(testMaterial({ ...issued, firm, job: { ...material.job, rooms } }))
      const ready = answered(await printable(view))
      const { bytes } = await printPdf(quoteDocument(ready), { createdOn: issued.issuedOn })
      const { text, info } = await readPdf(bytes)
      expect(unbroken(text)).toContain(`${name} Heating`)
      expect(text.split('\n')).toContain(name)
      expect(info['Author']).toBe(`${name} Heating`)
    }
  })

  it.each(['王小明', 'دفء', '🔥', 'ℵ'])(
    'are refused by name where the typeface has no such letter: %s',
    async (name) => {
      const { job } = testMaterial()
      const view = customerQuoteView(testMaterial({ job: { ...job, customer: { name, addressLines: [] } } }))
      const answer = await printable(view)
      const [letter = ''] = Array.from(name)
      expect(answer).toMatchObject({
        ok: false,
        problems: [
          { code: 'impossible', message: expect.stringContaining(`“${letter}” in “${name}”`) as string },
        ],
      })
    },
  )
})

describe('the file', { timeout: 120_000 }, () => {
  it('holds its typeface, says its language and its title, and claims no tags that it does not have', async () => {
    const { bytes } = await printed({})
    const raw = Buffer.from(bytes).toString('latin1')
    const fonts = [...raw.matchAll(/\/BaseFont \/([\w+-]+)/g)].map(([, name]) => name ?? '')
    expect(fonts.length).toBeGreaterThan(0)
    for (const name of fonts) expect(name).toMatch(/^[A-Z]{6}\+Inter/)
    expect(raw).toMatch(/\/FontFile2 \d+ 0 R/)
    expect(raw).toMatch(/\/Lang \(en-GB\)/)
    expect(raw).toMatch(/\/DisplayDocTitle true/)
    expect(raw).not.toMatch(/\/StructTreeRoot|\/Marked true/)
  })
})
