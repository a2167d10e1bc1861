import { because, given } from '../../domain/derivation.ts'
import type { Override } from '../../domain/job.ts'
import type { Problem } from '../../domain/outcome.ts'
import type { QuoteLine } from '../../domain/quote.ts'
import type { TakeOffLine } from '../../domain/take-off.ts'

/** Overrides of prices by the id of the line in the quote; parts are named by the key of their line, all else by that id. */
export type OwnPrices = ReadonlyMap<string, Override>

/**
 * The prices that a person put on lines, by the line's id in the quote.
 * @param overrides what a person changed
 * @param parts the parts list, in the order of the quote's parts
 * @source practice, no published source
 * @example ownPrices([{ lineKey: 'vent', netPence: 5, reason: 'Gift' }], [{ lineKey: 'vent' }]).get('part-1').netPence // => 5
 */
export function ownPrices(overrides: readonly Override[], parts: readonly TakeOffLine[]): OwnPrices {
  const ids = new Map(parts.map((line, index) => [line.lineKey, `part-${index + 1}`]))
  return new Map(
    overrides
      .filter((one) => one.netPence !== undefined)
      .map((one) => [ids.get(one.lineKey) ?? one.lineKey, one]),
  )
}

/**
 * Lines with the selling prices that a person put on them in place of what was worked out; each `why` keeps what it was and the
 * reason.
 * @param lines priced lines
 * @param own prices by the line's id
 * @source practice, no published source
 * @example overridePrices([{ lineId: 'travel', netPence: 720, why: { says: 'Driving', value: 720, from: [] } }], new Map([['travel', { netPence: 0, reason: 'Next door' }]]))[0].netPence // => 0
 */
export function overridePrices(lines: readonly QuoteLine[], own: OwnPrices): readonly QuoteLine[] {
  return lines.map((line) => {
    const { netPence, reason } = own.get(line.lineId) ?? {}
    if (netPence === undefined) return line
    const why = because(`Price set by hand. Reason: ${reason}`, netPence, {
      unit: 'pence',
      from: [given('It was', line.netPence, 'pence'), line.why],
      source: 'changed by hand',
    })
    return { ...line, netPence, was: { ...line.was, netPence: line.netPence }, why }
  })
}

/**
 * What is wrong with the prices that a person put on lines: one of a line that the quote does not have.
 * @param overrides what a person changed
 * @param own the same by the line's id
 * @param lineIds the lines that the quote has before discounts
 * @source practice, no published source
 * @example overridePriceProblems([{ lineKey: 'roof', netPence: 5 }], new Map([['roof', { lineKey: 'roof' }]]), ['travel'])[0].path // => 'job.overrides[0].lineKey'
 */
export function overridePriceProblems(
  overrides: readonly Override[],
  own: OwnPrices,
  lineIds: readonly string[],
): readonly Problem[] {
  const known = new Set(lineIds)
  return [...own].flatMap(([lineId, { lineKey }]): readonly Problem[] => {
    if (known.has(lineId)) return []
    const message = `The quote has no priced line ${lineKey}; name a part by the key of its line in takeoff.job, all else by its id in quote.build.`
    const index = overrides.findIndex((one) => one.lineKey === lineKey)
    return [{ code: 'invalid', message, path: `job.overrides[${index}].lineKey` }]
  })
}
