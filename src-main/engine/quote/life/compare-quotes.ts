import { because, given } from '../../../domain/derivation.ts'
import type { Quote, QuoteLine } from '../../../domain/quote.ts'
import type { LineChange, QuoteComparison } from '../../../domain/follow-up/quote-life.ts'

/**
 * What a later quote of a job says that an earlier one does not, line by line. Equation: change = is - was, for each line and in all.
 * A part is the same line while the job asks for the same thing; labour while it is for the same swaps.
 * @param was the earlier quote, money in pence
 * @param is the later one
 * @source practice, no published source
 * @example compareQuotes({ lines: [], totals: { netPence: 100, grossPence: 120 } }, { lines: [], totals: { netPence: 90, grossPence: 108 } }).changeGrossPence // => -12
 */
export function compareQuotes(
  was: Pick<Quote, 'lines' | 'totals'>,
  is: Pick<Quote, 'lines' | 'totals'>,
): QuoteComparison {
  const before = byKey(was.lines)
  const after = byKey(is.lines)
  const keys = [...new Set([...after.keys(), ...before.keys()])]
  const lines = keys.flatMap((key) => changeOf(before.get(key) ?? null, after.get(key) ?? null))
  const changeGrossPence = is.totals.grossPence - was.totals.grossPence
  return {
    lines: lines.toSorted((a, b) => Math.abs(b.changePence) - Math.abs(a.changePence)),
    wasNetPence: was.totals.netPence,
    isNetPence: is.totals.netPence,
    changeNetPence: is.totals.netPence - was.totals.netPence,
    wasGrossPence: was.totals.grossPence,
    isGrossPence: is.totals.grossPence,
    changeGrossPence,
    why: because(
      'What the later quote comes to, less what the earlier did, both with tax',
      changeGrossPence,
      {
        unit: 'pence',
        from: [
          given('The later quote', is.totals.grossPence, 'pence'),
          given('The earlier quote', was.totals.grossPence, 'pence'),
        ],
      },
    ),
  }
}

function byKey(lines: readonly QuoteLine[]): ReadonlyMap<string, QuoteLine> {
  const named = new Map<string, QuoteLine>()
  for (const line of lines) {
    const key = keyOf(line)
    let free = key
    for (let nth = 2; named.has(free); nth += 1) free = `${key}|${nth}`
    named.set(free, line)
  }
  return named
}

function keyOf({ part, section, name, swapIds }: QuoteLine): string {
  if (part !== undefined) return `part|${part.lineKey}`
  return section === 'labour' ? `labour|${swapIds.join()}` : `${section}|${name}`
}

function changeOf(was: QuoteLine | null, is: QuoteLine | null): readonly LineChange[] {
  const line = is ?? was
  if (line === null) return []
  const changePence = (is?.netPence ?? 0) - (was?.netPence ?? 0)
  const same = was?.quantity === is?.quantity && was?.name === is?.name && changePence === 0
  if (same) return []
  const told = { was: shortOf(was), is: shortOf(is) }
  return [{ name: line.name, section: line.section, ...told, changePence, says: inWords(was, is) }]
}

function shortOf(line: QuoteLine | null) {
  if (line === null) return null
  const { name, quantity, unit, netPence } = line
  return { name, quantity, unit, netPence }
}

function inWords(was: QuoteLine | null, is: QuoteLine | null): string {
  if (was === null) return 'New in the later quote.'
  if (is === null) return 'No longer in the later quote.'
  const parts = [
    ...(was.name === is.name ? [] : [`${is.name} in place of ${was.name}`]),
    ...(was.quantity === is.quantity
      ? []
      : [`${is.quantity} ${is.unit} in place of ${was.quantity} ${was.unit}`]),
    ...(was.netPence === is.netPence ? [] : [is.netPence > was.netPence ? 'dearer' : 'cheaper']),
  ]
  const text = parts.join(', ')
  return `${text.slice(0, 1).toUpperCase()}${text.slice(1)}.`
}
