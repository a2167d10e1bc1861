import type { Content, ContentCanvas, TableCell, TDocumentDefinitions } from 'pdfmake/interfaces'
import { dayInWords } from './days.ts'
import { kg, mm, money, numberInWords, quantity, tight } from './in-words.ts'
import { acrossLine, ink, pageWidthPt, paper, plain, points, ruledRows, section, tickBox } from './look.ts'
import type { Orders, PickListView } from './pick-list-view.ts'

type Supplier = PickListView['suppliers'][number]
type Bar = PickListView['pipeCuts'][number]['bars'][number]

const sidePt = 42
const widthPt = pageWidthPt - 2 * sidePt

/** What goes into the van, to be ticked off with a pen. */
export function pickListDocument(view: PickListView): TDocumentDefinitions {
  const nothing = view.suppliers.length === 0 ? [{ text: 'There is nothing to buy for this job.' }] : []
  return paper({
    title: `Pick list ${view.reference}`,
    author: view.firmName,
    foot: `Pick list ${view.reference}  ·  ${view.customerName}`,
    fontSize: 10.5,
    sidePt,
    colour: '#000000',
    content: [
      ...head(view),
      ...missingBlocks(view.missing),
      ...section('From the van', view.fromVan.length === 0 ? [] : [ticked(view.fromVan.map(vanThing))]),
      ...section('To buy', [
        ...nothing,
        ...genericNote(view),
        ...view.suppliers.flatMap((supplier) => [
          supplierTable(supplier, howGeneric(view) === 'some'),
          ...orderNote(supplier),
        ]),
      ]),
      ...section('What the orders come to', view.orders === null ? [] : orderBlocks(view.orders)),
      ...section('In the emitters’ boxes', view.boxes.map(boxBlock)),
      ...section('Pipe to cut', view.pipeCuts.flatMap(cutBlocks)),
      ...section('Tools', view.tools.length === 0 ? [] : [ticked(view.tools)]),
      ...section(
        'Lifting',
        points(view.lifts.map((lift) => `${lift.name}, ${kg(lift.massKg)}. ${lift.says}`)),
      ),
      ...section('Take care', points(view.cautions)),
    ],
  })
}

function head({ reference, madeOn, customerName, siteLines }: PickListView): Content[] {
  return [
    {
      columns: [
        { text: 'Pick list', style: 'paperName', width: '*' },
        { text: [reference, '\n', dayInWords(madeOn)], alignment: 'right', width: 'auto' },
      ],
    },
    { text: [customerName, ...siteLines].join(', '), margin: [0, 4, 0, 0] },
    acrossLine(8, 0, widthPt),
  ]
}

function howGeneric({ suppliers }: PickListView): 'none' | 'some' | 'all' {
  const lines = suppliers.flatMap((supplier) => supplier.lines)
  if (!lines.some((line) => line.generic)) return 'none'
  return lines.every((line) => line.generic) ? 'all' : 'some'
}

/** Nobody shall order by an invented code. */
function genericNote(view: PickListView): Content[] {
  const how = howGeneric(view)
  if (how === 'none') return []
  const which = how === 'all' ? 'Every line here is' : 'Lines marked “generic” are'
  const text = `${which} from the generic catalogue: match it to the supplier’s own item and code before you order.`
  return [{ text, margin: [0, 0, 0, 6] }]
}

/** What nobody sells comes first, so that it is not forgotten. */
function missingBlocks(missing: readonly string[]): Content[] {
  if (missing.length === 0) return []
  return section('Missing from this list: find these yourself', [ticked(missing)])
}

function vanThing({ name, quantity: many, unit }: PickListView['fromVan'][number]): string {
  return unit === 'each' ? `${numberInWords(many)} × ${name}` : `${name}, ${quantity(many, unit)}`
}

/** Goods and carriage under a supplier's lines, and what is missing to come free of carriage. */
function orderNote({ goodsPence, carriagePence, shortOfFreePence }: Supplier): Content[] {
  if (goodsPence === undefined || carriagePence === undefined) return []
  const carriage = carriageInWords(carriagePence)
  const short =
    shortOfFreePence === undefined ? '' : ` ${money(shortOfFreePence)} more in goods would come free of it.`
  const text = `Goods ${money(goodsPence)}, ${carriage}, together ${money(goodsPence + carriagePence)} before tax.${short}`
  return [{ text, margin: [0, -8, 0, 12] }]
}

function carriageInWords(pence: number): string {
  return pence === 0 ? 'no carriage' : `carriage ${money(pence)}`
}

function orderBlocks({ goodsPence, carriagePence, totalPence, says, oneSupplier }: Orders): Content[] {
  const sum = `All orders: goods ${money(goodsPence)}, ${carriageInWords(carriagePence)}, together ${money(totalPence)} before tax. ${says}`
  const alone = oneSupplier.map(
    ({ name, totalPence: all, goodsPence: goods = 0, carriagePence: brought = 0, cannot }) =>
      all === undefined
        ? `Not all from ${name}. ${cannot ?? ''}`
        : `All from ${name}: goods ${money(goods)}, ${carriageInWords(brought)}, together ${money(all)}.`,
  )
  return [{ text: sum, margin: [0, 0, 0, 4] }, ...points(alone)]
}

function nameOf({ name, massKg, generic }: Supplier['lines'][number], mark: boolean): string {
  return [name, ...(massKg === undefined ? [] : [kg(massKg)]), ...(mark && generic ? ['generic'] : [])].join(
    ', ',
  )
}

function supplierTable({ name, lines }: Supplier, mark: boolean): Content {
  const right = { style: 'head', alignment: 'right' } as const
  const top: TableCell[] = [
    { text: name, style: 'subheading', colSpan: 3 },
    '',
    '',
    { text: 'Packs', ...right },
    { text: 'Needed', ...right },
    { text: 'Spare', ...right },
  ]
  const rows = lines.map((line): TableCell[] => [
    tickBox(),
    { text: breakable(line.code) },
    { text: nameOf(line, mark) },
    { text: packs(line), style: 'amount', bold: true },
    { text: quantity(line.need, line.unit), style: 'amount' },
    { text: line.leftover > 0 ? quantity(line.leftover, line.unit) : 'none', style: 'amount' },
  ])
  return {
    margin: [0, 0, 0, 12],
    table: {
      widths: [12, 96, '*', 58, 46, 46],
      headerRows: 1,
      keepWithHeaderRows: 1,
      dontBreakRows: true,
      body: [top, ...rows],
    },
    layout: { ...ruledRows, paddingTop: () => 3, paddingBottom: () => 1.5 },
  }
}

/** `1 × 12 m`; plain `2` where a pack holds one. */
function packs({ packs: count, packHolds, unit }: Supplier['lines'][number]): string {
  if (unit === 'each') return packHolds === 1 ? String(count) : `${count} × ${numberInWords(packHolds)}`
  return `${count} × ${numberInWords(packHolds)}${tight}${unit === 'm2' ? 'm²' : unit}`
}

/** Long codes may break after a dash or a slash. */
export function breakable(code: string): string {
  return code.length <= 15 ? code : code.replace(/([-/.])/g, '$1\u200b')
}

function boxBlock({ roomName, things }: PickListView['boxes'][number]): Content {
  const says = things.map((thing) => `${numberInWords(thing.quantity)} × ${thing.name}`)
  return { text: [{ text: `${roomName}: `, bold: true }, says.join(', ')], margin: [0, 0, 0, 3] }
}

/** Things to tick in two columns, read down the left one first. */
export function ticked(names: readonly string[]): Content {
  const half = Math.ceil(names.length / 2)
  const cells = (name: string | undefined): TableCell[] =>
    name === undefined ? ['', ''] : [tickBox(), { text: name, margin: [0, 0, 8, 0] }]
  const body = Array.from({ length: half }, (_, row) => [...cells(names[row]), ...cells(names[half + row])])
  return { table: { widths: [12, '*', 12, '*'], dontBreakRows: true, body }, layout: plain }
}

/** Each length of one pipe, drawn to scale with its cuts. */
export function cutBlocks({ name, bars }: PickListView['pipeCuts'][number]): Content[] {
  const [first, ...others] = bars.map((bar, index) => barBlock(bar, index + 1))
  const heading: Content = { text: name, style: 'subheading', margin: [0, 2, 0, 2] }
  return [{ unbreakable: true, stack: first === undefined ? [heading] : [heading, first] }, ...others]
}

function barBlock(bar: Bar, number: number): Content {
  const lengths = bar.cuts.map((cut) => `${mm(cut.lengthMm)} (${cut.id})`)
  return {
    unbreakable: true,
    margin: [0, 0, 0, 8],
    stack: [
      {
        text: `Length ${number}, ${bar.stockId}: cut ${lengths.join(', ')}. Left over: ${mm(bar.offcutMm)}.`,
      },
      barDrawing(bar),
    ],
  }
}

/** The length to scale across the page: pieces outlined, what is left over shaded. */
function barDrawing({ cuts, offcutMm }: Bar): ContentCanvas {
  const wholeMm = cuts.reduce((sum, cut) => sum + cut.lengthMm, offcutMm)
  const scale = widthPt / wholeMm
  const starts = cuts.map((_, index) => cuts.slice(0, index).reduce((sum, cut) => sum + cut.lengthMm, 0))
  const outline = { type: 'rect', y: 3, h: 9, lineWidth: 1, lineColor: ink } as const
  const pieces = cuts.map((cut, index) => ({
    ...outline,
    x: (starts[index] ?? 0) * scale,
    w: cut.lengthMm * scale,
  }))
  const rest = { ...outline, x: (wholeMm - offcutMm) * scale, w: offcutMm * scale, color: '#d9dde0' }
  return { canvas: offcutMm > 0 ? [...pieces, rest] : pieces }
}
