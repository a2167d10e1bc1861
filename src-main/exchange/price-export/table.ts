/** One cell: text, a number, money in whole pence, or nothing. */
export type Cell =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'pence'; readonly pence: number }
  | null

/** A table that can be written as CSV or as a workbook. */
export type Table = {
  /** The name of the workbook's sheet. */
  readonly name: string
  readonly columns: readonly { readonly heading: string; readonly widthChars: number }[]
  readonly rows: readonly (readonly Cell[])[]
}

export const textCell = (text: string | undefined): Cell =>
  text === undefined || text === '' ? null : { kind: 'text', text }
export const numberCell = (value: number | undefined): Cell =>
  value === undefined ? null : { kind: 'number', value }
export const penceCell = (pence: number | undefined): Cell =>
  pence === undefined ? null : { kind: 'pence', pence }

/** Whole pence as pounds with two figures behind the point; no figure is lost. */
export function poundsText(pence: number): string {
  const size = Math.abs(pence)
  return `${pence < 0 ? '-' : ''}${Math.floor(size / 100)}.${String(size % 100).padStart(2, '0')}`
}

/** A number in figures and a point only: a price list knows no powers of ten. */
export function plainNumber(value: number): string {
  const shortest = String(value)
  if (!shortest.includes('e')) return shortest
  const exact = value.toFixed(20)
  return exact.replace(/\.?0+$/, '')
}
