import { meaningsOf } from './column-words.ts'
import { isPrice } from './propose-columns.ts'

type Rows = readonly (readonly string[])[]

/** Rows below a heading that are asked whether they look like a list. */
const asked = 8

/**
 * Which row holds the headings, counted from 1; 0 when none does. Each row is scored by how many things its words name
 * (a logo's row or an address names none), less its amounts, and by whether rows of the same width follow.
 */
export function headerRowOf(rows: Rows): number {
  let best = 0
  let bestScore = 0
  rows.forEach((row, index) => {
    const named = new Set(row.flatMap((cell) => meaningsOf(cell)[0]?.meaning ?? [])).size
    const amounts = row.filter((cell) => /\d/.test(cell) && isPrice(cell.trim())).length
    if (named === 0 || (named === 1 && amounts > 0)) return
    const score = named * 3 - amounts * 2 + follows(row, rows.slice(index + 1))
    const enough = named >= 2 ? score > 2 : score > 4
    if (enough && score > bestScore) {
      best = index + 1
      bestScore = score
    }
  })
  return best
}

/**
 * From 0 to 3: how many of the next rows are filled about as far as the headings and hold figures. The same headings
 * once more, as on a new page, do not count.
 */
function follows(row: readonly string[], below: Rows): number {
  const width = filled(row)
  const same = row.join('\n')
  const next = below.filter((cells) => filled(cells) > 0 && cells.join('\n') !== same).slice(0, asked)
  if (next.length === 0) return 0
  const like = next.filter((cells) => filled(cells) >= width * 0.5 && cells.some((cell) => /\d/.test(cell)))
  return (3 * like.length) / next.length
}

const filled = (cells: readonly string[]) => cells.filter((cell) => cell.trim() !== '').length
