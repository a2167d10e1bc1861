import { create } from 'xmlbuilder2'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { TradeParty } from './trade-paper.ts'
import { amount } from './written-values.ts'

/** What an element holds: text, text with attributes, elements in order, or the same element several times. */
export type Inside = string | { readonly [name: string]: Inside | readonly Inside[] | undefined }
type Elements = Readonly<Record<string, Inside | readonly Inside[] | undefined>>

const spaces = 'urn:oasis:names:specification:ubl:schema:xsd'

/** A UBL 2.1 document as text; refused where a text has a sign that XML cannot hold. */
export function xmlPaper(kind: 'Quotation' | 'Order', elements: Elements): Outcome<string> {
  const whole = tidied(elements, kind)
  if (!whole.ok) return whole
  const root = {
    [kind]: {
      '@xmlns': `${spaces}:${kind}-2`,
      '@xmlns:cac': `${spaces}:CommonAggregateComponents-2`,
      '@xmlns:cbc': `${spaces}:CommonBasicComponents-2`,
      'cbc:UBLVersionID': '2.1',
      ...(whole.value as Record<string, object>),
    },
  }
  const xml = create({ version: '1.0', encoding: 'UTF-8' }, root).end({ prettyPrint: true, newline: '\n' })
  return accept(`${xml}\n`)
}

/** An amount of money in a currency. */
export function money(pence: number, currency: string): Inside {
  return { '@currencyID': currency, '#': amount(pence) }
}

export function partyElements({ name, addressLines, taxNumber, phone, email }: TradeParty): Inside {
  return {
    'cac:PartyName': { 'cbc:Name': name },
    'cac:PostalAddress':
      addressLines.length === 0
        ? undefined
        : { 'cac:AddressLine': addressLines.map((line) => ({ 'cbc:Line': line })) },
    'cac:PartyTaxScheme': isFilled(taxNumber)
      ? { 'cbc:CompanyID': taxNumber, 'cac:TaxScheme': { 'cbc:ID': 'VAT' } }
      : undefined,
    'cac:Contact':
      isFilled(phone) || isFilled(email)
        ? {
            'cbc:Telephone': isFilled(phone) ? phone : undefined,
            'cbc:ElectronicMail': isFilled(email) ? email : undefined,
          }
        : undefined,
  }
}

function isFilled(text: string | undefined): text is string {
  return text !== undefined && text !== ''
}

/** Everything that is there, each text on one line and without a sign that XML 1.0 (2.2) forbids. */
function tidied(inside: unknown, path: string): Outcome<unknown> {
  if (typeof inside === 'string') return tidyText(inside, path)
  const isList = Array.isArray(inside)
  const kept: [string, unknown][] = []
  for (const [name, held] of Object.entries(inside as Record<string, unknown>)) {
    if (held === undefined) continue
    const tidy = tidied(held, isList ? `${path}[${name}]` : `${path}.${name.replace(/^c[ab]c:/, '')}`)
    if (!tidy.ok) return tidy
    kept.push([name, tidy.value])
  }
  return accept(isList ? kept.map(([, value]) => value) : Object.fromEntries(kept))
}

const forbidden = /[\p{Cc}\p{Cs}\ufffe\uffff]/u

function tidyText(text: string, path: string): Outcome<string> {
  const oneLine = text.replace(/[\t\r\n]+/g, ' ').trim()
  const sign = forbidden.exec(oneLine)?.[0]
  if (sign === undefined) return accept(oneLine)
  const code = (sign.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')
  const shown = oneLine.replace(new RegExp(forbidden, 'gu'), '�').slice(0, 60)
  return refuse(
    'invalid',
    `“${shown}” has a control character (U+${code}), which an XML file cannot hold.`,
    path,
    'Type it again without that character.',
  )
}
