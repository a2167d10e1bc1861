import { describe, expect, it } from 'vitest'
import { because, given } from '../../../../src-main/domain/derivation.ts'
import type { Derivation } from '../../../../src-main/domain/derivation.ts'
import type { Figures } from '../../../../src-main/domain/figures.ts'
import { named } from '../../../../src-main/engine/takeoff/rule.ts'
import { toolRules } from '../../../../src-main/engine/tools/tool-list.ts'
import type { ToolRule } from '../../../../src-main/engine/tools/tool-rule.ts'
import { toolsFor } from '../../../../src-main/engine/tools/tools-for.ts'
import { factsOf, swapOf } from '../takeoff/facts-for-tests.ts'
import { typical } from '../../../typical-asks.ts'

const figures: Figures = { settings: {}, tasks: {}, fixings: [] }
const all = toolRules as readonly ToolRule[]
const offsetWhy = given('The pipe stands off its valve', 240, 'mm')
const toggle = { name: 'toggle', anchor: { bitMm: 13 }, source: 'a leaflet' }
const inStud = { name: 'stud screw', intoStud: true as const, source: 'a leaflet' }
const forHole = (says: string, mm: number, source?: string) => given(says, mm, 'mm', source)

const rows: readonly (readonly [
  id: string,
  over: object,
  gives: readonly (readonly [string, Derivation])[],
])[] = [
  ['detector', { drillMm: 10 }, [['Detector for pipes, cables and studs', forHole('Hole A1', 10)]]],
  [
    'drain-gear',
    { drain: 'isolatedPart' },
    [
      [
        'Drain hose, bucket and towels',
        given('How the water is dealt with', 'isolatedPart', undefined, 'survey'),
      ],
    ],
  ],
  [
    'drain-gear',
    { drain: 'freeze' },
    [['Pipe freezing kit, with gloves', given('How the water is dealt with', 'freeze', undefined, 'survey')]],
  ],
  ['drill-bits', {}, [['Masonry bit, 8 mm', forHole('Hole A1: wall plug 8 x 50', 8, 'from memory')]]],
  [
    'drill-bits',
    { drillMm: 13, fixing: toggle },
    [['Bit for board, 13 mm', forHole('Hole A1: toggle', 13, 'a leaflet')]],
  ],
  [
    'drill-bits',
    { drillMm: 4, fixing: inStud },
    [['Pilot bit for timber, 4 mm', forHole('Hole A1: stud screw', 4, 'a leaflet')]],
  ],
  [
    'drill-bits',
    { needsBoard: true },
    [['Pilot bit for timber, 3 mm', forHole('Hole A1: wall plug 8 x 50', 8, 'from memory')]],
  ],
  [
    'drill-bits',
    { wallFinish: 'tile' },
    [
      ['Tile bit, 4 mm, for the pilot', forHole('Hole A1: wall plug 8 x 50', 8, 'from memory')],
      ['Tile bit, 8 mm', forHole('Hole A1: wall plug 8 x 50', 8, 'from memory')],
      ['Masonry bit, 8 mm', forHole('Hole A1: wall plug 8 x 50', 8, 'from memory')],
    ],
  ],
  ['eye-protection', { holeId: 'B2' }, [['Eye protection and dust mask', forHole('Hole B2', 8)]]],
  [
    'gloves',
    { drainedShare: 0.25 },
    [['Chemical-proof gloves', given('Share of the water dosed anew', 0.25)]],
  ],
  [
    'heat-mat',
    { hotWork: true },
    [['Heat mat and fire extinguisher', given('Soldering is planned', 'yes', undefined, 'survey')]],
  ],
  ['heat-mat', {}, []],
  [
    'level',
    { emitterName: 'Tall rail', brackets: 4 },
    [['Spirit level, tape measure and pencil', given('Tall rail: brackets', 4)]],
  ],
  ['pipe-cutter', { remedy: 'repipe', offsetWhy }, [['Pipe cutter, 15 mm', offsetWhy]]],
  ['pipe-cutter', { remedy: 'pull', offsetWhy }, []],
  [
    'spanners',
    { side: 'right', role: 'lockshield' },
    [['Adjustable spanners, two, and a radiator key', given('Valve on the right', 'lockshield')]],
  ],
]

describe('what calls for each tool', () => {
  it.each(rows)('%s with %j', (id, over, gives) => {
    const rule = all.find((one) => one.id === id)
    if (rule === undefined) throw new Error(`There is no tool rule ${id}`)
    const tools = rule.gives({ ...typical[rule.per], ...over }, named(figures, rule.uses))
    expect(tools).toEqual(gives.map(([name, why]) => ({ name, why })))
  })

  it('every tool rule stands in a row above', () => {
    const seen = new Set(rows.map(([id]) => id))
    expect(all.map(({ id }) => id).filter((id) => !seen.has(id))).toEqual([])
  })
})

describe('the tools of a job', () => {
  const tools = () =>
    toolsFor(
      factsOf([swapOf('a', 'hall', { holes: [typical.hole, { ...typical.hole, holeId: 'A2' }] })]),
      figures,
    )

  it('are each there once, by the alphabet, with an id made of the name', () => {
    expect(tools().map(({ toolId, name }) => [toolId, name])).toEqual([
      ['chemical-proof-gloves', 'Chemical-proof gloves'],
      ['detector-for-pipes-cables-and-studs', 'Detector for pipes, cables and studs'],
      ['drain-hose-bucket-and-towels', 'Drain hose, bucket and towels'],
      ['eye-protection-and-dust-mask', 'Eye protection and dust mask'],
      ['masonry-bit-8-mm', 'Masonry bit, 8 mm'],
      ['spirit-level-tape-measure-and-pencil', 'Spirit level, tape measure and pencil'],
    ])
  })
  it('that two holes call for name both', () => {
    expect(tools().find(({ name }) => name.startsWith('Eye'))?.why).toEqual(
      because('2 places call for it.', 2, { from: [forHole('Hole A1', 8), forHole('Hole A2', 8)] }),
    )
  })
  it('that one thing calls for show that one', () => {
    expect(tools().find(({ name }) => name.startsWith('Spirit'))?.why).toEqual(given('Panel: brackets', 2))
  })
})
