import type { WorkbookParts } from './workbook-parts.ts'
import { xmlFeed } from './xml-events.ts'

/** What the workbook reader does not tell of a sheet's cells, by their names ('A12'). */
export type CellForms = {
  /** How many figures a number is shown with, where its form fills up with noughts: '00126' for 126. */
  readonly figures: ReadonlyMap<string, number>
  /** Formulas that came to an error, which the workbook reader hands over as empty. */
  readonly errors: ReadonlySet<string>
}

const none: CellForms = { figures: new Map(), errors: new Set() }

/** Goes through a sheet only when its book has a form of noughts, or the sheet an error. */
export async function cellForms(parts: WorkbookParts, sheetPath: string): Promise<CellForms> {
  const styles = parts.get('xl/styles.xml')
  const widths = styles === undefined ? new Map<string, number>() : await paddingStyles(styles)
  const sheet = parts.get(sheetPath)
  if (sheet === undefined || (widths.size === 0 && !sheet.includes('t="e"'))) return none
  const figures = new Map<string, number>()
  const errors = new Set<string>()
  // By a pattern rather than by the XML reader: there may be millions of cells, and of each only its tag counts.
  for (const [, attributes = ''] of sheet.toString('latin1').matchAll(cellTag)) {
    const type = typeOf.exec(attributes)?.[1] ?? 'n'
    const width = type === 'n' ? widths.get(styleOf.exec(attributes)?.[1] ?? '') : undefined
    if (width === undefined && type !== 'e') continue
    const cell = nameOf.exec(attributes)?.[1] ?? ''
    if (width === undefined) errors.add(cell)
    else figures.set(cell, width)
  }
  return { figures, errors }
}

const cellTag = /<(?:\w+:)?c\s([^<>]*)>/g
const nameOf = /\br=["']([A-Z]+\d+)["']/
const styleOf = /\bs=["'](\d+)["']/
const typeOf = /\bt=["'](\w+)["']/

/** By the number of the cell style: a form of noughts alone, two or more. */
async function paddingStyles(styles: Buffer): Promise<ReadonlyMap<string, number>> {
  const forms = new Map<string, number>()
  const widths = new Map<string, number>()
  let inCellStyles = false
  let styleNo = 0
  const feed = await xmlFeed('styles', {
    open: ({ local, attributes }) => {
      if (local === 'numFmt') {
        const code = /^(0{2,})(?:;.*)?$/.exec(attributes['formatCode']?.value ?? '')?.[1]
        if (code !== undefined) forms.set(attributes['numFmtId']?.value ?? '', code.length)
      }
      if (local === 'cellXfs') inCellStyles = true
      if (local !== 'xf' || !inCellStyles) return
      const width = forms.get(attributes['numFmtId']?.value ?? '')
      if (width !== undefined) widths.set(String(styleNo), width)
      styleNo += 1
    },
    close: (local) => {
      if (local === 'cellXfs') inCellStyles = false
    },
  })
  return feed.feed(styles.toString('utf8')) === undefined ? widths : new Map()
}
