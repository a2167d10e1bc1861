import { refuse } from '../../../domain/outcome.ts'
import type { Outcome } from '../../../domain/outcome.ts'
import type { FileReading } from '../../../domain/price-list.ts'
import { catalogueRows } from './catalogue-rows.ts'
import type { OpenFile } from './open-file.ts'
import type { RowsHeard, RowsHearer } from './rows-hearer.ts'
import { sheetRows } from './sheet-rows.ts'
import { encodingOf, markedEncoding, wideEncoding } from './text-encoding.ts'
import { textRows } from './text-rows.ts'

type Form = FileReading['form']

/** What a file is by its first bytes, whatever it is called; or what it is instead of a price list. */
export function formOf({ head, name }: OpenFile): Outcome<never> | Form {
  if (head.subarray(0, 4).equals(Buffer.from([0x50, 0x4b, 3, 4]))) return 'sheet'
  const other = otherKinds.find(({ begins }) => head.toString('latin1', 0, 16).startsWith(begins))
  if (other !== undefined)
    return refuse('invalid', `"${name}" is ${other.is}. Send the price list as .xlsx or CSV.`)
  const encoding = markedEncoding(head) ?? wideEncoding(head) ?? 'utf-8'
  const text = new TextDecoder(encoding).decode(head.subarray(0, 4000)).trimStart()
  if (/^<(?:!doctype html|html|table|body|head)\b/i.test(text))
    return refuse(
      'invalid',
      `"${name}" is a web page, whatever its name says. Open it in a spreadsheet and save it as .xlsx or CSV.`,
    )
  return /^<(?:\?xml|!|[\w:]*Catalogue\b)/.test(text) ? 'ublCatalogue' : 'text'
}

const otherKinds = [
  {
    begins: '\xd0\xcf\x11\xe0',
    is: 'an old workbook (.xls), or a workbook locked with a password: open it and save it as .xlsx without one',
  },
  { begins: '%PDF', is: 'a PDF, from which no prices can be read' },
  { begins: '\x1f\x8b', is: 'a packed file (gzip): unpack it first' },
  { begins: 'Rar!', is: 'a packed file (rar): unpack it first' },
  { begins: '7z\xbc\xaf', is: 'a packed file (7z): unpack it first' },
  { begins: '\x89PNG', is: 'a picture' },
  { begins: '\xff\xd8\xff', is: 'a picture' },
  { begins: 'PK\x05\x06', is: 'an empty zip' },
] as const

const formInWords: Readonly<Record<Form, string>> = {
  text: 'a text file (CSV)',
  sheet: 'a workbook (.xlsx)',
  ublCatalogue: 'an XML catalogue',
}

/** Every row of a file, read the way that `reading` says. */
export async function rowsOf(
  file: OpenFile,
  reading: FileReading,
  hear: RowsHearer,
): Promise<Outcome<RowsHeard>> {
  const form = formOf(file)
  if (typeof form !== 'string') return form
  if (form !== reading.form)
    return refuse(
      'invalid',
      `"${file.name}" is ${formInWords[form]}, not ${formInWords[reading.form]} as was said.`,
      'reading.form',
    )
  if (form === 'ublCatalogue') return catalogueRows(file, hear)
  if (form === 'sheet') return sheetRows(file, reading, hear)
  const encoding = reading.encoding ?? (await encodingOf(file))
  return textRows(file, { encoding, delimiter: reading.delimiter ?? ',' }, hear)
}
