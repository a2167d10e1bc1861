/** A number as it was written: `digits` without its decimal mark, and how many of them stand behind it. */
export type WrittenNumber = { readonly digits: number; readonly decimals: number }
export type DecimalMark = 'point' | 'comma'

/** More figures than these no longer fit a whole number exactly. */
const mostFigures = 15

/**
 * A number without sign, unit or currency: '12.5', '1,234.50', '1 234,50', "1'234.50"; null when it is none.
 * Thousands must stand in threes, so that '12,50' is not taken for 1250 where the point marks decimals.
 */
export function readNumber(text: string, decimal: DecimalMark): WrittenNumber | null {
  return plainNumber(text, decimal === 'point' ? 46 : 44) ?? groupedNumber(text, decimal)
}

/** Figures with one mark at most: nearly every cell, so it is read by its characters. */
function plainNumber(text: string, mark: number): WrittenNumber | null {
  let digits = 0
  let figures = 0
  let decimals = -1
  for (let at = 0; at < text.length; at += 1) {
    const char = text.charCodeAt(at)
    if (char >= 48 && char <= 57) {
      digits = digits * 10 + (char - 48)
      figures += 1
      if (decimals >= 0) decimals += 1
    } else if (char === mark && decimals < 0) decimals = 0
    else return null
  }
  if (figures === 0 || figures > mostFigures) return null
  return { digits, decimals: Math.max(decimals, 0) }
}

const grouped = {
  point: /^\d{1,3}(?:([, '’])\d{3})(?:\1\d{3})*(?:\.\d*)?$/,
  comma: /^\d{1,3}(?:([. '’])\d{3})(?:\1\d{3})*(?:,\d*)?$/,
} as const

function groupedNumber(text: string, decimal: DecimalMark): WrittenNumber | null {
  // Spaces that keep figures together: no-break, narrow no-break, thin.
  const spaced = text.replaceAll(/[\u00A0\u2009\u202F]/g, ' ').trim()
  if (spaced !== text) return readNumber(spaced, decimal)
  if (!grouped[decimal].test(text)) return null
  const bare = text.replaceAll(decimal === 'point' ? /[, '’]/g : /[. '’]/g, '')
  return plainNumber(bare, decimal === 'point' ? 46 : 44)
}

/** The number itself, as near as the machine holds it. */
export function asNumber({ digits, decimals }: WrittenNumber): number {
  return digits / 10 ** decimals
}
