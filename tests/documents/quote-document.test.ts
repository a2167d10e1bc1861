import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { printPdf } from '../../src-main/desk/papers/print-pdf.ts'
import { customerQuoteView } from '../../src-main/documents/customer-quote-view.ts'
import type { QuoteMaterial } from '../../src-main/documents/customer-quote-view.ts'
import { quoteDocument } from '../../src-main/documents/quote-document.ts'
import { canary, quoteOf, testLines, testMaterial } from './material-for-tests.ts'
import { penceIn, readPdf, unbroken } from './read-pdf.ts'

const createdOn = '2026-03-02'

async function printed(material: QuoteMaterial) {
  return printPdf(quoteDocument(customerQuoteView(material)), { createdOn })
}

/** The amounts in the rows from the one that starts with `from` to the one that starts with `to`, both with it. */
function amountsBetween(rows: readonly string[], from: string, to: string): readonly number[] {
  const start = rows.findIndex((row) => row.startsWith(from))
  const end = rows.findIndex((row, index) => index > start && row.startsWith(to))
  expect(start).toBeGreaterThanOrEqual(0)
  expect(end).toBeGreaterThan(start)
  return rows.slice(start, end + 1).flatMap(penceIn)
}

describe('the quote on paper', { timeout: 60_000 }, () => {
  it('prints every amount, and each section adds up to the sum under it', async () => {
    const { bytes } = await printed(testMaterial())
    const { pages, text } = await readPdf(bytes)
    const rows = pages.flat()
    for (const [, , , , pence] of testLines) {
      expect(rows.flatMap(penceIn)).toContain(pence)
    }
    const materials = amountsBetween(
      rows,
      'Fittings and materials Quantity',
      'Fittings and materials, together',
    )
    expect(materials.slice(0, -1).reduce((sum, pence) => sum + pence, 0)).toBe(materials.at(-1))
    expect(materials).toHaveLength(5)
    const labour = amountsBetween(rows, 'Labour Quantity', 'Labour, together')
    expect(labour).toEqual([13_751, 8397, 22_148])
    expect(text).toContain('240 mm')
    expect(text).toContain('19 ml')
    expect(text).toContain('about 2 h 40 min')
  })

  it('leads a reader from the sections to net, tax by rate, gross, deposit and balance', async () => {
    const { pages } = await readPdf((await printed(testMaterial())).bytes)
    const rows = pages.flat()
    const sumAt = rows.findIndex((row) => row.startsWith('Total before VAT'))
    const sections = rows.slice(sumAt - 5, sumAt).flatMap(penceIn)
    const [net = 0] = penceIn(rows[sumAt] ?? '')
    expect(sections).toEqual([123_456, 2902, 22_148, 1080, 2000])
    expect(sections.reduce((sum, pence) => sum + pence, 0)).toBe(net)
    const [standardNet = 0, standardTax = 0] = penceIn(rows[sumAt + 1] ?? '')
    const [reducedNet = 0, reducedTax = 0] = penceIn(rows[sumAt + 2] ?? '')
    expect(standardNet + reducedNet).toBe(net)
    expect(standardTax).toBe(Math.round(standardNet * 0.2))
    expect(reducedTax).toBe(100)
    const [gross = 0] = penceIn(rows[sumAt + 3] ?? '')
    expect(gross).toBe(net + standardTax + reducedTax)
    const [deposit = 0] = penceIn(rows[sumAt + 4] ?? '')
    const [balance = 0] = penceIn(rows[sumAt + 5] ?? '')
    expect(deposit).toBe(45_433)
    expect(deposit + balance).toBe(gross)
  })

  it('keeps options that are not chosen outside the total, with and without tax', async () => {
    const { pages } = await readPdf((await printed(testMaterial())).bytes)
    const row = pages.flat().find((one) => one.startsWith('Clean the whole system'))
    // 185.01 and a fifth of it, 37.002, is 222.01
    expect(penceIn(row ?? '')).toEqual([18_501, 22_201])
  })

  it('says in sentences what is done, how warm it will be, and what is not included', async () => {
    const { text } = await readPdf((await printed(testMaterial())).bytes)
    const flat = unbroken(text)
    expect(flat).toContain(
      'Take down the old single panel on the window wall and touch up the marks of its brackets.',
    )
    expect(flat).toContain(
      'Fit a double panel radiator with two rows of fins, 1000 mm wide and 600 mm high, its centre midway between the two pipes and its bottom edge 150 mm above the floor.',
    )
    expect(flat).toContain('Ease the left pipe across to its valve.')
    expect(flat).toContain('Cut and re-pipe the right side to its valve.')
    // 1008 W x 3.412142 = 3439.4; 918 W x 3.412142 = 3132.3; 90 W x 3.412142 = 307.1
    expect(flat).toContain('needs about 1,008 W (3,439 BTU/h)')
    expect(flat).toContain('it will have 918 W (3,132 BTU/h)')
    expect(flat).toContain('That is 90 W (307 BTU/h) short')
    expect(flat).toContain('a rough estimate')
    expect(flat).toContain('Pipe collar (white): not in this price.')
    expect(flat).toContain('Testing for asbestos, or removing it.')
    expect(flat).toContain('The window wall in the back bedroom is painted solid masonry.')
    expect(flat).toContain('2 March 2026')
    // Thirty days after 2 March is 1 April.
    expect(flat).toContain('1 April 2026')
    expect(flat).toContain('generic catalogue figures')
    expect(flat).toMatch(/Double panel radiator, 600 high × 1000 wide \*/)
  })

  it('holds nothing of cost, margin, suppliers, reasons or notes: not in its text, not in what it says of itself', async () => {
    const { bytes } = await printed(testMaterial())
    const { text, info } = await readPdf(bytes)
    for (const where of [text, JSON.stringify(info), Buffer.from(bytes).toString('latin1')]) {
      expect(where).not.toContain(canary)
      expect(where).not.toMatch(/987\.65|432\.19|121\.21|margin|mark-up|supplier/i)
    }
    expect(JSON.stringify(customerQuoteView(testMaterial()))).not.toContain(canary)
    expect(info['Title']).toBe('Draft of quote TEST-7, not yet issued')
    expect(info['Language']).toBe('en-GB')
  })

  it('prints Polish and Greek names', async () => {
    const material = testMaterial()
    const customer = { name: 'Zażółć Gęślą-Jaźń', addressLines: ['Οδός Παραδείγματος 5', 'Łódź'] }
    const { bytes } = await printed({ ...material, job: { ...material.job, customer } })
    const { text } = await readPdf(bytes)
    expect(text).toContain('Zażółć Gęślą-Jaźń')
    expect(text).toContain('Οδός Παραδείγματος 5')
    expect(text).toContain('Łódź')
  })

  it('gives the same bytes twice, and other bytes for another day', async () => {
    const first = await printed(testMaterial())
    const second = await printed(testMaterial())
    expect(Buffer.compare(first.bytes, second.bytes)).toBe(0)
    const later = await printPdf(quoteDocument(customerQuoteView(testMaterial())), {
      createdOn: '2026-03-03',
    })
    expect(Buffer.compare(first.bytes, later.bytes)).not.toBe(0)
  })

  it('runs over pages with sixty rooms: heads repeated, pages numbered, nothing lost', async () => {
    const material = testMaterial()
    const [room] = material.job.rooms
    const [swap] = material.job.swaps
    if (room === undefined || swap === undefined) throw new Error('The test job has a room and a swap')
    const numbers = Array.from({ length: 60 }, (_, index) => index + 1)
    const rooms = numbers.map((number) => ({
      ...room,
      roomId: `room-${number}`,
      name: `Room number ${number}`,
    }))
    const swaps = numbers.map((number) => ({ ...swap, roomId: `room-${number}`, swapId: `swap-${number}` }))
    const each = <T>(thing: T) => Object.fromEntries(swaps.map((one) => [one.swapId, thing]))
    const lines = numbers.map(
      (number) => ['parts', `Part for room number ${number}`, 1, 'each', 100 + number] as const,
    )
    const { bytes, pages: count } = await printed({
      ...material,
      job: { ...material.job, rooms, swaps },
      quote: quoteOf(lines),
      setOuts: each(Object.values(material.setOuts)[0]) as QuoteMaterial['setOuts'],
      emitters: each(Object.values(material.emitters)[0]) as QuoteMaterial['emitters'],
    })
    const { pages, text } = await readPdf(bytes)
    expect(pages).toHaveLength(count)
    expect(count).toBeGreaterThan(10)
    for (const [index, rows] of pages.entries())
      expect(rows.at(-1)).toContain(`Page ${index + 1} of ${count}`)
    for (const number of numbers) {
      expect(text).toMatch(new RegExp(`^Room number ${number}$`, 'm'))
      expect(text).toMatch(new RegExp(`^Part for room number ${number}( \\*)? 1 £`, 'm'))
    }
    const withParts = pages.filter((rows) => rows.some((row) => row.startsWith('Part for room')))
    expect(withParts.length).toBeGreaterThan(1)
    for (const rows of withParts) {
      expect(rows.some((row) => row.startsWith('Fittings and materials Quantity Before VAT'))).toBe(true)
    }
  })

  it('loses nothing of a room with forty swaps, sixty emitters in one section and five thousand signs of terms', async () => {
    const material = testMaterial()
    const [swap] = material.job.swaps
    if (swap === undefined) throw new Error('The test job has a swap')
    const swaps = Array.from({ length: 40 }, (_, index) => ({
      ...swap,
      swapId: `swap-${index}`,
      existing: { name: `Old radiator ${index}.`, widthMm: 500, heightMm: 500 },
    }))
    const each = <T>(thing: T) => Object.fromEntries(swaps.map((one) => [one.swapId, thing]))
    const lines = Array.from({ length: 60 }, (_, i) => ['emitter', `Emitter ${i}.`, 1, 'each', 5000] as const)
    const terms = Array.from({ length: 250 }, (_, i) => `Term number ${i}.`).join('\n')
    const { bytes } = await printed({
      ...material,
      number: 'Q-2026-0001',
      issuedOn: '2026-03-02',
      firm: { ...material.firm, terms },
      job: { ...material.job, swaps },
      quote: quoteOf(lines),
      setOuts: each(Object.values(material.setOuts)[0]) as QuoteMaterial['setOuts'],
      emitters: each(Object.values(material.emitters)[0]) as QuoteMaterial['emitters'],
    })
    const flat = unbroken((await readPdf(bytes)).text)
    for (let index = 0; index < 40; index += 1) expect(flat).toContain(`old radiator ${index}.`)
    for (let index = 0; index < 60; index += 1) expect(flat).toContain(`Emitter ${index}.`)
    for (let index = 0; index < 250; index += 1) expect(flat).toContain(`Term number ${index}.`)
    expect(flat).toContain('Signed, for Test Customer')
  })

  it('leaves no heading alone at the foot of a page', async () => {
    const headings = ['Price', 'Not included', 'What the price rests on', 'Safety', 'Terms']
    for (const count of [4, 10, 13, 16, 19, 22, 28]) {
      const lines = Array.from({ length: count }, (_, i) => ['parts', `Part ${i}`, 1, 'each', 100] as const)
      const { pages } = await readPdf((await printed(testMaterial({ quote: quoteOf(lines) }))).bytes)
      for (const rows of pages) expect(headings).not.toContain(rows.at(-2))
    }
  })

  it('stands without a deposit, options, terms or a survey of pipes that need work', async () => {
    const material = testMaterial()
    const { terms: _, ...firm } = material.firm
    const quote = quoteOf(testLines.slice(0, 1), { options: [], cautions: [], warmth: [] })
    const totals = { ...quote.totals, depositPence: 0 }
    const { text } = await readPdf((await printed({ ...material, firm, quote: { ...quote, totals } })).bytes)
    expect(text).not.toMatch(/^(Terms|Safety|Options)/m)
    expect(text).not.toContain('Deposit')
    expect(text).toContain('Acceptance')
  })

  it('refuses to be made from lines that do not add up', () => {
    const quote = quoteOf(testLines)
    const wrong = { ...quote, totals: { ...quote.totals, netPence: quote.totals.netPence + 1 } }
    expect(() => customerQuoteView(testMaterial({ quote: wrong }))).toThrow(/come to/)
  })

  it('is a sound file by qpdf', async ({ skip }) => {
    const version = spawnSync('qpdf', ['--version'], { timeout: 20_000 })
    if (version.error !== undefined) {
      console.log('qpdf is not on this machine, so no second reader checked the PDF')
      skip('qpdf is not on this machine')
    }
    const folder = mkdtempSync(join(tmpdir(), 'tailpiece-qpdf-'))
    try {
      const file = join(folder, 'quote.pdf')
      writeFileSync(file, (await printed(testMaterial())).bytes)
      const check = spawnSync('qpdf', ['--check', file], { encoding: 'utf8', timeout: 20_000 })
      expect(check.stdout).toContain('No syntax or stream encoding errors found')
      expect(check.status).toBe(0)
    } finally {
      rmSync(folder, { recursive: true })
    }
  })
})
