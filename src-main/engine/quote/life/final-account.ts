import { because, given } from '../../../domain/derivation.ts'
import type { AfterJob, FinalAccount } from '../../../domain/follow-up/after-job.ts'
import type { Figures } from '../../../domain/figures.ts'
import { accept } from '../../../domain/outcome.ts'
import type { Outcome } from '../../../domain/outcome.ts'
import { taxCategory } from '../../../domain/pricing.ts'
import type { Quote } from '../../../domain/quote.ts'
import { moneyTotals } from '../../money/money-totals.ts'

/**
 * The final account: the lines of the accepted quote and the variations taxed together as the quote was; to pay = gross - paid.
 * Beside it, for the firm alone, quoted minutes against real ones and parts planned against used.
 * Refuses what the totals refuse.
 * @param quote the accepted quote, money in pence
 * @param after what really happened; variations before tax in pence
 * @param figures the rates of tax of the day the quote was issued
 * @source EN 16931-1 BR-CO-13 to BR-CO-17 for the sums; what goes into them: practice, no published source
 * @example finalAccount({ lines: [], labour: { expectedMin: 60 }, totals: { netPence: 0, grossPence: 0 } }, { tasks: [], parts: [], variations: [{ variationId: 'v', onDay: '2026-01-05', what: 'One more valve', netPence: 1000, rateKey: 'standard' }] }, { settings: { 'tax.standardBasisPoints': { value: 2000, says: 'Rate', unit: 'BasisPoints', source: 'HMRC' } } }).value.toPayPence // => 1200
 */
export function finalAccount(
  quote: Pick<Quote, 'lines' | 'labour' | 'totals'>,
  after: Pick<AfterJob, 'tasks' | 'parts' | 'variations' | 'paidPence'>,
  figures: Figures,
): Outcome<FinalAccount> {
  const { netPence: quoteNetPence, grossPence: quoteGrossPence, rounding, rule } = quote.totals
  const lines = [
    ...quote.lines.map(({ netPence, rateKey }) => ({ netPence, category: taxCategory.parse(rateKey) })),
    ...after.variations.map(({ netPence, rateKey }) => ({ netPence, category: rateKey })),
  ]
  const totals = moneyTotals({ lines, rounding: rounding ?? 'document', rule: rule ?? 'half-up' }, figures)
  if (!totals.ok) return totals
  const { netPence, taxes, grossPence } = totals.value
  const paidPence = after.paidPence ?? 0
  const toPayPence = grossPence - paidPence
  return accept({
    quoteNetPence,
    quoteGrossPence,
    variations: after.variations.map(({ variationId, what, onDay, netPence: net, rateKey }) => ({
      variationId,
      what,
      onDay,
      netPence: net,
      rateKey,
    })),
    variationsNetPence: after.variations.reduce((sum, one) => sum + one.netPence, 0),
    netPence,
    taxes,
    grossPence,
    paidPence,
    toPayPence,
    internal: {
      quotedMin: quote.labour.expectedMin,
      realMin: after.tasks.reduce((sum, { minutes }) => sum + minutes, 0),
      parts: after.parts.map(({ name, unit, planned, used }) => ({
        name,
        unit,
        planned,
        used,
        over: Math.round((planned - used) * 1e6) / 1e6,
      })),
    },
    why: because('What the job came to with tax, less what is paid', toPayPence, {
      unit: 'pence',
      from: [
        because('The accepted quote and the variations, taxed together', grossPence, {
          unit: 'pence',
          from: [
            given('The accepted quote before tax', quoteNetPence, 'pence'),
            ...after.variations.map((one) => given(one.what, one.netPence, 'pence')),
            totals.value.why,
          ],
        }),
        given('Paid', paidPence, 'pence'),
      ],
    }),
  })
}
