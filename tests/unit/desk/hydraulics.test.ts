import { describe, expect, it } from 'vitest'
import { requests } from '../../../src-main/contract/requests.ts'
import type { AnswerOf, InputOf, RequestName } from '../../../src-main/contract/requests.ts'
import type { Outcome } from '../../../src-main/domain/outcome.ts'
import type { Desk } from '../../../src-main/desk/desk.ts'
import { catalogueOf } from '../../../src-main/desk/catalogue-of.ts'
import { answer } from '../../../src-main/desk/router.ts'
import type { SupplierPrice } from '../../../src-main/domain/price.ts'
import { answered, leavesOf, refused } from '../../answered.ts'

const desk: Desk = {
  today: '2026-11-25',
  now: () => '2026-11-25T19:00:00Z',
  store: null,
  dataFolder: null,
  papersFolder: '/nowhere',
  mayChoosePath: false,
}

async function asked<N extends RequestName>(name: N, input: InputOf<N>): Promise<AnswerOf<N>> {
  const value = answered((await answer(name, input, desk)) as Outcome<AnswerOf<N>>)
  expect(requests[name].output.safeParse(value).error).toBeUndefined()
  return value
}

describe('the requests about a house’s water', () => {
  it('valve.loss and valve.kv undo each other', async () => {
    const { pa } = await asked('valve.loss', { kvM3PerH: 0.6, litresPerMinute: 1.5, meanC: 60 })
    const { kvM3PerH } = await asked('valve.kv', { litresPerMinute: 1.5, pa, meanC: 60 })
    expect(kvM3PerH).toBeCloseTo(0.6, 9)
  })

  it('house.balance takes the limits of speed from the settings', async () => {
    const pipe = { insideMm: 8.8, lengthM: 10, roughnessMm: 0.0015 }
    const balance = await asked('house.balance', {
      legs: [{ id: 'tail', from: null, pipe }],
      circuits: [{ id: 'rail', legId: 'tail', watts: 4500, lockshield: {} }],
      flowC: 65,
      returnC: 55,
    })
    // 4500 W at 60 degrees: 6.565 L/min through 60.82 mm2: 1.80 m/s, past the 1.5 m/s of small bore.
    expect(balance.warnings.map(({ kind }) => kind)).toContain('noise')
    expect(balance.warnings[0]?.message).toContain('above 1.5 m/s')
  })

  it('system.content allows 11 L/kW, as the firm’s figure stands, and takes a survey before it', async () => {
    const allowed = await asked('system.content', { boilerKW: 18 })
    expect(allowed).toMatchObject({ litres: 198, surveyed: false })
    expect(leavesOf(allowed.why)).toEqual([18, 11])
    const iron = await asked('system.content', { boilerKW: 18, litresPerKW: 14 })
    expect(iron.litres).toBe(252)
    const surveyed = await asked('system.content', { surveyedLitres: 90, boilerKW: 18 })
    expect(surveyed).toMatchObject({ litres: 90, surveyed: true })
  })

  it('system.content needs litres or kW', async () => {
    expect(refused(await answer('system.content', {}, desk)).path).toBe('boilerKW')
  })

  it('system.content adds emitters of the catalogue, pipes and boiler up, and allows for the rest', async () => {
    const sample = { itemId: 'panel-double-finned-600x1000', count: 2 }
    const item = (await catalogueOf(desk)).items.find(({ itemId }) => itemId === sample.itemId)
    const water = item?.kind === 'emitter' ? item.waterLitres : 0
    expect(water).toBeGreaterThan(0)
    const emitters = [sample, { name: 'Old towel rail', waterLitres: 4 }]
    const pipes = [{ material: 'copper' as const, outsideMm: 15, lengthM: 100 }]
    const all = await asked('system.content', { emitters, pipes, boilerLitres: 3 })
    // 15 mm tube of EN 1057 with a wall of 0.7 mm holds 0.1453 L/m.
    expect(all.litres).toBeCloseTo(2 * water + 4 + 14.53 + 3, 2)
    expect(all.surveyed).toBe(true)
    const partly = await asked('system.content', { emitters, pipes, boilerKW: 18 })
    expect(partly).toMatchObject({ litres: 198, surveyed: false })
    expect(partly.parts?.map(({ what }) => what)).toEqual(['emitters', 'pipes', 'allowance'])
    expect(leavesOf(partly.why)).toContain(11)
    const iron = await asked('system.content', { emitters, pipes, boilerKW: 18, litresPerKW: 14 })
    expect(iron.litres).toBe(252)
  })

  it('system.content refuses the whole beside its parts, and an emitter that is not there', async () => {
    expect(refused(await answer('system.content', { surveyedLitres: 90, boilerLitres: 3 }, desk))).toEqual({
      code: 'conflict',
      message: 'Give the water of the whole system, or its parts, not both.',
      path: 'surveyedLitres',
    })
    const emitters = [{ name: 'Rail', waterLitres: 4 }, { itemId: 'no-such-thing' }]
    expect(refused(await answer('system.content', { emitters, boilerKW: 18 }, desk))).toMatchObject({
      code: 'not-found',
      message: 'The catalogue has no emitter no-such-thing: name one that it has, or give its water.',
      path: 'emitters[1].itemId',
    })
    const part = [{ itemId: 'inhibitor-100' }]
    expect(refused(await answer('system.content', { emitters: part, boilerKW: 18 }, desk)).path).toBe(
      'emitters[0].itemId',
    )
  })

  it('water.dose buys whole containers of a product as a quote would: the cheapest, exactly', async () => {
    const dosed = { product: 'inhibitor', contentLitres: 160, itemId: 'inhibitor-100' } as const
    const dose = await asked('water.dose', dosed)
    expect(dose.litres).toBeCloseTo(1.6, 12)
    const { prices } = await catalogueOf(desk)
    // Every way to cover 1.6 L from one supplier by hand, price breaks counted: up to four of each container.
    const offers = prices.filter(({ itemId }) => itemId === 'inhibitor-100')
    const bySupplier = Map.groupBy(offers, ({ supplierId }) => supplierId)
    expect(bySupplier.size).toBeGreaterThan(1)
    const each = (price: SupplierPrice, count: number) =>
      (price.breaks ?? []).reduce((so, one) => (count >= one.fromPacks ? one.packPence : so), price.packPence)
    const totals = [...bySupplier.values()].flatMap((sold) =>
      sold
        .reduce<readonly { readonly litres: number; readonly pence: number }[]>(
          (ways, price) =>
            ways.flatMap((way) =>
              [0, 1, 2, 3, 4].map((count) => ({
                litres: way.litres + count * price.packHolds,
                pence: way.pence + count * each(price, count),
              })),
            ),
          [{ litres: 0, pence: 0 }],
        )
        .filter(({ litres }) => litres >= 1.6 - 1e-9)
        .map(({ pence }) => pence),
    )
    expect(dose.containers?.pence).toBe(Math.min(...totals))
    expect(dose.supplier?.name).not.toBe('')
    expect(dose.containers?.leftover).toBeGreaterThanOrEqual(0)
    expect(leavesOf(dose.why)).toEqual(expect.arrayContaining([160, 1, 100, dose.supplier?.name]))
  })

  it('water.dose takes what a litre treats from the product, unless the firm says otherwise', async () => {
    const strong = { product: 'inhibitor', contentLitres: 100, itemId: 'inhibitor-200' } as const
    expect((await asked('water.dose', strong)).litres).toBe(0.5)
    const own = await asked('water.dose', { ...strong, treatedLitresPerLitre: 50, drainedShare: 0.5 })
    expect(own.litres).toBe(1)
    const none = await asked('water.dose', { ...strong, contentLitres: 0 })
    expect(none.containers).toEqual({ picks: [], pence: 0, leftover: 0 })
  })

  it('water.dose refuses a product beside containers, one that is not there, and one of another kind', async () => {
    const dosed = { product: 'cleaner', contentLitres: 100, itemId: 'cleaner-100' } as const
    const packs = [{ id: 'litre', holds: 1, pence: 1500 }]
    expect(refused(await answer('water.dose', { ...dosed, packs }, desk))).toEqual({
      code: 'conflict',
      message: 'Give the product by itemId, or its containers as packs, not both.',
      path: 'packs',
    })
    expect(refused(await answer('water.dose', { ...dosed, itemId: 'no-such' }, desk))).toMatchObject({
      code: 'not-found',
      message: 'There is no item no-such in the catalogue.',
      path: 'itemId',
    })
    expect(refused(await answer('water.dose', { ...dosed, itemId: 'inhibitor-100' }, desk))).toMatchObject({
      code: 'invalid',
      message: 'Inhibitor, 1 litre treats 100 litres is no cleaner; name one of the catalogue.',
      path: 'itemId',
    })
  })

  it('water.dose takes one litre for a hundred by default, and whole containers', async () => {
    const packs = [{ id: 'litre', holds: 1, pence: 1500 }]
    const dose = await asked('water.dose', { product: 'inhibitor', contentLitres: 112, packs })
    expect(dose.litres).toBeCloseTo(1.12, 12)
    expect(dose.containers).toMatchObject({ picks: [{ id: 'litre', count: 2 }], pence: 3000 })
    const strong = {
      product: 'cleaner',
      contentLitres: 112,
      drainedShare: 0.5,
      treatedLitresPerLitre: 200,
    } as const
    expect(await asked('water.dose', strong)).toMatchObject({ litres: 0.28, containers: null })
  })

  it('say in plain words what is wrong with an input', async () => {
    expect(refused(await answer('valve.kv', { litresPerMinute: 1, meanC: 60 }, desk))).toMatchObject({
      path: 'pa',
      message: 'Pressure (Pa) is missing; give a number.',
    })
  })
})
