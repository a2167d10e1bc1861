import type { Item } from '../../domain/item.ts'
import { numberCell, penceCell, textCell } from './table.ts'
import type { Cell, Table } from './table.ts'

export type ListedItem = {
  readonly item: Item
  readonly favourite: boolean
  readonly fromPence: number | null
}

type Column = {
  readonly heading: string
  readonly widthChars: number
  readonly cell: (listed: ListedItem) => Cell
}

const yes = (is: boolean): Cell => textCell(is ? 'yes' : 'no')

const commonColumns: readonly Column[] = [
  { heading: 'Item', widthChars: 34, cell: ({ item }) => textCell(item.itemId) },
  { heading: 'Kind', widthChars: 12, cell: ({ item }) => textCell(item.kind) },
  { heading: 'Name', widthChars: 50, cell: ({ item }) => textCell(item.name) },
  { heading: 'Also called', widthChars: 40, cell: ({ item }) => listCell(item.alsoCalled) },
  { heading: 'Generic', widthChars: 9, cell: ({ item }) => yes(item.generic) },
  { heading: 'Retired', widthChars: 9, cell: ({ item }) => yes(item.retired === true) },
  { heading: 'Favourite', widthChars: 9, cell: ({ favourite }) => yes(favourite) },
  { heading: 'Note', widthChars: 30, cell: ({ item }) => textCell(item.note) },
  { heading: 'Lowest price', widthChars: 12, cell: ({ fromPence }) => penceCell(fromPence ?? undefined) },
]

/** Items as a table: what all have, then a column for every figure that any of them has. */
export function catalogueTable(listed: readonly ListedItem[]): Table {
  const figures = [...new Set(listed.flatMap(({ item }) => Object.keys(figuresOf(item))))]
  const columns = [...commonColumns, ...figures.map(figureColumn)]
  return { name: 'Catalogue', columns, rows: listed.map((one) => columns.map(({ cell }) => cell(one))) }
}

function figureColumn(field: string): Column {
  return { heading: field, widthChars: 14, cell: ({ item }) => figureCell(figuresOf(item)[field]) }
}

/** A part's spec, or what an emitter has beside what every item has, its form's own figures among them. */
function figuresOf(item: Item): Readonly<Record<string, unknown>> {
  if (item.kind !== 'emitter') return item.spec
  const { itemId: _id, kind: _kind, name: _name, alsoCalled: _words, generic: _generic, ...rest } = item
  const { retired: _retired, note: _note, form, ...figures } = rest
  const { kind: formKind, ...formFigures } = form
  return { form: formKind, ...formFigures, ...figures }
}

/** Lists, such as brackets and what is in the box, stand as JSON: nothing is lost. */
function figureCell(value: unknown): Cell {
  if (value === undefined) return null
  if (typeof value === 'number') return numberCell(value)
  return textCell(typeof value === 'string' ? value : JSON.stringify(value))
}

function listCell(words: readonly string[] | undefined): Cell {
  return textCell(words?.join('; '))
}
