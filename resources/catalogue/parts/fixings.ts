import { counterAndFixings } from '../sold.ts'
import type { SoldPart } from '../sold.ts'

/** Screws that a plug of each bit takes, mm: trade practice, from memory. */
const screwsOfBit: Readonly<Record<number, readonly [least: number, most: number]>> = {
  5: [3, 4],
  5.5: [3, 4],
  6: [3.5, 5],
  7: [4.5, 6],
  8: [4.5, 6],
  10: [6, 8],
  12: [8, 10],
  14: [10, 12],
}

const plugLengths: Readonly<Record<number, readonly number[]>> = {
  5: [25],
  5.5: [25, 30],
  6: [30, 35, 40, 50],
  7: [30, 35, 40, 50],
  8: [40, 50, 60, 80, 100],
  10: [50, 60, 80, 100],
  12: [60, 80],
  14: [70],
}

const screwLengths: Readonly<Record<number, readonly number[]>> = {
  3.5: [25, 30, 40],
  4: [25, 30, 40, 50, 60],
  4.5: [40, 50, 60, 70],
  5: [30, 40, 50, 60, 70, 80, 100],
  6: [40, 50, 60, 70, 80, 90, 100, 120],
  8: [60, 70, 80, 100, 120],
  10: [80, 100],
}

/** Old gauge numbers by in = 0.060 + 0.013 x number, nearest (fastener article). */
const gauge: Readonly<Record<number, string>> = { 3.5: 'No. 6', 4: 'No. 8', 5: 'No. 10', 6: 'No. 14' }

/** From this diameter screws have a hexagon head. */
const coachFromMm = 8
/** From this length a plug goes through what stands before the masonry. */
const throughFromMm = 80

/** Sizes of each diameter; a bit of 5.5 mm comes before one of 6. */
function sizes(of: Readonly<Record<number, readonly number[]>>): readonly (readonly [number, number])[] {
  return Object.entries(of)
    .map(([across, lengths]) => [Number(across), lengths] as const)
    .toSorted(([a], [b]) => a - b)
    .flatMap(([across, lengths]) => lengths.map((length) => [across, length] as const))
}

function plug([bitMm, lengthMm]: readonly [number, number]): SoldPart {
  const [screwLeastMm, screwMostMm] = screwsOfBit[bitMm] ?? [0, 0]
  const hundred = Math.round(60 + 0.12 * bitMm ** 2 * lengthMm)
  const through = lengthMm >= throughFromMm ? ['frame plug', 'long plug'] : []
  return {
    item: {
      itemId: `plug-${bitMm}x${lengthMm}`,
      name: `Wall plug ${bitMm} x ${lengthMm} mm, for ${screwLeastMm} to ${screwMostMm} mm screws`,
      generic: true,
      alsoCalled: ['masonry plug', 'plastic plug', ...through, `${bitMm}mm plug`, `${bitMm}x${lengthMm}`],
      kind: 'plug',
      spec: { bitMm, lengthMm, screwLeastMm, screwMostMm },
    },
    packs: [
      [10, Math.round(hundred * 0.18)],
      [100, hundred],
    ],
    sellers: counterAndFixings,
  }
}

function screw([diameterMm, lengthMm]: readonly [number, number]): SoldPart {
  const coach = diameterMm >= coachFromMm
  const hundred = Math.round(80 + 0.35 * diameterMm ** 2 * lengthMm)
  const number = gauge[diameterMm]
  const other = coach ? ['hex screw', 'lag screw'] : ['wood screw', 'csk screw']
  return {
    item: {
      itemId: `screw-${diameterMm}x${lengthMm}`,
      name: coach
        ? `Coach screw ${diameterMm} x ${lengthMm} mm, hexagon head`
        : `Screw ${diameterMm} x ${lengthMm} mm, countersunk`,
      generic: true,
      alsoCalled: [...other, ...(number === undefined ? [] : [number]), `${diameterMm}x${lengthMm}`],
      kind: 'screw',
      spec: { diameterMm, lengthMm },
    },
    packs: coach
      ? [
          [10, Math.round(hundred * 0.15)],
          [50, Math.round(hundred * 0.6)],
        ]
      : [
          [10, Math.round(hundred * 0.17)],
          [100, hundred],
        ],
    sellers: counterAndFixings,
  }
}

type AnchorRow = {
  readonly id: string
  readonly name: string
  readonly bitMm: number
  readonly boards: readonly [number, number]
  readonly shearN: number
  readonly pullN: number
  readonly pence: number
}

/** Loads from memory, generic and cautious; the maker's own figures come first. */
const anchors: readonly AnchorRow[] = [
  {
    id: 'metal-8',
    name: 'Metal board anchor, bolt with it',
    bitMm: 8,
    boards: [9, 13],
    shearN: 70,
    pullN: 45,
    pence: 42,
  },
  {
    id: 'metal-10-thin',
    name: 'Metal board anchor, bolt with it',
    bitMm: 10,
    boards: [9, 13],
    shearN: 90,
    pullN: 60,
    pence: 49,
  },
  {
    id: 'metal-10-thick',
    name: 'Metal board anchor, bolt with it',
    bitMm: 10,
    boards: [16, 25],
    shearN: 100,
    pullN: 70,
    pence: 58,
  },
  {
    id: 'metal-13-thin',
    name: 'Heavy metal board anchor, bolt with it',
    bitMm: 13,
    boards: [9, 16],
    shearN: 150,
    pullN: 100,
    pence: 95,
  },
  {
    id: 'metal-13-thick',
    name: 'Heavy metal board anchor, bolt with it',
    bitMm: 13,
    boards: [18, 32],
    shearN: 160,
    pullN: 110,
    pence: 112,
  },
  {
    id: 'toggle-16',
    name: 'Spring toggle with bolt',
    bitMm: 16,
    boards: [9, 40],
    shearN: 150,
    pullN: 120,
    pence: 88,
  },
  {
    id: 'channel-13',
    name: 'Metal channel toggle with bolt',
    bitMm: 13,
    boards: [9, 60],
    shearN: 200,
    pullN: 150,
    pence: 210,
  },
]

function anchor({ id, name, bitMm, boards, shearN, pullN, pence }: AnchorRow): SoldPart {
  const [boardLeastMm, boardMostMm] = boards
  return {
    item: {
      itemId: `anchor-${id}`,
      name: `${name}, ${bitMm} mm hole, board ${boardLeastMm} to ${boardMostMm} mm`,
      generic: true,
      alsoCalled: ['plasterboard fixing', 'cavity fixing', 'hollow wall anchor', `${bitMm}mm`],
      note: 'Allowed loads are generic and cautious, from memory; the maker of the fixing has the last word.',
      kind: 'anchor',
      spec: { bitMm, boardLeastMm, boardMostMm, allowedShearN: shearN, allowedPullN: pullN },
    },
    packs: [
      [1, pence],
      [10, pence * 8],
    ],
    sellers: counterAndFixings,
  }
}

/** Plywood strips by thickness and height, mm, with the price of a metre; from memory. */
const boards: readonly (readonly [thicknessMm: number, heightMm: number, pencePerM: number])[] = [
  [12, 100, 240],
  [18, 100, 330],
  [18, 150, 470],
  [25, 100, 440],
  [25, 150, 640],
]

function board([thicknessMm, heightMm, pencePerM]: (typeof boards)[number]): SoldPart {
  return {
    item: {
      itemId: `board-${thicknessMm}x${heightMm}`,
      name: `Backing board, plywood strip, ${thicknessMm} mm thick, ${heightMm} mm high`,
      generic: true,
      alsoCalled: ['pattress board', 'ply strip', 'noggin board', `${thicknessMm}mm ply`],
      kind: 'board',
      spec: { thicknessMm, heightMm },
    },
    packs: [
      [1.2, Math.round(pencePerM * 1.35)],
      [2.4, Math.round(pencePerM * 2.4)],
    ],
    sellers: ['fixings'],
  }
}

export function fixings(): readonly SoldPart[] {
  return [
    ...sizes(plugLengths).map(plug),
    ...sizes(screwLengths).map(screw),
    ...anchors.map(anchor),
    ...boards.map(board),
  ]
}
