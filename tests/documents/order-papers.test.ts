import { existsSync, readFileSync } from 'node:fs'
import { mkdir, readFile, writeFile } from 'node:fs/promises'
import { basename, join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Desk } from '../../src-main/desk/desk.ts'
import { printPdf } from '../../src-main/desk/papers/print-pdf.ts'
import { orderDocument } from '../../src-main/documents/order-document.ts'
import type { Order } from '../../src-main/domain/follow-up/order.ts'
import { orderCsv } from '../../src-main/exchange/order-csv.ts'
import { accepted, ask, begin, firm, refusalOf, sum } from '../store/van/van-for-tests.ts'
import type { Begun } from '../store/van/van-for-tests.ts'
import { penceIn, readPdf } from './read-pdf.ts'

/** The published schemas lie beside the project, where they are there at all. */
const schema = join(import.meta.dirname, '../../../shared/ubl-2.1/maindoc/UBL-Order-2.1.xsd')

let begun: Begun
beforeAll(async () => {
  begun = await begin(async (desk) => {
    await accepted(desk, 'job-ann', 'Wilhelmina Unmistakable')
    await ask(desk, 'picking.make', { quoteIds: ['Q-2026-0001'] })
  })
}, 120_000)
afterAll(() => begun.gone())

/** The first order of the pick list, with carriage on it, and the firm known. */
async function orderedFrom(desk: Desk): Promise<Order> {
  await ask(desk, 'firm.save', { firm })
  const { picking } = await ask(desk, 'picking.read', { pickingNo: 1 })
  const { supplierId = '', name = '' } = picking.body.orders[0] ?? {}
  await ask(desk, 'supplier.save', { supplier: { supplierId, name, carriagePence: 795 } })
  const { orders } = await ask(desk, 'order.make', { pickingNo: 1, supplierId })
  const [order] = orders
  if (order === undefined) throw new Error('Something is bought for the sample')
  return order
}

/** What no supplier may learn: the customer, the job, and every price of the quote. */
async function secretsOf(desk: Desk): Promise<readonly string[]> {
  const { job, quote } = await ask(desk, 'quote.read', { quoteId: 'Q-2026-0001' })
  const where = job.customer.addressLines.filter((line) => !firm.addressLines.includes(line))
  const pounds = (quote.grossPence / 100).toFixed(2)
  return ['Wilhelmina', 'Unmistakable', job.title, ...where, pounds, 'Q-2026-0001']
}

/** Rows with a price of a pack and an amount, read from the page: how many packs, and both in pence. */
function rowsOf(pages: readonly (readonly string[])[]) {
  return pages.flat().flatMap((row) => {
    const [packPence, linePence] = penceIn(row)
    const packs = / (\d+)(?: × [\d.]+ ?(?:m²|[a-zA-Z]*))? £/.exec(row)?.[1]
    return packPence === undefined || linePence === undefined || packs === undefined
      ? []
      : [{ packs: Number(packs), packPence, linePence }]
  })
}

const amountIn = (text: string, label: string) =>
  penceIn(text.split('\n').find((row) => row.startsWith(label)) ?? '')[0]

const order: Order = {
  orderId: 'P-2026-0042',
  supplierId: 'moor',
  supplierName: 'Moor Supplies',
  madeOn: '2026-03-02',
  state: 'made',
  goodsPence: 0,
  carriagePence: 0,
  totalPence: 0,
  lines: [],
  deliveries: [],
  says: ['9 lines are from the generic catalogue'],
}
const lineOf = (lineNo: number): Order['lines'][number] => ({
  lineNo,
  code: `CODE-${1000 + lineNo}`,
  name: `Compression elbow number ${lineNo}, 15 mm x 15 mm, chrome plated`,
  unit: lineNo % 2 === 0 ? 'm' : 'each',
  packHolds: 3,
  packs: lineNo,
  packPence: 101 * lineNo,
  linePence: 101 * lineNo * lineNo,
  deliveredPacks: 0,
  backOrderedPacks: 0,
})

async function read(one: Order) {
  const { bytes } = await printPdf(orderDocument({ firm, order: one }), { createdOn: one.madeOn })
  return readPdf(bytes)
}

describe('an order on paper', { timeout: 120_000 }, () => {
  it('has each code, packs and price, and its sums add up to the penny', async () => {
    await begun.inTwoWindows(async (desk) => {
      const made = await orderedFrom(desk)
      const { path, pages } = await ask(desk, 'order.pdf', { orderId: made.orderId })
      expect([basename(path), pages]).toEqual(['order-P-2026-0001.pdf', 1])
      const paper = await readPdf(await readFile(path))
      const rows = rowsOf(paper.pages)
      expect(rows).toEqual(
        made.lines.map(({ packs, packPence, linePence }) => ({ packs, packPence, linePence })),
      )
      for (const { packs, packPence, linePence } of rows) expect(packs * packPence).toBe(linePence)
      const goods = sum(rows.map(({ linePence }) => linePence))
      expect(amountIn(paper.text, 'Goods')).toBe(goods)
      expect(amountIn(paper.text, 'Carriage')).toBe(795)
      expect(amountIn(paper.text, 'Total before VAT')).toBe(goods + 795)
      const joined = paper.told.replace(/[\s\u200b]/g, '')
      for (const { code } of made.lines) expect(joined).toContain(code)
      for (const words of [
        firm.name,
        ...firm.addressLines,
        made.supplierName,
        'Pick list 1',
        '25 November 2026',
      ])
        expect(paper.told).toContain(words)
      for (const secret of await secretsOf(desk)) expect(paper.told).not.toContain(secret)
      expect(JSON.stringify(paper.info)).not.toContain('Wilhelmina')
    })
  })

  it('repeats its head on every page, and keeps every line and every sum on many pages', async () => {
    const lines = Array.from({ length: 90 }, (_, at) => lineOf(at + 1))
    // 101 x (1 + 4 + 9 + … + 90 x 90) = 101 x 90 x 91 x 181 / 6.
    const goodsPence = (101 * 90 * 91 * 181) / 6
    const long = { ...order, lines, goodsPence, carriagePence: 1, totalPence: goodsPence + 1 }
    const { pages, text } = await read(long)
    expect(pages.length).toBeGreaterThan(2)
    const withLines = pages.filter((page) => rowsOf([page]).length > 0)
    for (const page of withLines) expect(page.filter((row) => row.startsWith('Your code'))).toHaveLength(1)
    const rows = rowsOf(pages)
    expect(rows.map(({ packs }) => packs)).toEqual(lines.map(({ packs }) => packs))
    expect(sum(rows.map(({ linePence }) => linePence))).toBe(goodsPence)
    expect(amountIn(text, 'Total before VAT')).toBe(goodsPence + 1)
    pages.forEach((page, at) => {
      expect(page.at(-1)).toBe(`Sampleton Test Heating · Order P-2026-0042 Page ${at + 1} of ${pages.length}`)
    })
  })

  it('says what a pack holds, and when it was cancelled; not what was said to the firm alone', async () => {
    const lines = [
      lineOf(1),
      lineOf(2),
      { ...lineOf(3), packHolds: 1 },
      { ...lineOf(4), unit: 'm2' as const },
    ]
    const plain = await read({ ...order, lines })
    const packs = plain.pages
      .flat()
      .flatMap((row) => /^\d+ CODE-\d+ .*? (\d+(?: × \d+(?: (?:m²|m))?)?) £/.exec(row)?.[1] ?? [])
    expect(packs).toEqual(['1 × 3', '2 × 3 m', '3', '4 × 3 m²'])
    expect(plain.text).not.toContain('Cancelled')
    expect(plain.text).not.toContain('generic')
    expect(plain.text).not.toContain('Our reference')
    const cancelled = await read({ ...order, lines, state: 'cancelled', cancelledOn: '2026-03-04' })
    expect(cancelled.text).toContain('Cancelled on 4 March 2026. Please send nothing of it.')
  })

  it('is refused while nobody says which firm it is from, and where no one may choose a place', async () => {
    await begun.inTwoWindows(async (desk) => {
      const { orders } = await ask(desk, 'order.make', { pickingNo: 1 })
      const orderId = orders[0]?.orderId ?? ''
      for (const name of ['order.pdf', 'order.xml'] as const) {
        const refused = await refusalOf(desk, name, { orderId })
        expect(refused).toMatchObject({ code: 'invalid', next: 'Fill in your firm’s details first.' })
      }
      for (const name of ['order.pdf', 'order.xml', 'order.csv'] as const) {
        expect(await refusalOf(desk, name, { orderId, out: 'mine' })).toMatchObject({
          code: 'refused',
          path: 'out',
        })
        expect(await refusalOf(desk, name, { orderId: 'P-9' })).toMatchObject({ code: 'not-found' })
      }
      expect(await ask(desk, 'order.csv', { orderId })).toMatchObject({ bytes: expect.any(Number) as number })
    })
  })

  it('never writes over a file that is not its own, and does over its own', async () => {
    await begun.inTwoWindows(async (desk) => {
      const { orderId } = await orderedFrom(desk)
      await mkdir(desk.papersFolder, { recursive: true })
      for (const [name, ending] of [
        ['order.pdf', 'pdf'],
        ['order.csv', 'csv'],
        ['order.xml', 'xml'],
      ] as const) {
        const path = join(desk.papersFolder, `order-${orderId}.${ending}`)
        await writeFile(path, 'somebody’s own notes')
        expect(await refusalOf(desk, name, { orderId })).toMatchObject({ code: 'conflict' })
        expect(await readFile(path, 'utf8')).toBe('somebody’s own notes')
        await writeFile(path, '')
        await ask(desk, name, { orderId })
        expect((await ask(desk, name, { orderId })).path).toBe(path)
        const { base64 } = await ask(desk, 'paper.read', { name: basename(path) })
        expect(Buffer.from(base64, 'base64')).toEqual(await readFile(path))
      }
    })
  })
})

describe('an order as a file for another program', { timeout: 120_000 }, () => {
  it('is CSV whose last column sums to the total, carriage in a row of its own', async () => {
    await begun.inTwoWindows(async (desk) => {
      const made = await orderedFrom(desk)
      const { path } = await ask(desk, 'order.csv', { orderId: made.orderId })
      const text = (await readFile(path, 'utf8')).replace(/^\uFEFF/, '')
      const rows = text.trimEnd().split('\r\n')
      expect(rows[0]).toBe(
        'Order,Supplier,Line,Code,Item,Packs,Pack holds,Unit,Pack price before VAT,Amount before VAT',
      )
      expect(rows).toHaveLength(made.lines.length + 2)
      expect(rows.at(-1)).toBe(`P-2026-0001,${made.supplierName},,,Carriage,,,,,7.95`)
      const pence = rows.slice(1).map((row) => Math.round(Number(row.split(',').at(-1)) * 100))
      expect(sum(pence)).toBe(made.totalPence)
      for (const secret of await secretsOf(desk)) expect(text).not.toContain(secret)
    })
  })

  it('keeps codes as they are written, and no row for carriage where there is none', () => {
    const line = { ...lineOf(1), code: '00126', name: '=Elbow, "plain"' }
    const text = new TextDecoder().decode(orderCsv({ ...order, lines: [line] }))
    expect(text.split('\r\n').slice(1)).toEqual([
      `P-2026-0042,Moor Supplies,1,00126,"'=Elbow, ""plain""",1,3,each,1.01,1.01`,
      '',
    ])
  })

  it('is UBL 2.1 that is valid by the published schema, with the same sums', async ({ skip }) => {
    let xml = ''
    await begun.inTwoWindows(async (desk) => {
      const made = await orderedFrom(desk)
      const { path } = await ask(desk, 'order.xml', { orderId: made.orderId })
      xml = await readFile(path, 'utf8')
      const all = (name: string) =>
        [...xml.matchAll(new RegExp(`<cbc:${name}[^>]*>([^<]*)<`, 'g'))].map(([, text]) => text ?? '')
      const penceOf = (name: string) => all(name).map((text) => Math.round(Number(text) * 100))
      expect(all('ID')).toContain('P-2026-0001')
      expect(all('CustomerReference')).toEqual(['Pick list 1'])
      const [goods, ...lines] = penceOf('LineExtensionAmount')
      expect(lines).toEqual(made.lines.map(({ linePence }) => linePence))
      expect(sum(lines)).toBe(goods)
      expect(penceOf('PayableAmount')).toEqual([made.totalPence])
      expect(penceOf('ChargeTotalAmount')).toEqual([795])
      for (const { code } of made.lines) expect(all('ID')).toContain(code)
      for (const secret of await secretsOf(desk)) expect(xml).not.toContain(secret)
      await ask(desk, 'order.cancel', { orderId: made.orderId, says: 'late' })
      expect(await refusalOf(desk, 'order.xml', { orderId: made.orderId })).toMatchObject({
        code: 'conflict',
      })
      await ask(desk, 'order.pdf', { orderId: made.orderId })
    })
    if (!existsSync(schema)) {
      console.log('The UBL 2.1 schemas are not beside the project, so no order was validated by them')
      return skip('The UBL 2.1 schemas are not beside the project')
    }
    const { XmlDocument, XsdValidator } = await import('libxml2-wasm')
    const { xmlRegisterFsInputProviders } = await import('libxml2-wasm/lib/nodejs.mjs')
    xmlRegisterFsInputProviders()
    const published = XmlDocument.fromBuffer(readFileSync(schema), { url: pathToFileURL(schema).href })
    const validator = XsdValidator.fromDoc(published)
    using valid = XmlDocument.fromString(xml)
    expect(() => validator.validate(valid)).not.toThrow()
    using wrong = XmlDocument.fromString(xml.replaceAll('cbc:PayableAmount', 'cbc:PayAmount'))
    expect(() => validator.validate(wrong)).toThrow(/PayAmount/)
  })
})
