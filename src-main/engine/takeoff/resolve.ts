import type { Part, WantedSpec } from '../../domain/item.ts'
import { refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { Purchase } from '../../domain/quote.ts'
import type { TakeOffLine } from '../../domain/take-off.ts'
import { chosenItem } from './buying/choose-item.ts'
import type { Found, Tried } from './buying/choose-item.ts'
import { handFault, oneOffPurchase, whyFilled } from './buying/fill-gap.ts'
import { specMatches } from './match-spec.ts'
import type { MergedNeed } from './merge-needs.ts'
import { cheapestPurchase } from './purchase.ts'
import type { ByHand, Shelf } from './shelf.ts'

/** A line of the parts list and how it is bought; no purchase where there is a gap. */
export type ResolvedLine = { readonly line: TakeOffLine; readonly purchase: Purchase | null }

type Options = { readonly lineId: string; readonly kerfMm: number }

/**
 * Finds what a need is met with: among the items on the shelf that are what the need asks for, one that the firm prefers (the
 * cheapest of several), else the cheapest. Where there is none, what was chosen by hand; else a gap, shown as a line, never
 * dropped.
 * @param need one merged need
 * @param shelf the catalogue with the prices in force
 * @param options the line's id and the saw cut in mm
 * @source practice, no published source
 * @example resolveNeed({ kind: 'vent', spec: { thread: 'G1/2' } }, { parts: new Map() }, {}).line.gap // => "The catalogue has no vent (G1/2)."
 */
export function resolveNeed(need: MergedNeed, shelf: Shelf, options: Options): ResolvedLine {
  const tried = candidates(need, shelf).map((item) => ({
    item,
    bought: purchaseOf(need, item, { ...options, shelf }),
  }))
  if (need.kind === 'emitter') {
    const [named] = tried
    if (named?.bought.ok === true) return metBy(need, named.item, named.bought.value)
  }
  const choice = chosenItem(tried, shelf.favourites ?? new Set())
  if (choice !== null) return metBy(need, choice.item, choice.purchase)
  const gap = gapLine(need, tried[0])
  const byHand = shelf.byHand?.get(need.lineKey)
  return byHand === undefined
    ? { line: gap, purchase: null }
    : filled(need, gap, { ...options, shelf, byHand })
}

/**
 * The items that are what a need asks for, whether or not anybody sells them; of an emitter, the one that was named.
 * @param need the kind and the wanted fields
 * @param shelf the catalogue
 * @source practice, no published source
 * @example candidates({ kind: 'vent', spec: { thread: 'G1/2' } }, { parts: new Map([['vent', [{ itemId: 'v', spec: { thread: 'G1/2' } }]]]) }).length // => 1
 */
export function candidates(
  need: Pick<MergedNeed, 'kind' | 'spec'>,
  shelf: Pick<Shelf, 'emitters' | 'parts'>,
): readonly Found[] {
  if (need.kind === 'emitter') {
    const itemId = need.spec['itemId']
    const emitter = typeof itemId === 'string' ? shelf.emitters.get(itemId) : undefined
    return emitter === undefined ? [] : [emitter]
  }
  return (shelf.parts.get(need.kind) ?? []).filter((part: Part) => specMatches(part.spec, need.spec))
}

/**
 * The cheapest purchase of one item for a need.
 * Refuses what `cheapestPurchase` refuses.
 * @param need the quantity, its unit, and for pipe the pieces to cut
 * @param item which
 * @param options the line's id, the saw cut in mm and the prices in force
 * @source practice, no published source
 * @example purchaseOf({ quantity: 2, unit: 'each' }, { itemId: 'a', name: 'A' }, { lineId: 'part-1', kerfMm: 2, shelf: { prices: new Map() } }).ok // => false
 */
export function purchaseOf(
  need: Pick<MergedNeed, 'quantity' | 'unit' | 'pieces'>,
  item: Pick<Found, 'itemId' | 'name'>,
  options: Options & { readonly shelf: Shelf },
): Outcome<Purchase> {
  const { lineId, kerfMm, shelf } = options
  const { pieces, unit, quantity } = need
  const wanted = { lineId, kerfMm, itemId: item.itemId, name: item.name, unit, need: quantity }
  return cheapestPurchase(pieces === undefined ? wanted : { ...wanted, pieces }, shelf)
}

function metBy(need: MergedNeed, { itemId, name, generic }: Found, purchase: Purchase): ResolvedLine {
  return { line: { ...bareLine(need), name, itemId, generic }, purchase }
}

/** A gap with what was chosen by hand in its place; still a gap where that can't be had. */
function filled(
  need: MergedNeed,
  gap: TakeOffLine,
  more: Options & { readonly shelf: Shelf; readonly byHand: ByHand },
): ResolvedLine {
  const { byHand, lineId } = more
  const lacking = gap.gap ?? ''
  if (byHand.kind === 'oneOff') {
    const why = whyFilled(need.why, lacking, byHand.name)
    const line = { ...bareLine(need), name: byHand.name, generic: false, filled: lacking, why }
    return { line, purchase: oneOffPurchase(need, byHand, lineId) }
  }
  const bought = boughtByHand(need, byHand, more)
  if (!bought.ok || byHand.item === null) {
    const faults = bought.ok ? [] : bought.problems.map((problem) => problem.message)
    return { line: { ...gap, gap: [lacking, ...faults].join(' ') }, purchase: null }
  }
  const met = metBy(need, byHand.item, bought.value)
  return {
    ...met,
    line: { ...met.line, filled: lacking, why: whyFilled(need.why, lacking, byHand.item.name) },
  }
}

function boughtByHand(
  need: MergedNeed,
  byHand: Extract<ByHand, { readonly kind: 'item' }>,
  options: Options & { readonly shelf: Shelf },
): Outcome<Purchase> {
  const fault = handFault(need, byHand)
  if (fault !== null) return refuse('gap', fault)
  const { itemId, item } = byHand
  return purchaseOf(need, { itemId, name: item?.name ?? itemId }, options)
}

function bareLine(need: MergedNeed): Omit<TakeOffLine, 'name' | 'generic'> {
  const { lineKey, kind, spec, quantity, unit, shared, swapIds, pieces, why } = need
  const line = { lineKey, itemKind: kind, spec, quantity, unit, shared, swapIds, why }
  return pieces === undefined ? line : { ...line, pieces }
}

function gapLine(need: MergedNeed, first: Tried | undefined): TakeOffLine {
  const wanted = needInWords(need)
  const nothing = { ...bareLine(need), name: wanted, generic: false, gap: `The catalogue has no ${wanted}.` }
  if (first === undefined || first.bought.ok) return nothing
  const gap = first.bought.problems.map((problem) => problem.message).join(' ')
  return { ...nothing, gap, itemId: first.item.itemId }
}

const kindWords: Readonly<Record<string, string>> = {
  pipeFitting: 'pipe fitting',
  testKit: 'test kit',
  anchor: 'board anchor',
  plug: 'wall plug',
  tail: 'tail extension',
  board: 'backing board',
  element: 'heating element',
}

/**
 * A need in words, for a gap and for what is in a box: the kind and what it must be.
 * @param need the kind and the wanted fields
 * @source practice, no published source
 * @example needInWords({ kind: 'tail', spec: { thread: 'G1/2', lengthMm: { atLeast: 25 } } }) // => "tail extension (G1/2, length at least 25 mm)"
 */
export function needInWords(need: { readonly kind: MergedNeed['kind']; readonly spec: WantedSpec }): string {
  const fields = Object.entries(need.spec).map(([field, value]) => fieldInWords(field, value))
  return `${kindWords[need.kind] ?? need.kind} (${fields.join(', ')})`
}

/** Values that do not say by themselves what they are of. */
const valueWords: Readonly<Record<string, string>> = {
  'sealing oRing': 'O-ring',
  'sealing none': 'no O-ring',
  'joint none': 'without a joint',
  'forWall plaster': 'for plaster',
  'forWall tile': 'for tile',
}

function fieldInWords(field: string, value: WantedSpec[string]): string {
  if (typeof value === 'string') return valueWords[`${field} ${value}`] ?? spaced(value)
  if (field === 'watts' && typeof value === 'number') return `${value} W`
  const [, stem = field, written = ''] = /^(.*)(Mm|W)$/.exec(field) ?? []
  const name = spaced(stem)
  const unit = written === '' ? '' : ` ${written === 'Mm' ? 'mm' : 'W'}`
  if (typeof value !== 'object') return `${name} ${value}${unit}`
  return 'atLeast' in value
    ? `${name} at least ${value.atLeast}${unit}`
    : `${name} at most ${value.atMost}${unit}`
}

/** `sanitarySilicone` as `sanitary silicone`; a thread's G stays. */
function spaced(word: string): string {
  return word.replace(
    /([a-z])([A-Z])/g,
    (_, before: string, letter: string) => `${before} ${letter.toLowerCase()}`,
  )
}
