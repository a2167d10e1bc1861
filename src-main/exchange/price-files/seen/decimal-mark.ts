import type { DecimalMark } from '../values/written-number.ts'

/**
 * How decimals are marked, by what amounts show: of a point and a comma the last marks them; one alone marks them
 * unless three figures stand behind it. The point when nothing tells.
 */
export function decimalMarkOf(amounts: readonly string[]): DecimalMark {
  let point = 0
  let comma = 0
  for (const text of amounts) {
    const says = markIn(text)
    if (says === 'point') point += 1
    else if (says === 'comma') comma += 1
  }
  return comma > point ? 'comma' : 'point'
}

function markIn(text: string): DecimalMark | null {
  const figures = /\d[\d.,'’ \u00A0\u2009\u202F]*/.exec(text)?.[0].replaceAll(/[^\d.,]+$/g, '') ?? ''
  const point = figures.lastIndexOf('.')
  const comma = figures.lastIndexOf(',')
  if (point >= 0 && comma >= 0) return point > comma ? 'point' : 'comma'
  const at = Math.max(point, comma)
  if (at < 0) return null
  const mark = point >= 0 ? '.' : ','
  // '1.234.567' is all thousands, so the other mark is the decimals'.
  if (figures.indexOf(mark) !== at) return mark === '.' ? 'comma' : 'point'
  if (/\d{3}$/.test(figures.slice(at + 1)) && figures.length - at === 4) return null
  return mark === '.' ? 'point' : 'comma'
}
