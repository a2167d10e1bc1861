import { printedName } from './in-words.ts'
import type { Job } from '../domain/job.ts'
import type { PickList, Quote } from '../domain/quote.ts'

/** What goes into the van, as the paper shows it. */
export type PickListView = {
  readonly reference: string
  readonly madeOn: string
  readonly firmName: string
  readonly customerName: string
  readonly siteLines: readonly string[]
  /** What the van has already. */
  readonly fromVan: NonNullable<PickList['fromVan']>
  readonly suppliers: PickList['suppliers']
  /** What the orders come to, where they were split with carriage in mind; else nothing. */
  readonly orders: Orders | null
  /** What is in the emitters' boxes, by room. */
  readonly boxes: readonly { readonly roomName: string; readonly things: readonly BoxThing[] }[]
  readonly pipeCuts: PickList['pipeCuts']
  readonly tools: readonly string[]
  readonly missing: readonly string[]
  readonly lifts: PickList['lifts']
  readonly cautions: readonly string[]
}

type Split = NonNullable<PickList['split']>
export type Orders = Pick<Split, 'goodsPence' | 'carriagePence' | 'totalPence' | 'says' | 'oneSupplier'>

type BoxThing = { readonly name: string; readonly quantity: number }

type From = {
  readonly job: Job
  readonly pickList: PickList
  readonly quote: Pick<Quote, 'cautions'>
  readonly firmName: string
  readonly reference: string
  readonly madeOn: string
}

/** The van's list, with rooms by name in place of swaps by id. */
export function pickListView({ job, pickList, quote, ...rest }: From): PickListView {
  const { suppliers, fromVan = [], split, pipeCuts, tools, missing, lifts } = pickList
  return {
    ...rest,
    customerName: job.customer.name,
    siteLines: job.site.addressLines.length > 0 ? job.site.addressLines : job.customer.addressLines,
    suppliers: suppliers.map((supplier) => ({
      ...supplier,
      lines: supplier.lines.map((line) => ({ ...line, name: printedName(line.name) })),
    })),
    fromVan: fromVan.map((line) => ({ ...line, name: printedName(line.name) })),
    orders: split === undefined ? null : ordersOf(split),
    boxes: boxesOf(job, pickList.fromBox),
    pipeCuts,
    tools: tools.map((tool) => tool.name),
    missing,
    lifts: lifts.map((lift) => ({ ...lift, name: printedName(lift.name) })),
    cautions: quote.cautions.map((caution) => caution.says),
  }
}

function ordersOf({ goodsPence, carriagePence, totalPence, says, oneSupplier }: Split): Orders {
  const alone = oneSupplier.map((one) =>
    one.cannot === undefined ? one : { ...one, cannot: printedName(one.cannot) },
  )
  return { goodsPence, carriagePence, totalPence, says, oneSupplier: alone }
}

function boxesOf(job: Job, fromBox: PickList['fromBox']): PickListView['boxes'] {
  return job.swaps.flatMap((swap) => {
    const things = fromBox.filter((thing) => thing.swapId === swap.swapId)
    if (things.length === 0) return []
    const room = job.rooms.find((one) => one.roomId === swap.roomId)
    return [{ roomName: room?.name ?? swap.roomId, things: addedUp(things) }]
  })
}

/** Each thing once, however many rules asked for it. */
function addedUp(things: readonly BoxThing[]): readonly BoxThing[] {
  return [...Map.groupBy(things, (thing) => thing.name)].map(([name, same]) => ({
    name,
    quantity: same.reduce((sum, thing) => sum + thing.quantity, 0),
  }))
}
