/**
 * Whether figures are a Global Trade Item Number: 8, 12, 13 or 14 of them, the last of which makes the sum of all,
 * weighed 3 and 1 by turns from the right, a multiple of ten.
 * (GS1 General Specifications, section 7.9, standard check digit calculations.)
 */
export function isGtin(text: string): boolean {
  if (!hasGtinShape(text)) return false
  let sum = 0
  for (let back = 1; back <= text.length; back += 1)
    sum += (text.charCodeAt(text.length - back) - 48) * (back % 2 === 0 ? 3 : 1)
  return sum % 10 === 0
}

/** 8, 12, 13 or 14 figures and nothing else. Asked of every row, so it goes by characters. */
export function hasGtinShape(text: string): boolean {
  const { length } = text
  if (length !== 8 && (length < 12 || length > 14)) return false
  for (let at = 0; at < length; at += 1) {
    const char = text.charCodeAt(at)
    if (char < 48 || char > 57) return false
  }
  return true
}
