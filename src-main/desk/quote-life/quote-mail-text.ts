import { dayInWords } from '../../documents/days.ts'
import { money, tight } from '../../documents/in-words.ts'
import { reverseChargeNotes } from '../../documents/quote/tax-notes.ts'
import type { Firm } from '../../domain/firm.ts'
import type { IssuedQuoteRow } from '../../domain/follow-up/quote-life.ts'
import type { Totals } from '../../domain/quote.ts'

/** All that the mail says; what the firm pays, earns and buys from is in none of it. */
export type MailSays = {
  readonly quote: Pick<
    IssuedQuoteRow,
    'number' | 'revision' | 'customerName' | 'issuedOn' | 'validUntil' | 'grossPence' | 'state'
  >
  readonly totals: Totals
  readonly firm: Pick<Firm, 'name' | 'phone'>
}

/** Such as “Quote Q-2026-0007, revision 2, from Invented Heating”. */
export function mailSubject({ quote, firm }: MailSays): string {
  return `Quote ${named(quote)} from ${firm.name}`
}

/** A short letter in plain text: which quote is attached, what it comes to, how long it stands, and whom to ask. */
export function mailText(says: MailSays): string {
  const { quote, totals, firm } = says
  const phone = firm.phone ?? ''
  const tax = totals.taxes.reduce((sum, { taxPence }) => sum + taxPence, 0)
  const stands = quote.state === 'lapsed' ? 'It was valid until' : 'Valid until'
  return [
    `Dear ${quote.customerName},`,
    '',
    `Our quote ${named(quote)} of ${dayInWords(quote.issuedOn)} is attached.`,
    '',
    `${tax === 0 ? 'Total' : 'Total with VAT'}: ${money(quote.grossPence)}`,
    ...reverseChargeNotes(totals),
    `${stands}: ${dayInWords(quote.validUntil)}`,
    '',
    phone === ''
      ? 'If you have a question, answer this mail.'
      : `If you have a question, answer this mail or ring ${phone}.`,
    '',
    'Kind regards',
    firm.name,
    ...(phone === '' ? [] : [phone]),
    '',
  ]
    .join('\n')
    .replaceAll(tight, ' ')
}

/** The number, and which revision it is where it is one, closed by a comma for what follows. */
function named({ number, revision }: Pick<IssuedQuoteRow, 'number' | 'revision'>): string {
  return revision === 0 ? number : `${number}, revision ${revision},`
}
