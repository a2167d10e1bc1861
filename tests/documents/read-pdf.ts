import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'

/** A PDF read back: each page's rows from the top, each row's words from the left, and what the file says of itself. */
export type ReadBack = {
  readonly pages: readonly (readonly string[])[]
  readonly text: string
  /** The words in the order in which they were written, on one line: columns do not mix. */
  readonly told: string
  readonly info: Readonly<Record<string, unknown>>
}

type Word = { readonly text: string; readonly x: number; readonly y: number; readonly width: number }

export async function readPdf(bytes: Uint8Array): Promise<ReadBack> {
  const loading = getDocument({ data: new Uint8Array(bytes), useSystemFonts: false, verbosity: 0 })
  const file = await loading.promise
  const pages: (readonly string[])[] = []
  const told: string[] = []
  for (let number = 1; number <= file.numPages; number += 1) {
    const content = await (await file.getPage(number)).getTextContent()
    const words = content.items.flatMap((item): Word[] =>
      'str' in item && item.str.trim() !== ''
        ? [{ text: item.str, x: Number(item.transform[4]), y: Number(item.transform[5]), width: item.width }]
        : [],
    )
    pages.push(rowsOf(words))
    told.push(...content.items.map((item) => ('str' in item ? item.str + (item.hasEOL ? ' ' : '') : '')))
  }
  const { info } = await file.getMetadata()
  await loading.destroy()
  const text = plain(pages.map((rows) => rows.join('\n')).join('\n'))
  return {
    pages: pages.map((rows) => rows.map(plain)),
    text,
    told: unbroken(plain(told.join(''))),
    info: info as Record<string, unknown>,
  }
}

/** Words whose feet stand on one line, within three points, from the top of the page. */
function rowsOf(words: readonly Word[]): readonly string[] {
  const rows: Word[][] = []
  for (const word of words.toSorted((a, b) => b.y - a.y)) {
    const row = rows.at(-1)
    if (row?.[0] !== undefined && row[0].y - word.y < 3) row.push(word)
    else rows.push([word])
  }
  return rows.map((row) => inARow(row.toSorted((a, b) => a.x - b.x)))
}

/** Pieces that touch are one word; a gap of more than a point is a space. */
function inARow(words: readonly Word[]): string {
  return words.reduce((row, word, index) => {
    const before = words[index - 1]
    const gap = before === undefined ? 0 : word.x - before.x - before.width
    return gap > 1 ? `${row} ${word.text}` : row + word.text
  }, '')
}

/** Ordinary spaces only, one at a time; line breaks stay. */
function plain(text: string): string {
  return text.replace(/[^\S\n]+/g, ' ').replace(/\u200b/g, '')
}

/** The text on one line, so that a sentence is found wherever its lines were broken. */
export function unbroken(text: string): string {
  return text.replace(/\s+/g, ' ')
}

/** Amounts of money in a row of text, in pence. */
export function penceIn(row: string): readonly number[] {
  return [...row.matchAll(/(−?)£([\d,]+)\.(\d\d)/g)].map(
    ([, minus, pounds = '', pence = '']) =>
      (minus === '−' ? -1 : 1) * Number(pounds.replaceAll(',', '') + pence),
  )
}
