import { describe, expect, it } from 'vitest'
import sample from '../../../../resources/sample/two-rooms.job.json' with { type: 'json' }
import type { Desk } from '../../../../src-main/desk/desk.ts'
import { buyPlan } from '../../../../src-main/desk/buying/buy-plan.ts'
import { quoteBuild } from '../../../../src-main/desk/quoting/quote-build.ts'
import { workUp } from '../../../../src-main/desk/quoting/work-up.ts'
import { job as jobSchema } from '../../../../src-main/domain/job.ts'
import type { Job, Override } from '../../../../src-main/domain/job.ts'
import { because, given } from '../../../../src-main/domain/derivation.ts'
import type { Part } from '../../../../src-main/domain/item.ts'
import type { Purchase, Quote } from '../../../../src-main/domain/quote.ts'
import { overrideParts } from '../../../../src-main/engine/quote/override-parts.ts'
import type { Shelf } from '../../../../src-main/engine/takeoff/shelf.ts'
import type { PricedTakeOff } from '../../../../src-main/engine/takeoff/take-off.ts'
import { answered, refused } from '../../../answered.ts'
import { defaultFigures } from '../../../figures-for-tests.ts'

const desk: Desk = {
  today: '2026-11-25',
  now: () => '2026-11-25T19:00:00Z',
  store: null,
  dataFolder: null,
  papersFolder: '/nowhere',
  mayChoosePath: false,
}
const job: Job = jobSchema.parse(sample)
const ventKey = 'sundry what="ventKey"'
const lockshield = 'valve body="straight" finish="chrome" pipeMm=15 role="lockshield" thread="G1/2"'
const copper = 'pipe material="copper" outsideMm=15'

const withOverrides = (overrides: readonly Override[], more: Partial<Job> = {}): Job =>
  jobSchema.parse({ ...job, ...more, overrides })
const ask = (overrides: readonly Override[], more: Partial<Job> = {}) =>
  quoteBuild({ job: withOverrides(overrides, more) }, desk)
const built = async (overrides: readonly Override[], more: Partial<Job> = {}): Promise<Quote> =>
  answered(await ask(overrides, more))
const lineOf = (quote: Quote, lineId: string) => quote.lines.find((line) => line.lineId === lineId)
const plain = answered(await quoteBuild({ job }, desk))

describe('a line changed by hand', () => {
  it('comes to the sum by hand: one vent key more, another lockshield, no travel', async () => {
    // Vent keys: 3 x 59p x 1.30 = 230.1, 230 (two were 153). Lockshield: 513 x 1.30 = 666.9, 667 (the other was 636). Travel
    // 720 to 0. Net 667.51 - 1.53 + 2.30 - 6.36 + 6.67 - 7.20 = 661.39; VAT 132.278, 132.28; 793.67.
    const quote = await built([
      { lineKey: ventKey, quantity: 3, reason: 'One for the landlord' },
      { lineKey: lockshield, itemId: 'valve-lockshield-angled-15-white', reason: 'Pipe comes up under it' },
      { lineKey: 'travel', netPence: 0, reason: 'Working next door' },
    ])
    expect(plain.totals.netPence).toBe(66_751)
    expect([lineOf(quote, 'part-24')?.quantity, lineOf(quote, 'part-24')?.netPence]).toEqual([3, 230])
    expect([lineOf(quote, 'part-5')?.netPence, lineOf(quote, 'travel')?.netPence]).toEqual([667, 0])
    expect([quote.totals.netPence, quote.totals.grossPence]).toEqual([66_139, 79_367])
  })

  it('says what it was and why it was changed', async () => {
    const work = answered(
      await workUp(
        withOverrides([
          { lineKey: ventKey, quantity: 3, reason: 'One for the landlord' },
          { lineKey: lockshield, quantity: 2, itemId: 'valve-lockshield-angled-15-white', reason: 'Spare' },
          { lineKey: 'travel', netPence: 0, reason: 'Working next door' },
        ]),
        desk,
      ),
    )
    const why = (key: string) => work.takeOff.lines.find((line) => line.lineKey === key)?.why
    expect(why(ventKey)).toMatchObject({
      says: 'Changed by hand: 3 instead of 2. Reason: One for the landlord',
      value: 3,
      source: 'changed by hand',
    })
    expect(why(ventKey)?.from[0]).toMatchObject({ says: 'It was Vent key, zinc', value: 2 })
    expect(why(lockshield)?.says).toBe(
      'Changed by hand: 2 instead of 1, Lockshield valve, angled, 15 mm x G1/2, white instead of Lockshield valve, straight, 15 mm x G1/2, chrome. Reason: Spare',
    )
    const travel = lineOf(work.quote, 'travel')?.why
    expect(travel?.says).toBe('Price set by hand. Reason: Working next door')
    expect(travel?.from[0]).toMatchObject({ says: 'It was', value: 720 })
    const keys = work.pickList.suppliers.flatMap(({ lines }) => lines).filter((line) => line.itemId === 'vent-key-loose') // prettier-ignore
    expect(keys.map((line) => line.packs)).toEqual([3])
  })

  it('sets the price of a part and of labour, and leaves its cost and quantity', async () => {
    const quote = await built([
      { lineKey: ventKey, netPence: 500, reason: 'Gold ones' },
      { lineKey: 'labour-1', netPence: 10_000, reason: 'Agreed on site' },
    ])
    expect([lineOf(quote, 'part-24')?.netPence, lineOf(quote, 'part-24')?.quantity]).toEqual([500, 2])
    expect(lineOf(quote, 'labour-1')?.netPence).toBe(10_000)
    expect(quote.internal.costPence).toBe(plain.internal.costPence)
    // 667.51 - 1.53 + 5.00 - 137.51 + 100.00
    expect(quote.totals.netPence).toBe(63_347)
  })

  it('reckons the allowance for the unforeseen on the prices as they were set', async () => {
    const figures = { 'money.contingencyBasisPoints': 1000 }
    const quote = await built([{ lineKey: 'labour-1', netPence: 10_000, reason: 'Agreed' }], { figures })
    const base = quote.lines.filter(({ section }) => ['emitter', 'parts', 'labour'].includes(section))
    const sum = base.reduce((so, line) => so + line.netPence, 0)
    expect(lineOf(quote, 'contingency')?.netPence).toBe(Math.floor((sum * 10 + 50) / 100))
  })

  it('buys pipe of another quantity by the metre, and cuts no list from it', async () => {
    const work = answered(await workUp(withOverrides([{ lineKey: copper, quantity: 4.5, reason: 'Long way round' }]), desk)) // prettier-ignore
    const purchase = work.quote.internal.purchases.find((one) => one.itemId === 'pipe-copper-15')
    const bought = purchase?.packs.reduce((sum, pack) => sum + pack.count * pack.holds, 0) ?? 0
    expect(purchase?.need).toBe(4.5)
    expect(bought).toBeGreaterThanOrEqual(4.5)
    expect(purchase?.pieces).toBeUndefined()
    expect(work.pickList.pipeCuts).toEqual([])
  })

  it('is bought as it was changed', async () => {
    const plan = answered(await buyPlan({ job: withOverrides([{ lineKey: ventKey, quantity: 7, reason: 'Spares' }]) }, desk)) // prettier-ignore
    const [line] = plan.orders.flatMap(({ lines }) => lines).filter(({ lineId }) => lineId === 'part-24')
    expect(line).toMatchObject({ itemId: 'vent-key-loose', leftover: 3 })
    expect(line?.packs).toMatchObject([{ holds: 10, count: 1 }])
  })

  it('changes nothing else', async () => {
    const quote = await built([{ lineKey: ventKey, quantity: 3, reason: 'One more' }])
    const others = (one: Quote) => one.lines.filter((line) => line.lineId !== 'part-24')
    expect(others(quote)).toEqual(others(plain))
  })
})

describe('an override that cannot be', () => {
  const reason = 'Because'

  it('needs a reason', () => {
    expect(jobSchema.safeParse({ ...job, overrides: [{ lineKey: ventKey, quantity: 3 }] }).success).toBe(
      false,
    )
    expect(jobSchema.safeParse({ ...job, overrides: [{ lineKey: ventKey, quantity: 3, reason: ' ' }] }).success).toBe(false) // prettier-ignore
  })

  it.each([
    [
      'of a line that is not there',
      { lineKey: 'roof', quantity: 2, reason },
      'job.overrides[0].lineKey',
      'The parts list has no line roof to change; takeoff.job names its lines.',
    ],
    [
      'of a price that is not there',
      { lineKey: 'roof', netPence: 2, reason },
      'job.overrides[0].lineKey',
      'The quote has no priced line roof; name a part by the key of its line in takeoff.job, all else by its id in quote.build.',
    ],
    [
      'of nothing',
      { lineKey: ventKey, reason },
      'job.overrides[0]',
      `The override of ${ventKey} changes nothing; give it a quantity, an item or a price.`,
    ],
    [
      'with an item that is not there',
      { lineKey: ventKey, itemId: 'no-such-thing', reason },
      'job.overrides[0].itemId',
      'The catalogue has no part no-such-thing in use; catalogue.search finds those that it has.',
    ],
    [
      'with an item counted otherwise',
      { lineKey: ventKey, itemId: 'pipe-copper-15', reason },
      'job.overrides[0].itemId',
      'Copper pipe, 15 mm is counted in m and this line in each; choose one counted alike.',
    ],
    [
      'of an emitter',
      { lineKey: 'emitter itemId="rail-curved-chrome-600x1500"', itemId: 'vent-key-loose', reason },
      'job.overrides[0].itemId',
      'An emitter is changed in its swap, for the room must be reckoned again; not on its line.',
    ],
  ])('%s is refused', async (_, override, path, message) => {
    expect(refused(await ask([override]))).toMatchObject({ path, message })
  })

  it('twice on one line is refused', async () => {
    const twice = [{ lineKey: ventKey, quantity: 3, reason }, { lineKey: ventKey, netPence: 3, reason }] // prettier-ignore
    expect(refused(await ask(twice))).toMatchObject({
      path: 'job.overrides[1].lineKey',
      message: `${ventKey} is overridden twice; put both changes in one override.`,
    })
  })
})

describe('a gap', () => {
  const why = given('Two vents', 2)
  const gap = {
    lineKey: 'vent',
    name: 'vent (G1/2)',
    itemKind: 'vent' as const,
    spec: { thread: 'G1/2' },
    quantity: 2,
    unit: 'each' as const,
    generic: false,
    gap: 'The catalogue has no vent (G1/2).',
    shared: false,
    swapIds: [],
    why,
  }
  const other = { itemId: 'v38', kind: 'vent', name: 'Vent G3/8', generic: true } as unknown as Part
  const price = {
    itemId: 'v38',
    supplierId: 's',
    code: 'V',
    packHolds: 1,
    packPence: 150,
    validFrom: '2026-01-01',
  }
  const shelf: Shelf = {
    emitters: new Map(),
    parts: new Map([['vent', [other]]]),
    prices: new Map([['v38', [price]]]),
    suppliers: new Map(),
  }
  const none = because('Nothing', 0)
  const parts: PricedTakeOff = {
    takeOff: { lines: [gap], fromBox: [], cautions: [], tools: [], why: none },
    purchases: [],
    boxUses: [],
  }
  const asked = (override: Omit<Override, 'lineKey'>) =>
    answered(
      overrideParts(parts, [{ lineKey: 'vent', ...override }], {
        shelf,
        figures: defaultFigures('2026-11-25'),
      }),
    )

  it('stays one when only its quantity is changed', () => {
    const { takeOff, purchases } = asked({ quantity: 5, reason: 'Spares' })
    expect(takeOff.lines[0]).toMatchObject({ gap: gap.gap, quantity: 5 })
    expect(takeOff.lines[0]?.why.says).toBe('Changed by hand: 5 instead of 2. Reason: Spares')
    expect(purchases).toEqual([])
  })

  it('is closed by an item put in by hand', () => {
    const { takeOff, purchases } = asked({ itemId: 'v38', reason: 'With a reducer from the van' })
    expect(takeOff.lines[0]).toMatchObject({ name: 'Vent G3/8', itemId: 'v38', generic: true, quantity: 2 })
    expect(takeOff.lines[0]).not.toHaveProperty('gap')
    expect(purchases).toMatchObject([{ lineId: 'part-1', itemId: 'v38', costPence: 300 }])
  })

  it('of a thing bought elsewhere is changed where it was filled', () => {
    const { gap: _, ...oneOff } = gap
    const purchase = { lineId: 'part-1', itemId: 'part-1', oneOff: true, costPence: 1 } as unknown as Purchase
    const answer = overrideParts(
      {
        ...parts,
        takeOff: { ...parts.takeOff, lines: [oneOff] },
        purchases: [purchase],
      },
      [{ lineKey: 'vent', quantity: 3, reason: 'Spares' }],
      { shelf, figures: defaultFigures('2026-11-25') },
    )
    expect(refused(answer)).toMatchObject({
      path: 'job.overrides[0].lineKey',
      message: 'vent (G1/2) is bought elsewhere at a price by hand; change what it was filled with.',
    })
  })
})
