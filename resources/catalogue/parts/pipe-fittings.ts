import type { Part } from '../../../src-main/domain/item.ts'
import { counterAndFixings, counterAndWarehouse, everySeller } from '../sold.ts'
import type { Pack, SoldPart } from '../sold.ts'

type Fitting = Extract<Part, { kind: 'pipeFitting' }>['spec']
type Size = Fitting['outsideMm']
type Joint = 'compression' | 'endFeed' | 'pushFit'
type Shape = 'elbow' | 'coupler' | 'tee' | 'stopEnd' | 'reducer'

const inWords = { compression: 'compression', endFeed: 'end feed', pushFit: 'push-fit' } as const
const shapeNames = {
  elbow: { name: 'Elbow', other: ['bend', '90 degree elbow'] },
  coupler: { name: 'Coupler', other: ['coupling', 'straight connector'] },
  tee: { name: 'Tee', other: ['T-piece', 'equal tee'] },
  stopEnd: { name: 'Stop end', other: ['cap', 'blank end'] },
  reducer: { name: 'Reducer', other: ['reducing coupler', 'adaptor'] },
} as const
const jointNames = {
  compression: ['comp', 'olive fitting'],
  endFeed: ['capillary', 'solder fitting'],
  pushFit: ['plastic fitting', 'push fit'],
} as const

/** Pence at 15 mm by joint and shape, and how it goes with size; from memory. */
const pence = {
  compression: { elbow: 165, coupler: 140, tee: 255, stopEnd: 150, reducer: 190 },
  endFeed: { elbow: 45, coupler: 32, tee: 95, stopEnd: 42, reducer: 60 },
  pushFit: { elbow: 285, coupler: 260, tee: 440, stopEnd: 230, reducer: 310 },
} as const
const sizeRatio = { 8: 1, 10: 0.95, 15: 1, 22: 1.8 } as const

const sizesOf: Readonly<Record<Joint, readonly Size[]>> = {
  compression: [8, 10, 15, 22],
  endFeed: [8, 10, 15, 22],
  pushFit: [10, 15, 22],
}
const reductions: Readonly<Record<Joint, readonly (readonly [from: Size, to: Size])[]>> = {
  compression: [
    [10, 8],
    [15, 8],
    [15, 10],
    [22, 15],
  ],
  endFeed: [
    [10, 8],
    [15, 8],
    [15, 10],
    [22, 15],
  ],
  pushFit: [
    [15, 10],
    [22, 10],
    [22, 15],
  ],
}
/** Tees whose branch is smaller than the run. */
const branchTees: readonly (readonly [run: Size, branch: Size])[] = [
  [15, 10],
  [22, 15],
]

function fitting(
  shape: Shape,
  joint: Joint,
  size: { readonly outsideMm: Size; readonly toMm?: Size },
): SoldPart {
  const { outsideMm, toMm } = size
  const { name, other } = shapeNames[shape]
  const sizeWords = toMm === undefined ? `${outsideMm} mm` : `${outsideMm} mm to ${toMm} mm`
  const one = Math.round(pence[joint][shape] * sizeRatio[outsideMm])
  const id = [shape === 'stopEnd' ? 'stop-end' : shape, inWords[joint].replace(' ', '-'), outsideMm]
  const smallWords = toMm === undefined ? [] : [`${outsideMm}x${toMm}`]
  const packs: readonly Pack[] = [
    [1, joint === 'endFeed' ? Math.round(one * 1.5) : one],
    [10, Math.round(one * 8.8)],
  ]
  return {
    item: {
      itemId: [...id, ...(toMm === undefined ? [] : [toMm])].join('-'),
      name: `${name}, ${inWords[joint]}, ${sizeWords}`,
      generic: true,
      alsoCalled: [
        ...other.filter((word) => toMm === undefined || word !== 'equal tee'),
        ...jointNames[joint],
        ...smallWords,
        `${outsideMm}mm`,
      ],
      kind: 'pipeFitting',
      spec: { shape, joint, ...size, ...(joint === 'endFeed' ? { material: 'copper' } : {}) },
    },
    packs,
    sellers: outsideMm === 15 ? everySeller : joint === 'pushFit' ? counterAndFixings : counterAndWarehouse,
  }
}

function insert(outsideMm: 10 | 15 | 22, pence: number): SoldPart {
  return {
    item: {
      itemId: `insert-${outsideMm}`,
      name: `Pipe insert for plastic pipe, ${outsideMm} mm`,
      generic: true,
      alsoCalled: ['pipe liner', 'pipe support', 'stiffener', `${outsideMm}mm`],
      kind: 'pipeFitting',
      spec: { shape: 'insert', joint: 'none', outsideMm, material: 'plastic' },
    },
    packs: [
      [1, pence],
      [10, pence * 8],
      [50, pence * 34],
    ],
    sellers: everySeller,
  }
}

export function pipeFittings(): readonly SoldPart[] {
  const joints = ['compression', 'endFeed', 'pushFit'] as const
  const shapes = ['elbow', 'coupler', 'tee', 'stopEnd'] as const
  return [
    ...joints.flatMap((joint) => [
      ...shapes.flatMap((shape) => sizesOf[joint].map((outsideMm) => fitting(shape, joint, { outsideMm }))),
      ...reductions[joint].map(([outsideMm, toMm]) => fitting('reducer', joint, { outsideMm, toMm })),
      ...branchTees.map(([outsideMm, toMm]) => fitting('tee', joint, { outsideMm, toMm })),
    ]),
    insert(10, 26),
    insert(15, 28),
    insert(22, 38),
  ]
}
