/**
 * What a person typed into a number box: the number; undefined for nothing; and what is no number as it stands, so that
 * the desk can say what is wrong with it.
 */
export function typedNumber(text: string): number | string | undefined {
  const bare = text.trim().replace('\u2212', '-')
  if (bare === '') return undefined
  const pointed = /^-?\d*,\d+$/.test(bare) ? bare.replace(',', '.') : bare
  return /^-?(\d+\.?\d*|\.\d+)$/.test(pointed) ? Number(pointed) : bare
}

/** Pounds and pence as whole pence, by digits alone; what is no amount of money stays as it was typed. */
export function typedPence(text: string): number | string | undefined {
  const bare = text
    .trim()
    .replace(/^£\s*/, '')
    .replace(/,(?=\d{3}(\D|$))/g, '')
  if (bare === '') return undefined
  const parts = /^(-?)(\d+)(?:\.(\d{1,2}))?$/.exec(bare)
  if (parts === null) return text.trim()
  const pence = Number(`${parts[2]}${(parts[3] ?? '').padEnd(2, '0')}`)
  return parts[1] === '-' ? -pence : pence
}

/** Whole pence as they stand in a box: 18500 is 185.00. */
export function penceText(value: unknown): string {
  if (typeof value !== 'number') return typeof value === 'string' ? value : ''
  const digits = String(Math.abs(value)).padStart(3, '0')
  return `${value < 0 ? '-' : ''}${digits.slice(0, -2)}.${digits.slice(-2)}`
}

/** Percent as hundredths of a percent, by digits alone: 12.5 is 1250; what is no share stays as it was typed. */
export function typedPercent(text: string): number | string | undefined {
  const bare = text.trim().replace(/\s*%$/, '').replace(',', '.')
  if (bare === '') return undefined
  const parts = /^(\d+)(?:\.(\d{1,2}))?$/.exec(bare)
  return parts === null ? text.trim() : Number(`${parts[1]}${(parts[2] ?? '').padEnd(2, '0')}`)
}

/** Hundredths of a percent as they stand in a box: 1250 is 12.5. */
export function percentText(value: unknown): string {
  return typeof value === 'number' ? String(value / 100) : typeof value === 'string' ? value : ''
}
