import { packedZip } from './zip-for-tests.ts'

const head = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>'
const main = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main'
const relations = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships'
const packaging = 'http://schemas.openxmlformats.org/package/2006'

/** `cells` is what stands inside sheetData, `after` what stands behind it. */
export type SheetXml = { readonly name: string; readonly cells: string; readonly after?: string }

/** Cell styles: 0 plain, 1 five figures with noughts ahead, 2 a day, 3 money. */
const styles = `${head}<styleSheet xmlns="${main}"><numFmts count="1"><numFmt numFmtId="164" formatCode="00000"/></numFmts><fonts count="1"><font/></fonts><fills count="1"><fill/></fills><borders count="1"><border/></borders><cellStyleXfs count="1"><xf numFmtId="0"/></cellStyleXfs><cellXfs count="4"><xf numFmtId="0"/><xf numFmtId="164" applyNumberFormat="1"/><xf numFmtId="14" applyNumberFormat="1"/><xf numFmtId="4" applyNumberFormat="1"/></cellXfs></styleSheet>`

export function workbookXml(
  sheets: readonly SheetXml[],
): readonly { readonly name: string; readonly bytes: Buffer }[] {
  const listed = sheets.map(
    ({ name }, at) => `<sheet name="${name}" sheetId="${at + 1}" r:id="rId${at + 1}"/>`,
  )
  const related = sheets.map(
    (_, at) =>
      `<Relationship Id="rId${at + 1}" Type="${relations}/worksheet" Target="worksheets/sheet${at + 1}.xml"/>`,
  )
  const types = sheets.map(
    (_, at) =>
      `<Override PartName="/xl/worksheets/sheet${at + 1}.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/>`,
  )
  const parts: readonly (readonly [string, string])[] = [
    [
      '[Content_Types].xml',
      `${head}<Types xmlns="${packaging}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/><Override PartName="/xl/styles.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.styles+xml"/>${types.join('')}</Types>`,
    ],
    [
      '_rels/.rels',
      `${head}<Relationships xmlns="${packaging}/relationships"><Relationship Id="rId1" Type="${relations}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    ],
    [
      'xl/workbook.xml',
      `${head}<workbook xmlns="${main}" xmlns:r="${relations}"><sheets>${listed.join('')}</sheets></workbook>`,
    ],
    [
      'xl/_rels/workbook.xml.rels',
      `${head}<Relationships xmlns="${packaging}/relationships">${related.join('')}<Relationship Id="rId900" Type="${relations}/styles" Target="styles.xml"/></Relationships>`,
    ],
    ['xl/styles.xml', styles],
    ...sheets.map(
      ({ cells, after = '' }, at) =>
        [
          `xl/worksheets/sheet${at + 1}.xml`,
          `${head}<worksheet xmlns="${main}"><sheetData>${cells}</sheetData>${after}</worksheet>`,
        ] as const,
    ),
  ]
  return parts.map(([name, text]) => ({ name, bytes: Buffer.from(text) }))
}

export const workbook = (sheets: readonly SheetXml[]) => packedZip(workbookXml(sheets))

/** A cell: text as text, a number as a number, or a number with a style or a formula. */
export type Cell =
  | string
  | number
  | null
  | { readonly value: number | string; readonly style?: number; readonly formula?: string }

const letter = (at: number) => String.fromCharCode(65 + at)
const escaped = (text: string) => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;')

function cellXml(cell: Cell, ref: string): string {
  if (cell === null) return ''
  if (typeof cell === 'string')
    return `<c r="${ref}" t="inlineStr"><is><t xml:space="preserve">${escaped(cell)}</t></is></c>`
  if (typeof cell === 'number') return `<c r="${ref}"><v>${cell}</v></c>`
  const style = cell.style === undefined ? '' : ` s="${cell.style}"`
  const formula = cell.formula === undefined ? '' : `<f>${escaped(cell.formula)}</f>`
  const type = typeof cell.value === 'string' ? ' t="str"' : ''
  return `<c r="${ref}"${style}${type}>${formula}<v>${cell.value}</v></c>`
}

/** Rows from row 1 on; an empty one is left out of the sheet, as spreadsheets do. */
export function rowsXml(rows: readonly (readonly Cell[])[]): string {
  return rows
    .map((row, index) =>
      row.length === 0
        ? ''
        : `<row r="${index + 1}">${row.map((cell, at) => cellXml(cell, `${letter(at)}${index + 1}`)).join('')}</row>`,
    )
    .join('')
}
