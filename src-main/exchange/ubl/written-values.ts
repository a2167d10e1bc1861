import type { TradeUnit } from './trade-paper.ts'

/**
 * Codes of UN/ECE Recommendation 20, as UBL's unit code list takes them (`UnitOfMeasureCode`): MTR, MTK, LTR, MLT and MIN as in the
 * measurement-unit list of the EU Publications Office, KMT as in OPC 10000-8 (its excerpt of Annex I); EA and LS from memory.
 */
const unitCodes: Readonly<Record<TradeUnit, string>> = {
  each: 'EA',
  m: 'MTR',
  m2: 'MTK',
  L: 'LTR',
  ml: 'MLT',
  min: 'MIN',
  km: 'KMT',
  sum: 'LS',
}

export function unitCode(unit: TradeUnit): string {
  return unitCodes[unit]
}

/** Pence as a decimal with two places, from the whole number itself: 123456 is 1234.56, -5 is -0.05. */
export function amount(pence: number): string {
  if (!Number.isSafeInteger(pence)) throw new Error(`${pence} is no whole number of pence`)
  const digits = String(Math.abs(pence)).padStart(3, '0')
  return `${pence < 0 ? '-' : ''}${digits.slice(0, -2)}.${digits.slice(-2)}`
}

/** Basis points as a percentage: 2000 is 20, 1750 is 17.5. */
export function percentage(basisPoints: number): string {
  return amount(basisPoints).replace(/\.?0+$/, '')
}

/** A quantity without an exponent, to a millionth. */
export function decimal(value: number): string {
  if (!Number.isFinite(value)) throw new Error(`${value} is no quantity`)
  const written = value.toFixed(6).replace(/\.?0+$/, '')
  return written === '-0' ? '0' : written
}
