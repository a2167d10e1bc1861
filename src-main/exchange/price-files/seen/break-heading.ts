/** What may stand before or behind a quantity without changing what it says. */
const dress =
  /[£()[\]]|\b(?:gbp|ex(?:cl)?\.?(?:uding)? ?(?:vat|tax)|trade|net|nett|list|your|price|prices|cost|break|tier|bulk|each|ea)\b/g
const number = String.raw`(\d{1,3}(?:,\d{3})+|\d{1,6})`
const what = String.raw`(?: ?(?:packs?|pcs|pieces|units|boxes|items|off))?`
const shapes: readonly RegExp[] = [
  // '10+', '10 + packs', '10 packs+'
  new RegExp(String.raw`^(?:from|qty|quantity)? ?:? ?${number}${what} ?\+${what}$`),
  // '10-24', '10 to 24 packs'
  new RegExp(String.raw`^(?:from|qty|quantity)? ?:? ?${number} ?(?:[-–—]|to) ?[\d,]+${what}$`),
  // '25 off'
  new RegExp(String.raw`^${number} ?off$`),
  // '10 or more', '10 packs and over'
  new RegExp(
    String.raw`^${number}${what} ?(?:(?:or|and|&) ?(?:more|over|above|up|upwards)|up|upwards|plus)$`,
  ),
  // 'Qty 50', 'from 50'
  new RegExp(String.raw`^(?:from|qty|quantity) ?:? ?${number}${what}$`),
]

/**
 * The quantity that a heading states for the prices below it: 10 for '10+', 'Price 10+', '10-24', '10 off', 'Qty 10'; null when it
 * states none. 'Price per 100' and 'Break 2 price' state none. (Practice, no published source.)
 */
export function quantityInHeading(heading: string): number | null {
  if (!/\d/.test(heading) || heading.length > 60) return null
  const bare = heading.toLowerCase().replaceAll(dress, ' ').replaceAll(/\s+/g, ' ').trim()
  for (const shape of shapes) {
    const found = shape.exec(bare)?.[1]
    if (found === undefined) continue
    // '0-9' and '1-9' are both the price of a single one.
    const quantity = Math.max(1, Number(found.replaceAll(',', '')))
    return quantity <= 100_000 ? quantity : null
  }
  return null
}
