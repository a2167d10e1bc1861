import type { Picking, PickingLine } from '../../domain/follow-up/van.ts'
import type { ItemKind } from '../../domain/item.ts'
import { printedName } from '../in-words.ts'

/** A round of picking as its paper shows it: in the order in which one walks. */
export type PickingView = {
  readonly pickingNo: number
  readonly title: string
  readonly madeOn: string
  readonly closedOn: string | null
  readonly firmName: string
  readonly quotes: readonly string[]
  readonly van: readonly KindOfLines[]
  readonly suppliers: readonly { readonly name: string; readonly kinds: readonly KindOfLines[] }[]
  readonly boxes: readonly PickingLine[]
  readonly tools: readonly string[]
  readonly bits: readonly string[]
  readonly gear: readonly string[]
  readonly pipeCuts: Picking['body']['pipeCuts']
  readonly lifts: readonly string[]
  readonly cautions: readonly string[]
  readonly missing: readonly string[]
  readonly says: string
}
export type KindOfLines = { readonly kind: string; readonly lines: readonly PickingLine[] }

export function pickingView({ pickingNo, title, madeOn, closedOn, lines, body }: Picking, firmName: string) {
  const printed = lines.map((line) => ({ ...line, name: printedName(line.name) }))
  const bought = printed.filter(({ source }) => source === 'supplier')
  const bySupplier = Map.groupBy(bought, ({ supplierName, supplierId }) => supplierName ?? supplierId ?? '')
  const names = new Map(body.quotes.map((quote) => [quote.quoteId, quote.customerName]))
  return {
    pickingNo,
    title,
    madeOn,
    closedOn: closedOn ?? null,
    firmName,
    quotes: body.quotes.map((quote) => `${quote.quoteId}, ${quote.customerName}: ${quote.title}`),
    van: byKind(printed.filter(({ source }) => source === 'van')),
    suppliers: [...bySupplier]
      .toSorted(([a], [b]) => (a < b ? -1 : 1))
      .map(([name, same]) => ({ name, kinds: byKind(same) })),
    boxes: printed.filter(({ source }) => source === 'box'),
    ...toolsOf(body.tools),
    pipeCuts: body.pipeCuts.map((cut) => ({ ...cut, name: printedName(cut.name) })),
    lifts: body.lifts.map(({ quoteId, name, massKg, says }) => {
      const whose = names.get(quoteId) ?? quoteId
      return `${printedName(name)}, ${massKg}\u00a0kg, for ${whose}. ${says}`
    }),
    cautions: body.cautions,
    missing: body.missing.map(printedName),
    says: body.says,
  } satisfies PickingView
}

const order: readonly string[] = ['emitter']

/** Kind by kind: emitters first, then by the kind's name, each by the item's name. */
function byKind(lines: readonly PickingLine[]): readonly KindOfLines[] {
  const place = (kind: string) => (order.includes(kind) ? `0${kind}` : `1${kindInWords(kind)}`)
  return [...Map.groupBy(lines, ({ kind }) => kind)]
    .toSorted(([a], [b]) => (place(a) < place(b) ? -1 : 1))
    .map(([kind, same]) => ({
      kind: kindInWords(kind),
      lines: same.toSorted((a, b) => (a.name < b.name ? -1 : 1)),
    }))
}

type Tools = Picking['body']['tools']

/** Drill bits and what protects the person stand apart, so that neither is left at home. */
function toolsOf(tools: Tools) {
  const isBit = (id: string) => /(^|-)bit(-|$)/.test(id)
  const isGear = (id: string) => /^(eye-protection|heat-mat|(?!.*-with-).*gloves)/.test(id)
  const names = (kept: (id: string) => boolean) =>
    tools.filter(({ toolId }) => kept(toolId)).map(({ name }) => name)
  return {
    bits: names(isBit),
    gear: names((id) => !isBit(id) && isGear(id)),
    tools: names((id) => !isBit(id) && !isGear(id)),
  }
}

const words: Readonly<Record<ItemKind | 'emitter', string>> = {
  emitter: 'Radiators and towel rails',
  valve: 'Valves',
  tail: 'Extension tails',
  vent: 'Air vents',
  blank: 'Blank plugs',
  seal: 'Thread seal',
  plug: 'Wall plugs',
  screw: 'Screws',
  anchor: 'Board anchors',
  board: 'Backing boards',
  filler: 'Filler',
  sealant: 'Sealant',
  paint: 'Paint',
  pipe: 'Pipe',
  pipeFitting: 'Pipe fittings',
  clip: 'Pipe clips',
  collar: 'Pipe collars',
  insulation: 'Pipe insulation',
  inhibitor: 'Inhibitor',
  cleaner: 'Cleaner',
  testKit: 'Test kits',
  element: 'Electric elements',
  sundry: 'Sundries',
}

/** What a kind of part is called; a kind of an older program as it is written. */
function kindInWords(kind: string): string {
  return Object.entries(words).find(([known]) => known === kind)?.[1] ?? 'Other things'
}
