import type { Part, Thread } from '../../../src-main/domain/item.ts'
import { counterAndFixings, counterAndWarehouse, everySeller } from '../sold.ts'
import type { Pack, SoldPart } from '../sold.ts'

type Vent = Extract<Part, { kind: 'vent' }>['spec']
type Seal = Extract<Part, { kind: 'seal' }>['spec']

const inches: Readonly<Record<Thread, string>> = {
  'G1/8': '1/8 inch',
  'G1/4': '1/4 inch',
  'G3/8': '3/8 inch',
  'G1/2': '1/2 inch',
  'G3/4': '3/4 inch',
}

const threadId = (thread: Thread) => thread.replace('/', '-').toLowerCase()

function tail(thread: Thread, lengthMm: number, pence: number): SoldPart {
  return {
    item: {
      itemId: `tail-${threadId(thread)}-${lengthMm}`,
      name: `Tail extension ${thread}, ${lengthMm} mm longer`,
      generic: true,
      alsoCalled: ['extension', 'radiator tail', 'valve extension', inches[thread], `${lengthMm}mm`],
      kind: 'tail',
      spec: { thread, lengthMm },
    },
    packs: [
      [1, pence],
      [2, Math.round(pence * 1.9)],
    ],
    sellers: counterAndWarehouse,
  }
}

type Closing = Vent & { readonly pence: number }

/** Those on an O-ring are plain nickel or paint over a thin casting, and cheaper than solid ones that seal on the thread. */
const closings: readonly Closing[] = [
  { thread: 'G1/2', sealing: 'oRing', finish: 'white', pence: 95 },
  { thread: 'G1/2', sealing: 'oRing', finish: 'chrome', pence: 105 },
  { thread: 'G1/2', sealing: 'oRing', finish: 'black', pence: 240 },
  { thread: 'G1/2', sealing: 'oRing', finish: 'brass', pence: 230 },
  { thread: 'G1/2', sealing: 'none', finish: 'chrome', pence: 175 },
  { thread: 'G1/2', sealing: 'none', finish: 'brass', pence: 160 },
  { thread: 'G3/4', sealing: 'oRing', finish: 'chrome', pence: 260 },
  { thread: 'G3/8', sealing: 'none', finish: 'chrome', pence: 150 },
  { thread: 'G1/4', sealing: 'none', finish: 'chrome', pence: 130 },
  { thread: 'G1/8', sealing: 'none', finish: 'chrome', pence: 120 },
]

const closingWords = {
  vent: { name: 'Air vent', other: ['bleed valve', 'bleed plug', 'air vent plug', 'manual vent'] },
  blank: { name: 'Blank plug', other: ['blanking plug', 'stop plug', 'radiator plug', 'end plug'] },
} as const

function closing(kind: 'vent' | 'blank', { thread, sealing, finish, pence }: Closing): SoldPart {
  const { name, other } = closingWords[kind]
  const seals = sealing === 'oRing' ? 'O-ring' : 'seals on the thread'
  const one = kind === 'vent' ? pence + 20 : pence
  return {
    item: {
      itemId: `${kind}-${threadId(thread)}-${sealing === 'oRing' ? 'o-ring' : 'taped'}-${finish}`,
      name: `${name} ${thread}, ${seals}, ${finish}`,
      generic: true,
      alsoCalled: [...other, inches[thread]],
      kind,
      spec: { thread, sealing, finish },
    },
    packs: [
      [1, one],
      [10, Math.round(one * 8.6)],
    ],
    sellers: thread === 'G1/2' ? everySeller : ['counter'],
  }
}

type SealRow = {
  readonly itemId: string
  readonly name: string
  readonly spec: Seal
  readonly alsoCalled: readonly string[]
  readonly packs: readonly Pack[]
  readonly note?: string
}

const asTape =
  'Counted in the metres of tape that it stands in for, about 0.9 m to a half-inch joint; from memory.'

/** Tape comes in rolls of 12 mm x 12 m (from memory); the rest is counted in the tape that it stands in for. */
const seals: readonly SealRow[] = [
  {
    itemId: 'seal-tape-12',
    name: 'Thread-seal tape, 12 mm wide, 12 m roll',
    spec: { form: 'tape' },
    alsoCalled: ['PTFE', 'PTFE tape', 'plumber tape', 'thread tape'],
    packs: [
      [12, 55],
      [120, 460],
    ],
  },
  {
    itemId: 'seal-tape-12-dense',
    name: 'Thread-seal tape, 12 mm wide, dense, 5 m roll',
    spec: { form: 'tape' },
    alsoCalled: ['PTFE', 'gas tape', 'thick PTFE'],
    packs: [[5, 135]],
  },
  {
    itemId: 'seal-hemp-100g',
    name: 'Hemp for threads, 100 g hank',
    spec: { form: 'hemp' },
    alsoCalled: ['flax', 'plumber hemp'],
    packs: [[70, 360]],
    note: asTape,
  },
  {
    itemId: 'seal-paste-250g',
    name: 'Jointing paste for hemp and olives, 250 g tub',
    spec: { form: 'paste' },
    alsoCalled: ['jointing compound', 'pipe compound', 'thread paste'],
    packs: [[90, 540]],
    note: `Not for drinking water. ${asTape}`,
  },
  {
    itemId: 'seal-anaerobic-50ml',
    name: 'Anaerobic thread sealant, 50 ml bottle',
    spec: { form: 'anaerobic' },
    alsoCalled: ['liquid PTFE', 'thread sealant', 'pipe sealant'],
    packs: [[45, 890]],
    note: asTape,
  },
]

export function threadsAndSeals(): readonly SoldPart[] {
  const tails = [20, 25, 30, 40, 50, 60].map((lengthMm) => tail('G1/2', lengthMm, 190 + 6 * lengthMm))
  const large = [25, 40].map((lengthMm) => tail('G3/4', lengthMm, 320 + 8 * lengthMm))
  return [
    ...tails,
    ...large,
    ...closings.map((one) => closing('vent', one)),
    ...closings.map((one) => closing('blank', one)),
    ...seals.map(({ packs, ...row }): SoldPart => ({
      item: { ...row, generic: true, kind: 'seal' },
      packs,
      sellers: row.spec.form === 'tape' ? everySeller : counterAndFixings,
    })),
  ]
}
