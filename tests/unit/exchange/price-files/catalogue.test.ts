import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { describe, expect, it } from 'vitest'
import {
  lineCells,
  emptyLine,
  emptyPrice,
} from '../../../../src-main/exchange/price-files/forms/catalogue-line.ts'
import { detectReading } from '../../../../src-main/exchange/price-files/detect-reading.ts'
import { lookAtFile } from '../../../../src-main/exchange/price-files/look-at-file.ts'
import { priceFileLimits } from '../../../../src-main/exchange/price-files/limits.ts'
import { catalogueXml } from '../../../price-files/catalogue-for-tests.ts'
import { answered, refused } from '../../../answered.ts'
import { fileOf, heardAsDetected, inCorpus } from './read-for-tests.ts'

/** The published schemas lie beside the project, where they are there at all. */
const schema = join(import.meta.dirname, '../../../../../shared/ubl-2.1/maindoc/UBL-Catalogue-2.1.xsd')

describe('a UBL 2.1 catalogue', () => {
  it('that these tests read is valid by the published schema', async ({ skip }) => {
    if (!existsSync(schema)) return skip('The UBL 2.1 schemas are not beside the project')
    const { XmlDocument, XsdValidator } = await import('libxml2-wasm')
    const { xmlRegisterFsInputProviders } = await import('libxml2-wasm/lib/nodejs.mjs')
    xmlRegisterFsInputProviders()
    using xsd = XmlDocument.fromBuffer(readFileSync(schema), { url: pathToFileURL(schema).href })
    using validator = XsdValidator.fromDoc(xsd)
    using right = XmlDocument.fromBuffer(readFileSync(inCorpus('catalogue.xml').path))
    expect(() => validator.validate(right)).not.toThrow()
    using wrong = XmlDocument.fromString(catalogueXml('GBP').replaceAll('PriceAmount', 'PriceFigure'))
    expect(() => validator.validate(wrong)).toThrow(/PriceFigure/)
  })

  it('gives its lines: a price per 100, a break, validity, a line deleted, one without a price', async () => {
    const { reading, rows, rejected } = await heardAsDetected(inCorpus('catalogue.xml'))
    expect(reading).toEqual({
      form: 'ublCatalogue',
      headerRow: 0,
      decimal: 'point',
      dates: 'yearFirst',
      columns: [],
    })
    expect(rows).toEqual([
      {
        rowNo: 1,
        code: '00126',
        name: 'Clip 15 mm & screw',
        gtin: '2000000000015',
        packHolds: 50,
        // 4.10 for 100, and 50 in the pack.
        packPence: 205,
        validFrom: '2027-02-01',
        validTo: '2027-06-30',
      },
      {
        rowNo: 2,
        code: '00127',
        name: 'Elbow 15 mm, pack of ten',
        packHolds: 10,
        packPence: 1000,
        breaks: [{ fromPacks: 10, packPence: 950 }],
        validFrom: '2027-01-15',
      },
      { rowNo: 4, code: '00129', name: 'Drain cock', packHolds: 1, packPence: 725, validFrom: '2027-03-01' },
    ])
    expect(rejected.map(({ rowNo, says }) => [rowNo, says])).toEqual([
      [3, 'The supplier marks this line as deleted.'],
      [5, 'The row has no price.'],
    ])
  })

  it('is looked at like any other list', async () => {
    const look = answered(await lookAtFile(inCorpus('catalogue.xml')))
    expect(look.headings[0]).toBe('code')
    expect(look.understood.map(({ code }) => code)).toEqual(['00126', '00127', '00129'])
  })

  it('is known by its outermost element, whatever prefix it has', async () => {
    const prefixed = catalogueXml('GBP')
      .replace('<Catalogue xmlns=', '<u:Catalogue xmlns:u=')
      .replace('</Catalogue>', '</u:Catalogue>')
    expect((await heardAsDetected(fileOf('prefixed.xml', prefixed))).rows).toHaveLength(3)
    const other =
      '<?xml version="1.0"?><Invoice xmlns="urn:oasis:names:specification:ubl:schema:xsd:Invoice-2"/>'
    expect(refused(await detectReading(fileOf('invoice.xml', other))).message).toBe(
      '"invoice.xml" is XML, but its outermost element is <Invoice>: of XML, only UBL 2.1 catalogues are read.',
    )
    const stranger = catalogueXml('GBP').replace('xsd:Catalogue-2', 'xsd:Catalogue-1')
    expect(refused(await detectReading(fileOf('stranger.xml', stranger))).message).toContain(
      'only UBL 2.1 catalogues',
    )
  })

  it('in Western European letters of one byte is read by what it declares', async () => {
    const text = catalogueXml('GBP').replace('UTF-8', 'ISO-8859-1').replace('Drain cock', 'Drain café')
    const { rows } = await heardAsDetected(fileOf('latin.xml', Buffer.from(text, 'latin1')))
    expect(rows.at(-1)?.name).toBe('Drain café')
  })
})

describe('XML that is not to be trusted', () => {
  it('with entities that swell is refused before they do', async () => {
    const levels = Array.from(
      { length: 9 },
      (_, at) => `<!ENTITY e${at + 1} "${`&e${at};`.repeat(10)}">`,
    ).join('')
    const text = catalogueXml('GBP')
      .replace('?>\n', `?>\n<!DOCTYPE Catalogue [<!ENTITY e0 "ha">${levels}]>\n`)
      .replace('Drain cock', '&e9;')
    const problem = refused(await detectReading(fileOf('swells.xml', text)))
    expect(problem).toMatchObject({
      code: 'refused',
      message: expect.stringContaining('carries a document type'),
    })
  })

  it('with an entity that nothing defines is refused', async () => {
    const file = fileOf('entity.xml', catalogueXml('GBP').replace('Drain cock', '&secret;'))
    expect(refused(await detectReading(file)).message).toContain('"entity.xml" is not whole XML')
  })

  it('that is cut off is refused', async () => {
    const text = catalogueXml('GBP')
    const { answer } = await heardAsDetected(fileOf('cut.xml', text.slice(0, text.length - 200)))
    expect(refused(answer).message).toContain('"cut.xml" is not whole XML')
  })

  it('nested without end is refused', async () => {
    const deep = catalogueXml('GBP').replace('<cbc:Name>Drain cock', `${'<cbc:Name>'.repeat(200)}Drain cock`)
    expect(refused(await detectReading(fileOf('deep.xml', deep))).message).toContain(
      'has more than 60 elements inside one another',
    )
  })

  it('with one endless text is refused, with one long text rejects the line', async () => {
    const long = catalogueXml('GBP').replace('Drain cock', 'x'.repeat(priceFileLimits.rowChars + 600_000))
    const { answer } = await heardAsDetected(fileOf('long.xml', long))
    expect(refused(answer).message).toContain('has one text of more than 4,000,000 characters')
    const some = catalogueXml('GBP').replace('Drain cock', 'x'.repeat(100_001))
    const { rejected } = await heardAsDetected(fileOf('some.xml', some))
    expect(rejected.find(({ rowNo }) => rowNo === 4)?.says).toContain(
      'A cell has more than 100,000 characters',
    )
  })
})

describe('what a line of a catalogue is for', () => {
  const cells = (base: string, baseUnit: string, more = {}) =>
    lineCells(
      { ...emptyLine(), code: 'A', prices: [{ ...emptyPrice(), amount: '5.00', base, baseUnit }], ...more },
      { from: '', to: '' },
    )

  it('is the pack without a base quantity, or with one in packages', () => {
    expect([cells('', '')[4], cells('1', 'PK')[4], cells('1', 'XBX')[4]]).toEqual(['pack', 'pack', 'pack'])
    expect(cells('1', 'RL', { orderableUnit: 'RL' })[4]).toBe('pack')
  })

  it('is so many units otherwise', () => {
    expect([cells('1', 'EA')[4], cells('100', 'C62')[4], cells('10', 'PK')[4]]).toEqual(['1', '100', '10'])
  })

  it('holds the units of the item times the items of the pack', () => {
    const holds = (packQuantity: string, packSize: string) => cells('', '', { packQuantity, packSize })[5]
    expect([holds('', ''), holds('10', ''), holds('10', '1'), holds('1', '12'), holds('5', '4')]).toEqual([
      '',
      '10',
      '10',
      '12',
      '20',
    ])
  })
})
