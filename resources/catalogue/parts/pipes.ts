import type { Part } from '../../../src-main/domain/item.ts'
import { capital, counterAndFixings, counterAndWarehouse } from '../sold.ts'
import type { Pack, SoldPart } from '../sold.ts'

type Size = 8 | 10 | 15 | 22
type Material = 'copper' | 'plastic'

/** Lengths in metres and their prices; straight pipe in 3 and 2 m, small pipe in coils. Prices from memory. */
const pipes: readonly (readonly [material: Material, outsideMm: Size, packs: readonly Pack[]])[] = [
  ['copper', 8, [[10, 2700]]],
  ['copper', 10, [[10, 3400]]],
  [
    'copper',
    15,
    [
      [3, 1190],
      [2, 850],
      [1, 480],
    ],
  ],
  [
    'copper',
    22,
    [
      [3, 2340],
      [2, 1660],
      [1, 940],
    ],
  ],
  [
    'plastic',
    10,
    [
      [3, 390],
      [10, 1150],
    ],
  ],
  [
    'plastic',
    15,
    [
      [3, 470],
      [2, 350],
      [10, 1390],
    ],
  ],
  [
    'plastic',
    22,
    [
      [3, 890],
      [2, 660],
      [10, 2680],
    ],
  ],
]

const materialNames = {
  copper: ['copper tube', 'tube'],
  plastic: ['barrier pipe', 'plastic tube', 'push-fit pipe'],
} as const

function plainPipes(): readonly SoldPart[] {
  return pipes.map(([material, outsideMm, packs]) => ({
    item: {
      itemId: `pipe-${material}-${outsideMm}`,
      name: `${capital(material)} pipe, ${outsideMm} mm`,
      generic: true,
      alsoCalled: [...materialNames[material], `${outsideMm}mm`, ...(outsideMm <= 10 ? ['microbore'] : [])],
      kind: 'pipe',
      spec: { material, outsideMm },
    },
    packs,
    sellers: counterAndWarehouse,
  }))
}

function chromedPipe(): SoldPart {
  return {
    item: {
      itemId: 'pipe-copper-15-chromed',
      name: 'Copper pipe, 15 mm, chrome-plated',
      generic: true,
      alsoCalled: ['chrome pipe', 'chrome tube', '15mm'],
      kind: 'pipe',
      spec: { material: 'copper', outsideMm: 15 },
    },
    packs: [
      [1, 1120],
      [2, 1980],
    ],
    sellers: ['counter'],
  }
}

const clipStyles = [
  {
    id: 'screw',
    name: 'Pipe clip, screw-on',
    other: ['pipe clip', 'stand-off clip'],
    pence: 16,
    sizes: [8, 10, 15, 22],
  },
  { id: 'nail', name: 'Pipe clip, nail-in', other: ['nail clip'], pence: 12, sizes: [8, 10, 15, 22] },
  {
    id: 'lock',
    name: 'Pipe clip, snap-over with lock',
    other: ['hinged clip', 'locking clip'],
    pence: 24,
    sizes: [15, 22],
  },
  {
    id: 'ring',
    name: 'Pipe ring with backplate, chrome',
    other: ['pipe ring'],
    pence: 260,
    sizes: [15, 22],
  },
] as const satisfies readonly {
  id: string
  name: string
  other: readonly string[]
  pence: number
  sizes: readonly Size[]
}[]

const sizeRatio = { 8: 0.95, 10: 0.95, 15: 1, 22: 1.25 } as const

function clips(): readonly SoldPart[] {
  return clipStyles.flatMap(({ id, name, other, pence, sizes }) =>
    sizes.map((outsideMm): SoldPart => {
      const one = pence * sizeRatio[outsideMm]
      const packs: readonly Pack[] =
        id === 'ring'
          ? [[1, Math.round(one)]]
          : [
              [1, Math.round(one * 1.6)],
              [10, Math.round(one * 10)],
              [100, Math.round(one * 78)],
            ]
      return {
        item: {
          itemId: `clip-${id}-${outsideMm}`,
          name: `${name}, ${outsideMm} mm`,
          generic: true,
          alsoCalled: [...other, `${outsideMm}mm`],
          kind: 'clip',
          spec: { outsideMm },
        },
        packs,
        sellers: counterAndFixings,
      }
    }),
  )
}

type Collar = Extract<Part, { kind: 'collar' }>['spec']

const collarPence = { white: 60, chrome: 145, black: 260, brass: 250 } as const

function collars(): readonly SoldPart[] {
  const small: readonly Collar['finish'][] = ['white', 'chrome']
  const every: readonly Collar['finish'][] = ['white', 'chrome', 'black', 'brass']
  return ([8, 10, 15, 22] as const).flatMap((outsideMm) =>
    (outsideMm < 15 ? small : every).map((finish): SoldPart => {
      const one = Math.round(collarPence[finish] * sizeRatio[outsideMm])
      return {
        item: {
          itemId: `collar-${outsideMm}-${finish}`,
          name: `Pipe collar, ${outsideMm} mm, ${finish}`,
          generic: true,
          alsoCalled: ['pipe cover', 'floor plate', 'pipe rose', `${outsideMm}mm`],
          kind: 'collar',
          spec: { outsideMm, finish },
        },
        packs: [
          [1, one],
          [10, Math.round(one * 8.2)],
        ],
        sellers: counterAndFixings,
      }
    }),
  )
}

/** Pence for a metre at 15 mm, by thickness; from memory. */
const laggingPence: Readonly<Record<number, number>> = { 9: 95, 13: 130, 19: 240, 25: 420 }
const laggingWalls: Readonly<Record<Size, readonly number[]>> = {
  8: [13],
  10: [9, 13],
  15: [9, 13, 19, 25],
  22: [9, 13, 19, 25],
}

function insulation(): readonly SoldPart[] {
  return ([8, 10, 15, 22] as const).flatMap((outsideMm) =>
    laggingWalls[outsideMm].map((wallMm): SoldPart => {
      const perM = (laggingPence[wallMm] ?? 0) * sizeRatio[outsideMm]
      return {
        item: {
          itemId: `insulation-${outsideMm}x${wallMm}`,
          name: `Pipe insulation for ${outsideMm} mm pipe, ${wallMm} mm thick`,
          generic: true,
          alsoCalled: ['lagging', 'pipe foam', `${outsideMm}mm`],
          kind: 'insulation',
          spec: { outsideMm, wallMm },
        },
        packs: [
          [1, Math.round(perM)],
          [2, Math.round(perM * 1.8)],
        ],
        sellers: counterAndFixings,
      }
    }),
  )
}

export function pipesAndSupports(): readonly SoldPart[] {
  return [...plainPipes(), chromedPipe(), ...clips(), ...collars(), ...insulation()]
}
