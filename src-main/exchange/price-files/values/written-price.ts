import { readNumber } from './written-number.ts'
import type { DecimalMark, WrittenNumber } from './written-number.ts'

export type WrittenPrice = {
  readonly amount: WrittenNumber
  /** How many units the price itself says it is for: '/100', 'per 1000', 'each'. */
  readonly per?: number
  /** A currency's sign that is not the pound's. */
  readonly foreign?: string
}

/** Signs and names of currencies before or behind a figure. */
const currency = /£|€|\$|\b(?:GBP|EUR|USD)\b/gi
const perWords =
  /\s*(?:\/|\bper\b|\beach\b|\bea\b\.?)\s*(?:(\d{1,3}(?:,\d{3})+|\d{1,6})|each|ea\.?|unit|metre|mtr|m)?$/i
/** '3,-' and '3.-': nothing behind the mark. */
const dash = /[.,]\s*[-–—]{1,2}$/

const poundSign = 163

/** A price as a supplier writes it, or a sentence that says why it is none. */
export function readPrice(text: string, decimal: DecimalMark): WrittenPrice | string {
  // A pound sign ahead is the commonest dress.
  const plain = readNumber(text.charCodeAt(0) === poundSign ? text.slice(1) : text, decimal)
  if (plain !== null) return { amount: plain }
  return dressedPrice(text, decimal)
}

function dressedPrice(text: string, decimal: DecimalMark): WrittenPrice | string {
  const spaced = text.replaceAll(/[\u00A0\u2009\u202F]/g, ' ').trim()
  const signs = spaced.match(currency) ?? []
  const bare = spaced.replaceAll(currency, '').trim()
  const per = perWords.exec(bare)
  const figures = (per === null ? bare : bare.slice(0, per.index)).replace(dash, '').trim()
  if (isNegative(figures)) return `The price "${short(text)}" is below nought.`
  const amount = inPence(figures) ?? readNumber(figures, decimal)
  if (amount === null) return notAPrice(text, decimal)
  const foreign = signs.find((sign) => sign !== '£' && sign.toUpperCase() !== 'GBP')
  return {
    amount,
    ...(per === null ? {} : { per: Number((per[1] ?? '1').replaceAll(',', '')) }),
    ...(foreign === undefined ? {} : { foreign }),
  }
}

function isNegative(figures: string): boolean {
  return /^[-−–]\s*[\d.,]/.test(figures) || /^\(\s*[\d.,' ]+\)$/.test(figures) || /\d\s*[-−]$/.test(figures)
}

/** '45p' is 0.45. */
function inPence(figures: string): WrittenNumber | null {
  const found = /^(\d{1,9})(?:\.(\d{1,4}))?\s*p$/i.exec(figures)
  if (found === null) return null
  const [, whole = '', part = ''] = found
  return { digits: Number(whole + part), decimals: part.length + 2 }
}

function notAPrice(text: string, decimal: DecimalMark): string {
  const other = readNumber(text.replaceAll(currency, '').trim(), decimal === 'point' ? 'comma' : 'point')
  if (other === null) return `The price "${short(text)}" is not an amount of money.`
  const mark = decimal === 'point' ? 'a decimal point' : 'a decimal comma'
  return `The price "${short(text)}" is not written with ${mark}, as this file is said to be.`
}

export function short(text: string): string {
  return text.length <= 60 ? text : `${text.slice(0, 59)}…`
}
