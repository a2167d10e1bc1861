import type { Picking, PickingLine } from '../../../../src-main/domain/follow-up/van.ts'
import { money, plain } from '../../../parts/figures-in-words.ts'
import { amount } from '../amount.ts'
import { words } from '../van.words.ts'

/** What is left to do about a line. */
export type LineState = 'waiting' | 'ticked' | 'short'

export function stateOf(line: PickingLine): LineState {
  if (line.tickedAt === undefined) return 'waiting'
  return line.shortSays === undefined ? 'ticked' : 'short'
}

/** What is to be picked: 4, 2 packs of 10, 1 length of 3 m. */
export function needInWords({ kind, unit, need, packs, packHolds }: PickingLine): string {
  if (packs === undefined || packHolds === undefined) return amount(need, unit)
  if (unit === 'each' && packHolds === 1) return plain(packs)
  return words.pick.packs(
    plain(packs),
    kind === 'pipe' ? words.pick.length : words.pick.pack,
    amount(packHolds, unit),
  )
}

/** What a box holds is named in the middle of a sentence. */
export function nameOf({ name }: PickingLine): string {
  return `${name.charAt(0).toUpperCase()}${name.slice(1)}`
}

export type Source = {
  readonly key: string
  readonly title: string
  readonly says?: string
  readonly lines: readonly PickingLine[]
}

/** The lines by where they come from: the van, then each supplier, then the boxes. */
export function sourcesOf({ lines, body }: Picking): readonly Source[] {
  const of = (source: PickingLine['source']) => lines.filter((line) => line.source === source)
  const suppliers = Map.groupBy(of('supplier'), ({ supplierId }) => supplierId ?? '')
  const all: readonly Source[] = [
    { key: 'van', title: words.pick.van, lines: of('van') },
    ...[...suppliers].map(([supplierId, same]) => ({
      key: supplierId,
      title: same[0]?.supplierName ?? words.pick.unnamed,
      says: orderInWords(body.orders.find((order) => order.supplierId === supplierId)),
      lines: same,
    })),
    { key: 'box', title: words.pick.boxes, says: words.pick.boxesSays, lines: of('box') },
  ]
  return all.filter((source) => source.lines.length > 0)
}

function orderInWords(order: Picking['body']['orders'][number] | undefined): string {
  if (order === undefined) return ''
  const goods = money(order.goodsPence)
  if (order.carriagePence === undefined) return words.pick.goods(goods)
  if (order.carriagePence === 0) return words.pick.noCarriage(goods)
  return words.pick.withCarriage(goods, money(order.carriagePence))
}

/** How far it has got: so many of so many lines dealt with, and how many of those are short. */
export function progressOf(lines: readonly PickingLine[]) {
  const states = lines.map(stateOf)
  return {
    lines: lines.length,
    ticked: states.filter((state) => state !== 'waiting').length,
    short: states.filter((state) => state === 'short').length,
  }
}
