import { readFile } from 'node:fs/promises'
import { basename } from 'node:path'
import { describe, expect, it } from 'vitest'
import { printPdf } from '../../src-main/desk/papers/print-pdf.ts'
import { pickingDocument } from '../../src-main/documents/van/picking-document.ts'
import { pickingView } from '../../src-main/documents/van/picking-view.ts'
import { given } from '../../src-main/domain/derivation.ts'
import type { Picking, PickingLine } from '../../src-main/domain/follow-up/van.ts'
import { accepted, ask, begin, refusalOf } from '../store/van/van-for-tests.ts'
import { penceIn, readPdf } from './read-pdf.ts'

const why = given('a reason that no paper prints', 1)
const line = (lineNo: number, more: Partial<PickingLine>): PickingLine => ({
  lineNo,
  source: 'supplier',
  supplierId: 'moor',
  supplierName: 'Moor Supplies',
  kind: 'valve',
  code: `C-${lineNo}`,
  name: `Valve ${lineNo}`,
  unit: 'each',
  need: 2,
  packs: 2,
  packHolds: 1,
  picked: 0,
  ...more,
})
const {
  supplierId: _id,
  supplierName: _name,
  code: _code,
  packs: _packs,
  packHolds: _holds,
  ...bare
} = line(0, {})
const fromVan = (lineNo: number, more: Partial<PickingLine>): PickingLine => ({
  ...bare,
  lineNo,
  source: 'van',
  kind: 'pipeFitting',
  name: `Elbow ${lineNo}`,
  ...more,
})
const ticked = '2026-03-02T09:00:00.000Z'

const lines: readonly PickingLine[] = [
  line(1, { name: 'Valve 15 mm x G1/2' }),
  line(2, { kind: 'pipe', name: 'Copper pipe, 15 mm', unit: 'm', need: 6, packs: 2, packHolds: 3 }),
  line(3, { kind: 'emitter', name: 'Zig towel rail' }),
  line(4, { kind: 'emitter', name: 'Arc towel rail', picked: 2, tickedAt: ticked }),
  line(5, {
    supplierId: 'abbey',
    supplierName: 'Abbey Counter',
    kind: 'clip',
    name: 'Clip',
    packHolds: 50,
    packs: 1,
    need: 50,
  }),
  fromVan(6, { picked: 1, tickedAt: ticked, shortSays: 'One was bent', insteadSays: 'Elbow, press' }),
  fromVan(7, { kind: 'seal', name: 'Seal tape', unit: 'm', need: 2.5 }),
  fromVan(8, { source: 'box', kind: 'box', name: 'vent (O-ring)', need: 1 }),
]

const picking: Picking = {
  pickingNo: 7,
  title: 'Ann Example, Bob Example',
  madeOn: '2026-03-02',
  lines,
  body: {
    quotes: [
      { quoteId: 'Q-2026-0001', title: 'Towel rail', customerName: 'Ann Example' },
      { quoteId: 'Q-2026-0002', title: 'Radiator', customerName: 'Bob Example' },
    ],
    tools: [
      'Chemical-proof gloves',
      'Masonry bit, 8 mm',
      'Pipe freezing kit, with gloves',
      'Eye protection and dust mask',
      'Tile bit, 4 mm, for the pilot',
      'Habit gauge',
    ].map((name) => ({ toolId: name.toLowerCase().replace(/[^a-z0-9]+/g, '-'), name, why })),
    pipeCuts: [
      {
        name: 'Copper pipe, 15 mm',
        bars: [
          {
            stockId: 'C-2',
            cuts: [
              { id: '1, Q-2026-0001: left side', lengthMm: 1800 },
              { id: '2, Q-2026-0002: right side', lengthMm: 1150 },
            ],
            offcutMm: 46,
          },
        ],
      },
    ],
    lifts: [{ quoteId: 'Q-2026-0002', name: 'Panel 600 x 1000', massKg: 26.8, says: 'Two people.' }],
    cautions: ['Look for hidden pipes and cables before drilling.'],
    missing: ['Old collar: nobody sells it.'],
    orders: [],
    says: 'The van first.',
  },
}

async function read(one: Picking) {
  const { bytes } = await printPdf(pickingDocument(pickingView(one, 'Test Heating')), {
    createdOn: one.madeOn,
  })
  return readPdf(bytes)
}

/** Which of these does not stand after the one before it. */
function outOfOrder(text: string, words: readonly string[]): readonly string[] {
  let from = 0
  return words.filter((word) => {
    const at = text.indexOf(word, from)
    if (at >= 0) from = at + word.length
    return at < 0
  })
}

describe('a pick list for the van on paper', { timeout: 120_000 }, () => {
  it('goes the way one walks: the van, each supplier kind by kind, then tools, cuts, lifts and cautions', async () => {
    const { told } = await read(picking)
    const walk = [
      'Pick list 7',
      'Ann Example, Bob Example',
      'Q-2026-0001, Ann Example: Towel rail',
      'Q-2026-0002, Bob Example: Radiator',
      'Missing from this list: find these yourself',
      'Old collar: nobody sells it.',
      'From the van',
      'Pipe fittings',
      'Elbow 6',
      'Thread seal',
      'Seal tape',
      'From suppliers',
      'Abbey Counter',
      'Pipe clips',
      'Clip',
      'Moor Supplies',
      'Radiators and towel rails',
      'Arc towel rail',
      'Zig towel rail',
      'Pipe',
      'Copper pipe, 15 mm',
      'Valves',
      'Valve 15 mm × G1/2',
      'In the emitters’ boxes',
      '1 × vent (O-ring)',
      'Tools',
      'Pipe freezing kit, with gloves',
      'Habit gauge',
      'Drill bits',
      'Masonry bit, 8 mm',
      'Tile bit, 4 mm, for the pilot',
      'Protective gear',
      'Chemical-proof gloves',
      'Eye protection and dust mask',
      'Pipe to cut',
      'Length 1, C-2: cut 1800 mm (1, Q-2026-0001: left side), 1150 mm (2, Q-2026-0002: right side). Left over: 46 mm.',
      'Lifts for two people',
      'Panel 600 × 1000, 26.8 kg, for Bob Example. Two people.',
      'Take care',
      'Look for hidden pipes and cables before drilling.',
    ]
    expect(outOfOrder(told, walk)).toEqual([])
  })

  it('says how many packs and what they come to, and what was found out since', async () => {
    const { text, told } = await read(picking)
    expect(text).toMatch(/C-2 Copper pipe, 15 mm 2 × 3 m 6 m/)
    expect(text).toMatch(/C-5 Clip 1 × 50 50/)
    expect(text).toMatch(/C-3 Zig towel rail 2 2/)
    expect(text).toMatch(/Seal tape 2\.5 m/)
    expect(told).toContain('Instead: Elbow, press. Found 1. Short: One was bent')
    expect(told.match(/Found/g)).toHaveLength(1)
    expect(told).not.toContain('Closed')
    expect((await read({ ...picking, closedOn: '2026-03-04' })).text).toContain('Closed 4 March 2026')
    expect(penceIn(told)).toEqual([])
    expect(told).not.toContain('a reason that no paper prints')
  })

  it('has a box for each thing, ticked where all of it was found', () => {
    const definition = JSON.stringify(pickingDocument(pickingView(picking, 'Test Heating')))
    const boxes = definition.match(/"w":11,"h":11/g) ?? []
    // Eight lines, six tools and one that is missing.
    expect(boxes).toHaveLength(8 + 6 + 1)
    expect(definition.match(/"x1":2,"y1":7.5/g)).toHaveLength(1)
  })

  it('leaves out what there is none of', async () => {
    const { quotes, orders, says } = picking.body
    const body = { quotes, orders, says, tools: [], pipeCuts: [], lifts: [], cautions: [], missing: [] }
    const { told, pages } = await read({ ...picking, lines: lines.slice(0, 1), body })
    for (const heading of [
      'Missing',
      'From the van',
      'boxes',
      'Tools',
      'Drill bits',
      'Protective',
      'cut',
      'Lifts',
      'Take care',
    ])
      expect(told).not.toContain(heading)
    expect(told).toContain('Valve 15 mm × G1/2')
    expect(pages).toHaveLength(1)
  })

  it('repeats the supplier over its lines on each page, and loses none', async () => {
    const many = Array.from({ length: 120 }, (_, at) => line(at + 1, { name: `Valve number ${at + 1}` }))
    const { pages } = await read({ ...picking, lines: many })
    const withLines = pages.filter((page) => page.some((row) => /^C-\d+ Valve number/.test(row)))
    expect(withLines.length).toBeGreaterThan(2)
    for (const page of withLines)
      expect(page.filter((row) => row.startsWith('Moor Supplies'))).toHaveLength(1)
    const codes = pages.flat().flatMap((row) => /^(C-\d+) Valve number/.exec(row)?.[1] ?? [])
    expect(codes.toSorted()).toEqual(many.map(({ code }) => code).toSorted())
  })

  it('comes from the data file with every line of the pick list on it', async () => {
    const begun = await begin(async (desk) => {
      await accepted(desk, 'job-ann', 'Ann Example')
      await accepted(desk, 'job-bob', 'Bob Example')
    })
    await begun.inTwoWindows(async (desk) => {
      await ask(desk, 'van.note', { itemId: 'elbow-compression-15', kind: 'receipt', quantity: 1 })
      const { picking: made } = await ask(desk, 'picking.make', { quoteIds: ['Q-2026-0001', 'Q-2026-0002'] })
      const { path, pages } = await ask(desk, 'picking.pdf', { pickingNo: 1 })
      expect(basename(path)).toBe('picking-1.pdf')
      const paper = await readPdf(await readFile(path))
      expect(paper.pages).toHaveLength(pages)
      const joined = paper.told.replace(/[\s\u200b]/g, '')
      for (const one of made.lines)
        expect(joined).toContain((one.code ?? one.name).replace(/ x /g, '×').replace(/\s/g, ''))
      for (const { name } of made.body.tools) expect(joined).toContain(name.replace(/\s/g, ''))
      for (const caution of made.body.cautions) expect(joined).toContain(caution.replace(/\s/g, ''))
      expect(await refusalOf(desk, 'picking.pdf', { pickingNo: 2 })).toMatchObject({ code: 'not-found' })
      expect(await refusalOf(desk, 'picking.pdf', { pickingNo: 1, out: 'x.pdf' })).toMatchObject({
        code: 'refused',
      })
    })
    await begun.gone()
  })
})
