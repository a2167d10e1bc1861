import type { FileReading, ListRow } from '../../domain/price-list.ts'
import { numberCell, penceCell, textCell } from './table.ts'
import type { Cell, Table } from './table.ts'

const sheetName = 'Price list'

type Column = {
  readonly heading: string
  readonly widthChars: number
  readonly meaning: FileReading['columns'][number]['meaning']
  readonly cell: (row: ListRow) => Cell
}

const fixedColumns: readonly Column[] = [
  { heading: 'Code', widthChars: 18, meaning: 'code', cell: ({ code }) => textCell(code) },
  { heading: 'Name', widthChars: 50, meaning: 'name', cell: ({ name }) => textCell(name) },
  { heading: 'GTIN', widthChars: 16, meaning: 'gtin', cell: ({ gtin }) => textCell(gtin) },
  {
    heading: 'Pack holds',
    widthChars: 12,
    meaning: 'packHolds',
    cell: ({ packHolds }) => numberCell(packHolds),
  },
  { heading: 'Pack price', widthChars: 12, meaning: 'price', cell: ({ packPence }) => penceCell(packPence) },
  { heading: 'Discount group', widthChars: 16, meaning: 'group', cell: ({ group }) => textCell(group) },
  {
    heading: 'Valid from',
    widthChars: 12,
    meaning: 'validFrom',
    cell: ({ validFrom }) => textCell(validFrom),
  },
  { heading: 'Valid to', widthChars: 12, meaning: 'validTo', cell: ({ validTo }) => textCell(validTo) },
]

/**
 * Suppliers' rows as a table, whose headings the reader of price files knows; a pair of columns for each price break. `whose` names
 * the supplier of each row, in a last column, where the rows are of several.
 */
export function priceTable(rows: readonly ListRow[], whose?: readonly string[]): Table {
  const columns = columnsFor(rows)
  const cells = rows.map((row) => columns.map(({ cell }) => cell(row)))
  if (whose === undefined) return { name: sheetName, columns, rows: cells }
  return {
    name: sheetName,
    columns: [...columns, { heading: 'Supplier', widthChars: 28 }],
    rows: cells.map((row, at) => [...row, textCell(whose[at])]),
  }
}

/** How a file made from these rows is to be read again. */
export function readingOfExport(rows: readonly ListRow[], form: 'csv' | 'xlsx'): FileReading {
  const columns = columnsFor(rows).map(({ meaning }, at) => ({ at, meaning }))
  const how = { headerRow: 1, decimal: 'point', dates: 'yearFirst', columns } as const
  return form === 'csv'
    ? { form: 'text', encoding: 'utf-8', delimiter: ',', ...how }
    : { form: 'sheet', sheet: sheetName, ...how }
}

function columnsFor(rows: readonly ListRow[]): readonly Column[] {
  const most = rows.reduce((longest, { breaks }) => Math.max(longest, breaks?.length ?? 0), 0)
  return [...fixedColumns, ...Array.from({ length: most }, (_, at) => breakColumns(at)).flat()]
}

function breakColumns(at: number): readonly Column[] {
  return [
    {
      heading: `Break ${at + 1} from packs`,
      widthChars: 18,
      meaning: 'breakFromPacks',
      cell: ({ breaks }) => numberCell(breaks?.[at]?.fromPacks),
    },
    {
      heading: `Break ${at + 1} price`,
      widthChars: 18,
      meaning: 'breakPrice',
      cell: ({ breaks }) => penceCell(breaks?.[at]?.packPence),
    },
  ]
}
