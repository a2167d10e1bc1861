import type { Part } from '../../../src-main/domain/item.ts'
import { counterAndFixings } from '../sold.ts'
import type { Pack, SoldPart } from '../sold.ts'

type MakingGood = Extract<Part, { kind: 'filler' | 'sealant' | 'paint' }>
type Row = Pick<MakingGood, 'itemId' | 'name' | 'alsoCalled' | 'note'> & {
  readonly packs: readonly Pack[]
}

const tubs: readonly Row[] = [
  {
    itemId: 'filler-ready-mixed',
    name: 'Filler, ready-mixed, white',
    alsoCalled: ['wall filler', 'plaster filler', 'hole filler'],
    packs: [
      [250, 340],
      [600, 590],
      [1000, 840],
    ],
  },
  {
    itemId: 'filler-powder',
    name: 'Filler powder for deep holes, 2 kg bag',
    alsoCalled: ['deep fill', 'plaster filler', 'interior filler'],
    packs: [[1400, 690]],
    note: 'A bag makes about 1.4 litres; from memory.',
  },
  {
    itemId: 'filler-fine',
    name: 'Fine surface filler, 250 ml',
    alsoCalled: ['finishing filler', 'skim filler'],
    packs: [[250, 520]],
  },
]

const tileFillers: readonly Row[] = ['white', 'grey'].map((colour) => ({
  itemId: `filler-tile-${colour}`,
  name: `Filler for holes in tile, ${colour}, 100 ml tube`,
  alsoCalled: ['tile filler', 'tile repair', 'grout repair'],
  packs: [[100, 430]],
}))

const silicones: readonly Row[] = (
  [
    ['white', 560],
    ['clear', 590],
    ['grey', 640],
    ['ivory', 640],
  ] as const
).map(([colour, pence]) => ({
  itemId: `sealant-silicone-${colour}`,
  name: `Sanitary silicone, ${colour}, 310 ml`,
  alsoCalled: ['silicone sealant', 'bathroom sealant', 'mastic'],
  packs: [[310, pence]],
}))

const acrylics: readonly Row[] = [
  {
    itemId: 'sealant-acrylic-white',
    name: 'Acrylic sealant, white, 310 ml',
    alsoCalled: ['decorators caulk', 'painters caulk', 'caulk'],
    packs: [
      [310, 240],
      [3720, 2520],
    ],
  },
  {
    itemId: 'sealant-acrylic-brown',
    name: 'Acrylic sealant, brown, 310 ml',
    alsoCalled: ['decorators caulk', 'caulk'],
    packs: [[310, 290]],
  },
]

/** A litre covers about 12 m2 in one coat; from memory. */
const m2PerLitre = 12

const paints: readonly Row[] = (
  [
    ['white', 'Wall touch-up paint, matt white', 520, 1350],
    ['off-white', 'Wall touch-up paint, matt off-white', 560, 1480],
    ['bathroom-white', 'Wall touch-up paint, white, for bathrooms', 740, 1990],
  ] as const
).map(([id, name, quarter, litre]) => ({
  itemId: `paint-wall-${id}`,
  name,
  alsoCalled: ['emulsion', 'wall paint', 'touch up'],
  note: 'Counted in square metres of one coat, 12 to the litre; from memory.',
  packs: [
    [0.25 * m2PerLitre, quarter],
    [m2PerLitre, litre],
  ],
}))

export function makingGood(): readonly SoldPart[] {
  return [
    ...tubs.map((row) => sold(row, { kind: 'filler', spec: { forWall: 'plaster' } })),
    ...tileFillers.map((row) => sold(row, { kind: 'filler', spec: { forWall: 'tile' } })),
    ...silicones.map((row) => sold(row, { kind: 'sealant', spec: { form: 'sanitarySilicone' } })),
    ...acrylics.map((row) => sold(row, { kind: 'sealant', spec: { form: 'acrylic' } })),
    ...paints.map((row) => sold(row, { kind: 'paint', spec: { form: 'wallTouchUp' } })),
  ]
}

type What =
  | Pick<Extract<Part, { kind: 'filler' }>, 'kind' | 'spec'>
  | Pick<Extract<Part, { kind: 'sealant' }>, 'kind' | 'spec'>
  | Pick<Extract<Part, { kind: 'paint' }>, 'kind' | 'spec'>

function sold({ packs, ...row }: Row, what: What): SoldPart {
  return { item: { ...row, generic: true, ...what }, packs, sellers: counterAndFixings }
}
