import { describe, expect, it } from 'vitest'
import sample from '../../resources/sample/two-rooms.job.json' with { type: 'json' }
import type { Desk } from '../../src-main/desk/desk.ts'
import { printQuote } from '../../src-main/desk/papers/quote-pdf.ts'
import { workUp } from '../../src-main/desk/quoting/work-up.ts'
import type { PriceDetail } from '../../src-main/domain/firm.ts'
import { job as jobSchema } from '../../src-main/domain/job.ts'
import type { Job } from '../../src-main/domain/job.ts'
import type { Pricing } from '../../src-main/domain/pricing.ts'
import { answered } from '../answered.ts'
import { penceIn, readPdf, unbroken } from './read-pdf.ts'

const desk: Desk = {
  today: '2026-11-25',
  now: () => '2026-11-25T19:00:00Z',
  store: null,
  dataFolder: null,
  papersFolder: '/nowhere',
  mayChoosePath: false,
}

/** The sample job's quote, issued, with so much of its price shown: its lines, and its paper read back. */
async function readBack(detail: PriceDetail, pricing: Pricing, more: Partial<Job> = {}) {
  const job = jobSchema.parse({ ...sample, ...more, pricing, priceDetail: detail })
  const work = answered(await workUp(job, desk))
  const issue = { number: 'Q-2026-0007', issuedOn: '2026-11-25' }
  const { bytes } = answered(await printQuote({ ...work, reference: 'R', fileKey: 'r' }, issue))
  const { pages, told } = await readPdf(bytes)
  return { quote: work.quote, rows: pages.flat(), told: unbroken(told) }
}

const sum = (all: readonly number[]) => all.reduce((so, one) => so + one, 0)
const halfUp = (pence: number, percent: number) => Math.floor((pence * percent + 50) / 100)

/** The last amount in the row that starts with these words. */
function amount(rows: readonly string[], start: string): number {
  const pence = penceIn(rows.filter((row) => row.startsWith(start)).at(-1) ?? '').at(-1)
  if (pence === undefined) throw new Error(`No amount stands beside ${start}`)
  return pence
}

/** The rows between the head of the table of rooms and the total under it. */
function roomRows(rows: readonly string[]): readonly string[] {
  const from = rows.findIndex((row) => row.startsWith('By room Before VAT'))
  const to = rows.findIndex((row) => row.startsWith('Total before VAT'))
  expect(from).toBeGreaterThan(0)
  expect(to).toBeGreaterThan(from)
  return rows.slice(from + 1, to).filter((row) => penceIn(row).length > 0)
}

const severalRates = {
  taxTreatment: 'usual',
  lineCategories: { valve: 'energySaving', emitter: 'reduced' },
} as const
const discounts = [
  { kind: 'percent', name: 'Neighbour', basisPoints: 1000, of: 'labour' },
  { kind: 'amount', name: 'Returning customer', pence: 2501 },
] as const
const option = { optionId: 'strip', name: 'Draught strip', netPence: 1001, taxKey: 'reduced' }

describe('a price by room, added up again from the paper', { timeout: 60_000 }, () => {
  it('names each room, what rooms share and travel, and comes to the net, the tax and the gross', async () => {
    const { rows, quote } = await readBack('rooms', { taxTreatment: 'usual', rounding: 'document' })
    const rooms = roomRows(rows)
    expect(rooms.map((row) => row.replace(/ £.*/, ''))).toEqual([
      'Bathroom',
      'Back bedroom',
      'The job as a whole, with materials that rooms share',
      'Travel there and back',
    ])
    const ofBathroom = quote.lines.filter(
      ({ swapIds, section }) => section !== 'travel' && swapIds.join() === sample.swaps[0]?.swapId,
    )
    expect(penceIn(rooms[0] ?? '')).toEqual([sum(ofBathroom.map(({ netPence }) => netPence))])
    const net = amount(rows, 'Total before VAT')
    expect(sum(rooms.flatMap(penceIn))).toBe(net)
    expect(amount(rows, 'VAT, standard rate: 20% of')).toBe(halfUp(net, 20))
    expect(amount(rows, 'Total with VAT £')).toBe(net + halfUp(net, 20))
    for (const line of quote.lines.filter(({ section }) => section === 'parts'))
      expect(rows.join('\n')).not.toContain(line.name.replaceAll(' x ', ' × '))
  })

  it('speaks of no sharing where one room is worked in', async () => {
    const one = {
      rooms: sample.rooms.slice(0, 1),
      swaps: sample.swaps.slice(0, 1),
    } as unknown as Partial<Job>
    const { rows } = await readBack('rooms', { taxTreatment: 'usual', rounding: 'document' }, one)
    const names = roomRows(rows).map((row) => row.replace(/ £.*/, ''))
    expect(names).toEqual(['Bathroom', 'The job as a whole', 'Travel there and back'])
  })

  it('parts a room whose lines bear several rates, so that each rate adds up, discounts and options apart', async () => {
    const pricing = { ...severalRates, rounding: 'document', discounts } as const
    const { rows, told } = await readBack('rooms', pricing, { options: [{ ...option, chosen: false }] })
    const rooms = roomRows(rows)
    const bearing = (percent: string | null) =>
      sum(
        rooms
          .filter((row) => (percent === null ? !row.includes('VAT at') : row.includes(`(VAT at ${percent})`)))
          .flatMap(penceIn),
      )
    const totals = rows
      .filter((row) => /^VAT, .*: \d+% of £/.test(row))
      .map((row) => [/(\d+%) of/.exec(row)?.[1] ?? '', ...penceIn(row)] as const)
    expect(totals.map(([percent]) => percent)).toEqual(['20%', '5%', '0%'])
    expect(totals.map(([, base]) => base)).toEqual([bearing(null), bearing('5%'), bearing('0%')])
    for (const [percent, base = 0, tax] of totals)
      expect(tax).toBe(halfUp(base, Number.parseInt(percent, 10)))
    expect(sum(rooms.flatMap(penceIn))).toBe(amount(rows, 'Total before VAT'))
    expect(rooms.filter((row) => row.startsWith('Discount: ')).length).toBeGreaterThanOrEqual(4)
    expect(amount(rows, 'Total with VAT £')).toBe(
      sum(totals.map(([, base = 0]) => base)) + sum(totals.map(([, , tax = 0]) => tax)),
    )
    expect(told).toContain('Draught strip (VAT at 5%)')
    expect(penceIn(rows.find((row) => row.startsWith('Draught strip')) ?? '')).toEqual([1001, 1051])
  })

  it('shows the tax of each room where tax is rounded by line, and the taxes add up', async () => {
    const pricing = { ...severalRates, rounding: 'line', discounts } as const
    const { rows, quote } = await readBack('rooms', pricing)
    expect(rows.some((row) => row.startsWith('By room Before VAT VAT'))).toBe(true)
    const pairs = roomRows(rows).map(penceIn)
    for (const pair of pairs) expect(pair).toHaveLength(2)
    const tax = sum(pairs.map(([, one = 0]) => one))
    expect(tax).toBe(sum(quote.lines.map((line) => line.taxPence ?? Number.NaN)))
    const told = rows.filter((row) => /^VAT, .*: \d+% of £/.test(row)).map((row) => penceIn(row)[1] ?? 0)
    expect(sum(told)).toBe(tax)
    expect(amount(rows, 'Total with VAT £')).toBe(sum(pairs.map(([net = 0]) => net)) + tax)
  })

  it('stands under reverse charge with no tax in the total and the amount to account for', async () => {
    const { rows, told } = await readBack('rooms', { taxTreatment: 'reverseCharge', rounding: 'document' })
    const net = sum(roomRows(rows).flatMap(penceIn))
    expect(amount(rows, 'Total to pay us £')).toBe(net)
    // HMRC VATREVCON37100: the words "reverse charge", who pays, and the amount outside the total.
    expect(told).toContain('Reverse charge: customer to pay the VAT to HMRC.')
    expect(penceIn(/VAT to account for on [^:]*: £[\d,.]+\d/.exec(told)?.[0] ?? '')).toEqual([
      net,
      halfUp(net, 20),
    ])
  })

  it('lists an option that was chosen by its name, in the work and in the price', async () => {
    const pricing = { taxTreatment: 'usual', rounding: 'document' } as const
    const options = [{ ...option, chosen: true }]
    const { rows, told } = await readBack('rooms', pricing, { options })
    expect(told).toContain('As you asked: draught strip.')
    expect(penceIn(roomRows(rows).find((row) => row.startsWith('Draught strip')) ?? '')).toEqual([1001])
    expect(sum(roomRows(rows).flatMap(penceIn))).toBe(amount(rows, 'Total before VAT'))
  })
})

describe('a price as a total alone', { timeout: 60_000 }, () => {
  it('shows net, each rate of tax and gross, and no amount of a line or a room', async () => {
    const { rows, told, quote } = await readBack('total', { ...severalRates, rounding: 'document' })
    const price = rows.slice(rows.indexOf('Price') + 1)
    const totals = price.filter((row) => /^VAT, .*: \d+% of £/.test(row)).map(penceIn)
    const net = amount(rows, 'Total before VAT')
    expect(price[0]).toMatch(/^Total before VAT £/)
    expect(sum(totals.map(([base = 0]) => base))).toBe(net)
    expect(amount(rows, 'Total with VAT £')).toBe(net + sum(totals.map(([, tax = 0]) => tax)))
    const shown = rows.flatMap(penceIn)
    const known = [net, ...totals.flat(), ...quote.options.map(({ netPence }) => netPence)]
    for (const { netPence } of quote.lines)
      if (!known.includes(netPence)) expect(shown).not.toContain(netPence)
    expect(told).not.toMatch(/VAT at \d|Lines that say nothing else|items marked/)
    expect(told).toContain('generic catalogue figures')
  })

  it('shows what is taken off, and leads from the work before discounts to the net', async () => {
    const { rows } = await readBack('total', { taxTreatment: 'usual', rounding: 'line', discounts })
    const before = amount(rows, 'The work, before discounts')
    const off = rows.filter((row) => row.startsWith('Discount: ')).flatMap(penceIn)
    expect(off.filter((pence) => pence < 0)).toHaveLength(2)
    expect(before + sum(off)).toBe(amount(rows, 'Total before VAT'))
  })
})

describe('how much of the price is shown', { timeout: 60_000 }, () => {
  it('is as the firm says, and otherwise every line; what the job says goes before', async () => {
    const shown = async (ofFirm: PriceDetail | undefined, ofJob: PriceDetail | undefined) => {
      const firm = { ...sample.firm, ...(ofFirm === undefined ? {} : { priceDetail: ofFirm }) }
      const job = jobSchema.parse({ ...sample, firm, ...(ofJob === undefined ? {} : { priceDetail: ofJob }) })
      const work = answered(await workUp(job, desk))
      const { bytes } = answered(await printQuote({ ...work, reference: 'R', fileKey: 'r' }))
      const { text } = await readPdf(bytes)
      if (text.includes('By room Before VAT')) return 'rooms'
      return text.includes('Labour, together') ? 'lines' : 'total'
    }
    expect(await shown(undefined, undefined)).toBe('lines')
    expect(await shown('total', undefined)).toBe('total')
    expect(await shown('rooms', undefined)).toBe('rooms')
    expect(await shown('total', 'rooms')).toBe('rooms')
    expect(await shown('rooms', 'lines')).toBe('lines')
  })
})
