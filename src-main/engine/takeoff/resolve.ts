import type { Part, WantedSpec } from '../../domain/item.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { Purchase } from '../../domain/quote.ts'
import type { TakeOffLine } from '../../domain/take-off.ts'
import { specMatches } from './match-spec.ts'
import type { MergedNeed } from './merge-needs.ts'
import { cheapestPurchase } from './purchase.ts'
import type { Shelf } from './shelf.ts'

/** A line of the parts list and how it is bought; no purchase where there is a gap. */
export type ResolvedLine = { readonly line: TakeOffLine; readonly purchase: Purchase | null }

/**
 * Finds what a need is met with: the cheapest item on the shelf that is what the need asks for. Nothing found is a gap,
 * shown as a line, never dropped.
 * @param need one merged need
 * @param shelf the catalogue with the prices in force
 * @param options the line's id and the saw cut in mm
 * @source practice, no published source
 * @example resolveNeed({ kind: 'vent', spec: { thread: 'G1/2' } }, { parts: new Map() }, {}).line.gap // => "The catalogue has no vent (G1/2)."
 */
export function resolveNeed(
  need: MergedNeed,
  shelf: Shelf,
  options: { readonly lineId: string; readonly kerfMm: number },
): ResolvedLine {
  const tried = candidates(need, shelf).map((item) => {
    const wanted = { ...options, itemId: item.itemId, name: item.name, unit: need.unit, need: need.quantity }
    const { pieces } = need
    return { item, bought: cheapestPurchase(pieces === undefined ? wanted : { ...wanted, pieces }, shelf) }
  })
  const best = tried
    .flatMap(({ item, bought }) => (bought.ok ? [{ item, purchase: bought.value }] : []))
    .toSorted(
      (a, b) => a.purchase.costPence - b.purchase.costPence || (a.item.itemId < b.item.itemId ? -1 : 1),
    )[0]
  if (best === undefined) return { line: gapLine(need, tried[0]), purchase: null }
  const { item, purchase } = best
  return {
    line: { ...bareLine(need), name: item.name, itemId: item.itemId, generic: item.generic },
    purchase,
  }
}

type Found = { readonly itemId: string; readonly name: string; readonly generic: boolean }

function candidates(need: MergedNeed, shelf: Shelf): readonly Found[] {
  if (need.kind === 'emitter') {
    const itemId = need.spec['itemId']
    const emitter = typeof itemId === 'string' ? shelf.emitters.get(itemId) : undefined
    return emitter === undefined ? [] : [emitter]
  }
  return (shelf.parts.get(need.kind) ?? []).filter((part: Part) => specMatches(part.spec, need.spec))
}

function bareLine(need: MergedNeed): Omit<TakeOffLine, 'name' | 'generic'> {
  const { lineKey, kind, spec, quantity, unit, shared, swapIds, pieces, why } = need
  const line = { lineKey, itemKind: kind, spec, quantity, unit, shared, swapIds, why }
  return pieces === undefined ? line : { ...line, pieces }
}

type Tried = { readonly item: Found; readonly bought: Outcome<Purchase> }

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
  const millimetres = field.endsWith('Mm')
  const name = spaced(millimetres ? field.slice(0, -2) : field)
  const unit = millimetres ? ' mm' : ''
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
