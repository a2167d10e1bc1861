import { describe, expect, it } from 'vitest'
import type { Picking, PickingLine } from '../../../src-main/domain/follow-up/van.ts'
import {
  nameOf,
  needInWords,
  progressOf,
  sourcesOf,
  stateOf,
} from '../../../src-renderer/screens/van/pick/pick-words.ts'

const line = (more: Partial<PickingLine> = {}): PickingLine => ({
  lineNo: 1,
  source: 'supplier',
  supplierId: 'one',
  supplierName: 'Example Supplies',
  kind: 'screw',
  name: 'screw (diameter 6 mm)',
  unit: 'each',
  need: 4,
  picked: 0,
  ...more,
})

const picking = (lines: readonly PickingLine[], orders: Picking['body']['orders'] = []): Picking => ({
  pickingNo: 1,
  title: 'Robin Sample',
  madeOn: '2026-11-25',
  lines: [...lines],
  body: { quotes: [], tools: [], pipeCuts: [], lifts: [], cautions: [], missing: [], orders, says: '' },
})

describe('what is to be picked', () => {
  it('is told in packs where packs are bought, and in lengths where it is pipe', () => {
    expect(needInWords(line())).toBe('4')
    expect(needInWords(line({ need: 20, packs: 2, packHolds: 10 }))).toBe('2 packs of 10')
    expect(needInWords(line({ need: 310, unit: 'ml', packs: 1, packHolds: 310 }))).toBe('1 pack of 310 ml')
    expect(needInWords(line({ need: 3, packs: 3, packHolds: 1 }))).toBe('3')
    expect(needInWords(line({ need: 2, unit: 'L', packs: 2, packHolds: 1 }))).toBe('2 packs of 1 litre')
    const pipe = { kind: 'pipe', unit: 'm', packHolds: 3 } as const
    expect(needInWords(line({ ...pipe, need: 6, packs: 2 }))).toBe('2 lengths of 3 m')
    expect(needInWords(line({ ...pipe, need: 3, packs: 1 }))).toBe('1 length of 3 m')
  })

  it('begins with a capital letter', () => {
    expect(nameOf(line())).toBe('Screw (diameter 6 mm)')
  })
})

describe('a line', () => {
  it('waits until it is ticked, and is short once there is a reason for it', () => {
    const tickedAt = '2026-11-25T08:00:00Z'
    expect(stateOf(line())).toBe('waiting')
    expect(stateOf(line({ picked: 4, tickedAt }))).toBe('ticked')
    expect(stateOf(line({ picked: 0, tickedAt, shortSays: 'None there.' }))).toBe('short')
  })

  it('that is short counts as dealt with', () => {
    const tickedAt = '2026-11-25T08:00:00Z'
    const lines = [line(), line({ picked: 4, tickedAt }), line({ picked: 1, tickedAt, shortSays: 'Few.' })]
    expect(progressOf(lines)).toEqual({ lines: 3, ticked: 2, short: 1 })
  })
})

describe('where things come from', () => {
  it('is the van first, then each supplier with what its order costs, then the boxes', () => {
    const lines = [
      line({ lineNo: 1, source: 'box' }),
      line({ lineNo: 2 }),
      line({ lineNo: 3, supplierId: 'two', supplierName: 'Sample Merchants' }),
      line({ lineNo: 4, source: 'van' }),
      line({ lineNo: 5 }),
    ]
    const orders = [
      { supplierId: 'one', name: 'Example Supplies', goodsPence: 1234, carriagePence: 600 },
      { supplierId: 'two', name: 'Sample Merchants', goodsPence: 500, carriagePence: 0 },
    ]
    const told = sourcesOf(picking(lines, orders)).map(({ title, says, lines: some }) => [
      title,
      says,
      some.map(({ lineNo }) => lineNo),
    ])
    expect(told).toEqual([
      ['From the van', undefined, [4]],
      ['Example Supplies', '£12.34 before VAT, carriage £6.00', [2, 5]],
      ['Sample Merchants', '£5.00 before VAT, no carriage', [3]],
      ['In the boxes', 'Comes with the radiators: see that it is there.', [1]],
    ])
  })

  it('says nothing of carriage that was not reckoned with, and leaves out what is empty', () => {
    const orders = [{ supplierId: 'one', name: 'Example Supplies', goodsPence: 99 }]
    const [only, ...more] = sourcesOf(picking([line()], orders))
    expect([only?.says, more]).toEqual(['£0.99 before VAT', []])
  })
})
