import type { Part } from '../../../src-main/domain/item.ts'
import { capital, counterAndWarehouse, everySeller, toNearest } from '../sold.ts'
import type { SoldPart } from '../sold.ts'

type Valve = Extract<Part, { kind: 'valve' }>['spec']

const roles = ['thermostatic', 'lockshield', 'manual'] as const
const bodies = ['straight', 'angled', 'corner'] as const

/** Flow at 1 bar with the valve open (a thermostatic one 2 K before it shuts), m3/h; from memory, generic. */
const kvM3PerH = {
  thermostatic: { 8: 0.4, 10: 0.5, 15: 0.6, 22: 0.9 },
  lockshield: { 8: 0.7, 10: 1, 15: 1.6, 22: 3 },
  manual: { 8: 0.7, 10: 1, 15: 1.7, 22: 3.2 },
} as const
/** A straight body passes a little less than an angled or a corner one; from memory. */
const straightRatio = 0.85

const pence = { thermostatic: 1450, lockshield: 520, manual: 590 } as const
const bodyRatio = { straight: 1, angled: 1, corner: 1.4 } as const
const finishRatio = { chrome: 1, white: 1.04, black: 1.6, brass: 1.5 } as const
const sizeRatio = { 8: 1.06, 10: 1.04, 15: 1, 22: 2.1 } as const

const otherNames = {
  thermostatic: ['TRV', 'thermostatic radiator valve', 'stat valve'],
  lockshield: ['LSV', 'lock shield', 'radiator valve'],
  manual: ['wheelhead', 'wheel head', 'hand valve', 'radiator valve'],
} as const

type Range = {
  readonly pipeMm: Valve['pipeMm']
  readonly thread: Valve['thread']
  readonly finishes: readonly Valve['finish'][]
  readonly bodies: readonly Valve['body'][]
}

/** Which are made: every finish at 15 mm, white and chrome at 8 and 10, plain ones at 22. */
const ranges: readonly Range[] = [
  { pipeMm: 8, thread: 'G1/2', finishes: ['chrome', 'white'], bodies },
  { pipeMm: 10, thread: 'G1/2', finishes: ['chrome', 'white'], bodies },
  { pipeMm: 15, thread: 'G1/2', finishes: ['chrome', 'white', 'black', 'brass'], bodies },
  { pipeMm: 22, thread: 'G3/4', finishes: ['chrome'], bodies: ['straight', 'angled'] },
]

export function valves(): readonly SoldPart[] {
  return ranges.flatMap((range) =>
    roles.flatMap((role) =>
      range.bodies.flatMap((body) =>
        range.finishes.map((finish) =>
          soldValve({ role, body, pipeMm: range.pipeMm, thread: range.thread, finish }),
        ),
      ),
    ),
  )
}

function soldValve(valve: Omit<Valve, 'kvM3PerH'>): SoldPart {
  const { role, body, pipeMm, thread, finish } = valve
  const kv = toNearest(kvM3PerH[role][pipeMm] * (body === 'straight' ? straightRatio : 1), 0.01)
  const one = toNearest(pence[role] * bodyRatio[body] * finishRatio[finish] * sizeRatio[pipeMm], 5)
  const everyday = pipeMm === 15 && body !== 'corner' && (finish === 'chrome' || finish === 'white')
  return {
    item: {
      itemId: `valve-${role}-${body}-${pipeMm}-${finish}`,
      name: `${capital(role)} valve, ${body}, ${pipeMm} mm x ${thread}, ${finish}`,
      generic: true,
      alsoCalled: [
        ...otherNames[role],
        `${pipeMm}mm`,
        ...(thread === 'G1/2' ? ['1/2 inch', 'half inch'] : ['3/4 inch']),
      ],
      kind: 'valve',
      spec: { ...valve, kvM3PerH: kv },
    },
    packs: everyday
      ? [
          [1, one],
          [10, toNearest(one * 9.3, 5)],
        ]
      : [[1, one]],
    sellers: everyday ? everySeller : counterAndWarehouse,
  }
}
