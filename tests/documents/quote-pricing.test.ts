import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import sample from '../../resources/sample/two-rooms.job.json' with { type: 'json' }
import type { Desk } from '../../src-main/desk/desk.ts'
import { quotePdf } from '../../src-main/desk/papers/quote-pdf.ts'
import { job as jobSchema } from '../../src-main/domain/job.ts'
import type { Job } from '../../src-main/domain/job.ts'
import type { Pricing } from '../../src-main/domain/pricing.ts'
import type { Quote } from '../../src-main/domain/quote.ts'
import { customerQuoteView } from '../../src-main/documents/customer-quote-view.ts'
import { quoteDocument } from '../../src-main/documents/quote-document.ts'
import { answered } from '../answered.ts'
import { quoteOf, testLines, testMaterial } from './material-for-tests.ts'
import { penceIn, readPdf, unbroken } from './read-pdf.ts'

/** The sample job's quote with its own pricing, printed and read back. */
async function readBack(pricing: Pricing, more: Partial<Job> = {}) {
  const folder = mkdtempSync(join(tmpdir(), 'tailpiece-pricing-'))
  try {
    const desk: Desk = {
      today: '2026-11-25',
      now: () => '2026-11-25T19:00:00Z',
      store: null,
      dataFolder: null,
      papersFolder: folder,
      mayChoosePath: false,
    }
    const job = jobSchema.parse({ ...sample, ...more, pricing })
    const { path } = answered(await quotePdf({ job }, desk))
    return await readPdf(readFileSync(path))
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

/** The last amount in the row that starts with these words. */
function amount(rows: readonly string[], start: string): number {
  const found = rows.filter((row) => row.startsWith(start)).at(-1)
  const pence = penceIn(found ?? '').at(-1)
  if (pence === undefined) throw new Error(`No amount stands beside ${start}`)
  return pence
}

/** The amounts of each line in the price tables: what stands before the sums of the sections. */
function lineRows(rows: readonly string[]): readonly (readonly number[])[] {
  const sums = rows.findLastIndex((row) => row.startsWith('Radiators and towel rails £'))
  expect(sums).toBeGreaterThan(rows.indexOf('Price'))
  return rows
    .slice(rows.indexOf('Price'), sums)
    .filter((row) => !row.includes(', together'))
    .map(penceIn)
    .filter((pence) => pence.length > 0)
}

const sum = (all: readonly number[]) => all.reduce((so, one) => so + one, 0)
const discounts = [
  { kind: 'percent', name: 'Neighbour', basisPoints: 1000, of: 'labour' },
  { kind: 'amount', name: 'Returning customer', pence: 2501 },
] as const

/** Every table in a definition, with the widths of its columns and its rows. */
function tablesIn(
  part: unknown,
): readonly { readonly widths: readonly unknown[]; readonly body: readonly (readonly unknown[])[] }[] {
  if (typeof part !== 'object' || part === null) return []
  const own = 'widths' in part && 'body' in part ? [part as never] : []
  return [...own, ...Object.values(part).flatMap(tablesIn)]
}

describe('the tables of the paper', () => {
  it('have as many cells in each row as columns, with and without a column for the tax', () => {
    const quote = quoteOf(testLines)
    const lines = quote.lines.map((line) => ({ ...line, rateKey: 'standard', taxPence: 0 }))
    const taxes = [{ ...quote.totals.taxes[0], netPence: quote.totals.netPence, taxPence: 0 }]
    const totals = { ...quote.totals, taxes, grossPence: quote.totals.netPence, rounding: 'line' }
    for (const one of [quote, { ...quote, lines, totals } as Quote]) {
      const tables = tablesIn(quoteDocument(customerQuoteView(testMaterial({ quote: one }))))
      expect(tables.length).toBeGreaterThan(7)
      for (const { widths, body } of tables) {
        for (const row of body) expect(row).toHaveLength(widths.length)
      }
    }
  })
})

describe('a reader with a calculator comes to the totals of the paper', { timeout: 60_000 }, () => {
  it('by document: lines and discounts to the net, each rate once to its tax, and to the gross', async () => {
    const { pages, told } = await readBack({
      taxTreatment: 'usual',
      rounding: 'document',
      lineCategories: { valve: 'energySaving', emitter: 'reduced' },
      discounts,
    })
    const rows = pages.flat()
    const net = amount(rows, 'Total before VAT')
    expect(sum(lineRows(rows).flat())).toBe(net)
    expect(
      lineRows(rows)
        .flat()
        .filter((pence) => pence < 0).length,
    ).toBeGreaterThanOrEqual(3)
    const rated = rows
      .filter((row) => /^VAT, .*: \d+% of £/.test(row))
      .map((row) => {
        const [base = 0, tax = 0] = penceIn(row)
        return { base, tax, percent: Number(/(\d+)% of/.exec(row)?.[1]) }
      })
    expect(rated.map(({ percent }) => percent)).toEqual([20, 5, 0])
    for (const { base, tax, percent } of rated) expect(tax).toBe(Math.floor((base * percent + 50) / 100))
    expect(sum(rated.map(({ base }) => base))).toBe(net)
    expect(amount(rows, 'Total with VAT £')).toBe(net + sum(rated.map(({ tax }) => tax)))
    const words = unbroken(told)
    expect(words).toContain('once on the sum at each rate and rounded to the nearest penny, half a penny up')
    expect(words).toContain('Lines that say nothing else: VAT at 20%.')
    expect(words).toMatch(/Thermostatic valve[^£]*\(VAT at 0%\)/)
    expect(words).toContain('Discount: Neighbour (10% of labour)')
  })

  it('by line: every line shows its tax, and the taxes add up to the tax of the total', async () => {
    const { pages, told } = await readBack({ taxTreatment: 'usual', rounding: 'line', discounts })
    const rows = pages.flat()
    const lines = lineRows(rows)
    for (const [net = 0, tax = 0] of lines) {
      const size = Math.floor((Math.abs(net) * 20 + 50) / 100)
      expect(tax + 0).toBe(net < 0 ? -size + 0 : size)
    }
    const net = sum(lines.map(([one = 0]) => one))
    const tax = sum(lines.map(([, one = 0]) => one))
    expect(amount(rows, 'Total before VAT')).toBe(net)
    expect(amount(rows, 'VAT, standard rate: 20% of')).toBe(tax)
    expect(amount(rows, 'Total with VAT £')).toBe(net + tax)
    expect(unbroken(told)).toContain('VAT is worked out on each line and rounded to the nearest penny')
  })

  it('under reverse charge: no tax in the total, the amount to account for, and the words that it needs', async () => {
    const { pages, told } = await readBack({ taxTreatment: 'reverseCharge', rounding: 'document', discounts })
    const rows = pages.flat()
    const net = amount(rows, 'Total before VAT')
    expect(sum(lineRows(rows).flat())).toBe(net)
    expect(amount(rows, 'Total to pay us £')).toBe(net)
    expect(amount(rows, 'VAT, reverse charge: 0% of')).toBe(0)
    const words = unbroken(told)
    // HMRC VATREVCON37100: the words "reverse charge", who pays, and the amount outside the total.
    expect(words).toContain('Reverse charge: customer to pay the VAT to HMRC.')
    const [base, due] = penceIn(/VAT to account for on [^:]*: £[\d,.]+\d/.exec(words)?.[0] ?? '')
    expect([base, due]).toEqual([net, Math.floor((net * 20 + 50) / 100)])
    expect(words).toContain('It is not in the total.')
    expect(words).not.toContain('with VAT.')
    const deposit = amount(rows, 'Deposit, to book the work')
    expect(deposit).toBe(Math.floor((net * 25 + 50) / 100))
    expect(amount(rows, 'Balance, when the work is done')).toBe(net - deposit)
  })

  it('keeps an option with its own tax outside the total', async () => {
    const option = {
      optionId: 'strip',
      name: 'Draught strip',
      netPence: 1001,
      taxKey: 'reduced',
      chosen: false,
    }
    const usual = { taxTreatment: 'usual', rounding: 'document' } as const
    const without = (await readBack(usual, { options: [] })).pages.flat()
    const { pages } = await readBack(usual, { options: [option] })
    const rows = pages.flat()
    expect(penceIn(rows.find((row) => row.startsWith('Draught strip')) ?? '')).toEqual([1001, 1051])
    expect(amount(rows, 'Total with VAT £')).toBe(amount(without, 'Total with VAT £'))
  })
})
