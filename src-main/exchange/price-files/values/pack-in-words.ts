import { readNumber } from './written-number.ts'
import type { DecimalMark, WrittenNumber } from './written-number.ts'

const packWord = '(?:packs?|pkts?|pks?|packets?|bags?|boxe?s?|bx|cartons?|ctns?|tubs?|bundles?|cases?|drums?)'
const figure = '(\\d{1,3}(?:,\\d{3})+|\\d{1,6})'
/** Behind the figure stands no unit of size, no fraction and no further figure. */
const alone = '(?![\\d./]|\\s?(?:mm|cm|m|kg|g|ml|l|ltr|litres?|w|bar|in|inch|")(?![a-z]))'

const patterns: readonly RegExp[] = [
  // 'pk 100', 'box of 50', 'bag/25', 'pack x 10'
  new RegExp(`(?<![a-z])${packWord}\\.?\\s*(?:of|/|x|-|:)?\\s*${figure}${alone}`, 'gi'),
  // '100 per box', '100/bag', '100 pack', '10pk'
  new RegExp(
    `(?<![\\d.,/x])(?<!x\\s)${figure}\\s*(?:per|/|a)?[\\s-]*${packWord}(?![a-z])(?!\\.?\\s*(?:of|/|x|-|:)?\\s*\\d)`,
    'gi',
  ),
  // '/100' that stands by itself or at the end of a word
  new RegExp(`(?<=^|[\\s(a-z])/\\s?(\\d{1,6})(?=$|[\\s),;])(?!\\s?(?:mm|cm|m)(?![a-z]))`, 'gi'),
  // 'x 100' at the end, not behind a size ('4 x 50', '15mm x 100')
  /(?<![\d"'½¼¾]|mm|cm|\d\s?m)\s[x×]\s?(\d{1,6})(?=$|\s*[),;])/gi,
]
/** '3m', '25 mtr': a length sold as one. */
const metres = /(?<![\d.,/a-wyz])(\d{1,4}(?:\.\d{1,3})?)\s?(?:m|mtrs?|metres?)(?![a-z\d²³/])/gi
/** '10 x 3m': ten of them, or a size of ten? The ten is a second answer, so that there is none. */
const timesMetres = /(?<![\w.])(\d{1,4})\s?[x×]\s?\d{1,4}(?:\.\d{1,3})?\s?(?:m|mtrs?|metres?)(?![a-z\d²³/])/gi

/**
 * What a pack holds, from the words of a description: 'pk 100', 'box of 50', '/100', 'x 100', '100 per box', '3m',
 * 'bag/25'. Null when it says nothing, or says two different things.
 */
export function packInWords(text: string): WrittenNumber | null {
  const found = new Map<string, WrittenNumber>()
  for (const pattern of [...patterns, metres, timesMetres])
    for (const [, written = ''] of text.matchAll(pattern)) {
      const number = readNumber(written, 'point')
      if (number !== null && number.digits > 0)
        found.set(String(number.digits / 10 ** number.decimals), number)
    }
  const [only] = found.values()
  return found.size === 1 && only !== undefined ? only : null
}

const single = /^(?:each|ea\.?|single|unit|piece|pce|pcs?|1\s?(?:each|ea))$/i
const withUnit = /^([\d.,' \u00A0]+?)\s*(?:each|ea|pcs?|pieces?|nr|no|off|m|mtr|metres?|pk|pack|units?)\.?$/i

/** What a cell of a column of pack sizes says; null when it is no pack size. An empty cell is a pack of one. */
export function readPackHolds(text: string, decimal: DecimalMark): WrittenNumber | null {
  if (text === '') return one
  const plain = readNumber(text, decimal)
  if (plain !== null) return plain
  if (single.test(text)) return one
  const counted = withUnit.exec(text)
  return (counted === null ? null : readNumber((counted[1] ?? '').trim(), decimal)) ?? packInWords(text)
}

export const one: WrittenNumber = { digits: 1, decimals: 0 }

const forThePack =
  /^(?:per\s+|\/\s*)?(?:pack|pk|pkt|box|bx|bag|carton|ctn|roll|coil|tub|length|len|lgth|bundle)$/i
const forOne = /^(?:per\s+|\/\s*)?(?:each|ea\.?|unit|one|single|piece|pce|pcs?|metre|mtr|m)$/i
const forMany = /^(?:per\s+|\/\s*)?(\d{1,3}(?:,\d{3})+|\d{1,6})(?:\s*(?:ea|each|m|mtr|pcs?|off))?$/i
const wordsForMany: Readonly<Record<string, number>> = { hundred: 100, thousand: 1000 }

/** What a price is for, as a column says it: a number of units, 'pack', or null when that is not understood. */
export function readPricePer(text: string): number | 'pack' | null {
  if (forThePack.test(text)) return 'pack'
  if (forOne.test(text)) return 1
  const counted = forMany.exec(text.replace(/[.,]0{1,2}$/, ''))
  if (counted !== null) return positive(Number((counted[1] ?? '').replaceAll(',', '')))
  return wordsForMany[text.toLowerCase().replace(/^(?:per|\/)\s*/, '')] ?? null
}

const positive = (count: number) => (count > 0 ? count : null)
