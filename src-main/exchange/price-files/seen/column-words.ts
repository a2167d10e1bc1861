import type { ColumnMeaning } from '../../../domain/price-list.ts'
import { quantityInHeading } from './break-heading.ts'

type Words = { readonly meaning: ColumnMeaning; readonly says: RegExp; readonly weight: number }

/**
 * Words that stand over the columns of price lists, and how surely each says what its column holds.
 * (Practice, no published source.) Matched against a heading in small letters, its punctuation as single spaces.
 */
const words: readonly Words[] = [
  { meaning: 'gtin', says: /\b(?:gtin|ean|upc|bar ?codes?)(?: ?(?:8|12|13|14))?\b/, weight: 10 },
  {
    meaning: 'code',
    says: /^(?:your|our|supplier|suppliers|stock|product|part|item|catalogue|cat|order|article)? ?(?:code|no|number|ref|reference|sku)$/,
    weight: 9,
  },
  {
    meaning: 'code',
    says: /\b(?:product|part|item|stock|catalogue|cat|order|article|supplier)s? (?:code|no|nos|number|ref|reference|id)\b|\bsku\b|\bpart no\b/,
    weight: 9,
  },
  { meaning: 'code', says: /^(?:part|product|item|article|code|ref)\b/, weight: 4 },
  { meaning: 'name', says: /\b(?:description|desc|descr|details?|designation)\b/, weight: 9 },
  {
    meaning: 'name',
    says: /^(?:product|item|part|article)? ?(?:name|title)$|^(?:product|item|article|material|goods)$/,
    weight: 6,
  },
  {
    meaning: 'packHolds',
    says: /\b(?:pack|pk|pkt|box|bag|carton|outer|inner) ?(?:size|qty|quantity|of|holds|contents?)\b|\b(?:qty|quantity|units|pieces|no) (?:per|in|a) (?:pack|pk|box|bag|carton)\b|\bper (?:pack|box|bag)$/,
    weight: 9,
  },
  { meaning: 'packHolds', says: /^(?:packs?|packing|packaging|qty|quantity|contents?|pk)$/, weight: 6 },
  {
    meaning: 'breakFromPacks',
    says: /\b(?:break|bulk|tier) ?\d* ?(?:qty|quantity|from|packs?)\b|\b(?:qty|quantity) (?:break|tier)\b|^from packs\b/,
    weight: 10,
  },
  { meaning: 'breakPrice', says: /\b(?:break|bulk|tier) ?\d* ?(?:price|cost)\b|\bprice break\b/, weight: 10 },
  {
    meaning: 'pricePer',
    says: /^per$|\bprice (?:per|basis|unit|uom|qty|quantity|for)\b|\bpriced? per\b|\bper (?:qty|quantity)\b|^per unit$/,
    weight: 10,
  },
  { meaning: 'price', says: /\blist price\b|^list$/, weight: 9 },
  { meaning: 'price', says: /\b(?:trade|pack|box) price\b|^trade$/, weight: 8.5 },
  {
    meaning: 'price',
    says: /^price\b(?! (?:per|basis|unit|uom|qty|quantity|for|break|group|code|list|date|valid|from|to|until|as))|^(?:unit|new|current|gross|sell|selling) price\b|\bprice (?:each|gbp|ex|excl|excluding)\b/,
    weight: 8,
  },
  { meaning: 'price', says: /\b(?:net|nett|cost|your) price\b|^(?:cost|nett?)\b/, weight: 6 },
  { meaning: 'price', says: /\bprice\b|\brrp\b|\bretail\b/, weight: 3 },
  {
    meaning: 'unit',
    says: /^(?:uom|um|unit|units|unit of (?:measure|sale|issue)|sold (?:by|as|in)|sales unit)$/,
    weight: 8,
  },
  {
    meaning: 'group',
    says: /\b(?:discount|disc|price|product|trade) ?(?:group|grp|code|class|category|family)\b/,
    weight: 8,
  },
  { meaning: 'group', says: /^(?:group|category|class|range|family|grp|section)$/, weight: 6 },
  {
    meaning: 'validFrom',
    says: /\b(?:valid|effective|price|prices?) (?:from|date|as of)\b|^(?:from|effective|start date|from date|date from)$/,
    weight: 8,
  },
  {
    meaning: 'validTo',
    says: /\b(?:valid|effective) (?:to|until|till)\b|^(?:to|until|expires|expiry|expiry date|end date|to date)$/,
    weight: 8,
  },
]

/** Words that take a column out of the running: tax is in it, or it is another's. */
const not: Readonly<Partial<Record<ColumnMeaning, RegExp>>> = {
  price: /\binc(?:l|luding)?\.? ?(?:vat|tax)\b|\bold\b|\bprevious\b|\blast\b|\bchange\b|\bincrease\b|%/,
  packHolds: /\bmin(?:imum)?\b|\bmoq\b|\bin stock\b|\bbreak\b/,
  code: /\b(?:commodity|tariff|vat|tax|post|bar|discount|price|group|ean|gtin) ?code\b|\btelephone\b/,
  unit: /\bprice\b/,
}

export type Likely = { readonly meaning: ColumnMeaning; readonly weight: number }

/** What a heading may mean, the surest first. */
export function meaningsOf(heading: string): readonly Likely[] {
  const plain = plainWords(heading)
  if (plain === '' || plain.length > 60) return []
  const quantity = quantityInHeading(heading)
  // A price for one is the price itself, though a column that is called the price is that more surely.
  if (quantity !== null)
    return [quantity === 1 ? { meaning: 'price', weight: 7 } : { meaning: 'breakPrice', weight: 9.5 }]
  const found = new Map<ColumnMeaning, number>()
  for (const { meaning, says, weight } of words)
    if (says.test(plain) && !(not[meaning]?.test(plain) ?? false))
      found.set(meaning, Math.max(found.get(meaning) ?? 0, weight))
  return [...found].map(([meaning, weight]) => ({ meaning, weight })).toSorted((a, b) => b.weight - a.weight)
}

/** A heading in small letters, what is neither letter, figure nor per cent a single space. */
export function plainWords(heading: string): string {
  return heading
    .toLowerCase()
    .replaceAll(/[^a-z0-9%]+/g, ' ')
    .trim()
}

/** Whether a price under this heading is for one unit rather than for the pack. */
export function isPerUnit(heading: string): boolean {
  return /\b(?:unit|each|ea|per (?:unit|item|piece|metre|m)) ?(?:price|cost|list|trade)?\b/.test(
    plainWords(heading),
  )
}
