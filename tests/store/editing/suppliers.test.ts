import { describe, expect, it } from 'vitest'
import { answer } from '../../../src-main/desk/router.ts'
import { seedCatalogue } from '../../../src-main/store/catalogue.ts'
import { readPrices } from '../../../src-main/store/prices.ts'
import { reading, writing } from '../../../src-main/store/store.ts'
import { refused } from '../../answered.ts'
import { asked } from './ask-for-tests.ts'
import { smallCatalogue } from '../catalogue-for-tests.ts'
import { deskWith, filledStore } from '../store-for-tests.ts'

const openDesk = async () => deskWith(await filledStore())
const newcomer = { supplierId: 'moor', name: 'Moorside Test Counter', carriagePence: 700 }
const pipeGroup = { supplierId: 'north', group: 'PIPE', name: 'Pipe', validFrom: '2026-03-01' }

describe('supplier.list', () => {
  it('tells each supplier’s rows, its newest day, its groups, and whether it is the firm’s own', async () => {
    const desk = await openDesk()
    await asked(desk, 'supplier.save', { supplier: newcomer })
    await asked(desk, 'price.set', {
      itemId: 'test-pipe-15',
      supplierId: 'north',
      packHolds: 3,
      packPence: 1500,
      validFrom: '2026-04-01',
    })
    await asked(desk, 'discountGroup.save', { group: { ...pipeGroup, basisPoints: 2500 } })
    const { suppliers } = await asked(desk, 'supplier.list', {})
    expect(
      suppliers.map(({ supplier, rows, newest, groups, own }) => [
        supplier.supplierId,
        rows,
        newest,
        groups.length,
        own,
      ]),
    ).toEqual([
      ['moor', 0, null, 0, true],
      ['north', 4, '2026-04-01', 1, false],
      ['south', 2, '2026-01-01', 0, false],
    ])
    expect(suppliers[0]?.supplier).toEqual(newcomer)
  })

  it('does not count rows that are gone from the list', async () => {
    const desk = await openDesk()
    if (desk.store === null) throw new Error('There is a store')
    await writing(desk.store, (tx) =>
      tx.updateTable('supplier_row').set({ gone_from: '2026-03-01' }).where('code', '=', 'TV15A').execute(),
    )
    const { suppliers } = await asked(desk, 'supplier.list', {})
    expect(suppliers.find(({ supplier }) => supplier.supplierId === 'south')?.rows).toBe(1)
  })
})

describe('supplier.save', () => {
  it('changes a shipped supplier for good', async () => {
    const desk = await openDesk()
    const changed = { ...newcomer, supplierId: 'north', name: 'Northfield, by the bridge' }
    await asked(desk, 'supplier.save', { supplier: changed })
    if (desk.store === null) throw new Error('There is a store')
    await writing(desk.store, (tx) => seedCatalogue(tx, smallCatalogue, 'test-2'))
    const { suppliers } = await asked(desk, 'supplier.list', {})
    const north = suppliers.find(({ supplier }) => supplier.supplierId === 'north')
    expect(north).toMatchObject({ supplier: changed, own: true })
  })

  it('refuses a name that another has, in any letters, and lets one keep its own', async () => {
    const desk = await openDesk()
    const clash = { ...newcomer, name: 'northfield TEST supplies' }
    expect(refused(await answer('supplier.save', { supplier: clash }, desk))).toEqual({
      code: 'conflict',
      message:
        'There is a supplier called Northfield Test Supplies already (north): give this one another name, or change that one.',
      path: 'supplier.name',
    })
    await asked(desk, 'supplier.save', { supplier: { ...clash, supplierId: 'north' } })
  })

  it('says what is wrong with a field', async () => {
    const desk = await openDesk()
    const wrong = { ...newcomer, carriagePence: -1 }
    expect(refused(await answer('supplier.save', { supplier: wrong }, desk))).toEqual({
      code: 'invalid',
      message: 'Carriage (pence) must be at least 0; it was -1.',
      path: 'supplier.carriagePence',
    })
  })
})

describe('discountGroup.save', () => {
  it('keeps each day’s percentage, and what was asked before is net of that day’s', async () => {
    const desk = await openDesk()
    if (desk.store === null) throw new Error('There is a store')
    const { store } = desk
    await writing(store, (tx) =>
      tx.updateTable('supplier_row').set({ group_key: 'PIPE' }).where('name', 'like', 'Copper%').execute(),
    )
    await asked(desk, 'discountGroup.save', { group: { ...pipeGroup, basisPoints: 1000 } })
    const { groups } = await asked(desk, 'discountGroup.save', {
      group: { ...pipeGroup, basisPoints: 2500, validFrom: '2026-04-01' },
    })
    expect(groups.map(({ validFrom, basisPoints }) => [validFrom, basisPoints])).toEqual([
      ['2026-03-01', 1000],
      ['2026-04-01', 2500],
    ])
    const pipeOn = async (day: string) =>
      (await reading(store, (tx) => readPrices(tx, day, ['test-pipe-15'])))[0]?.packPence
    // 14.50, a tenth off it, and a quarter off it: 10.875 goes up to 10.88.
    expect([await pipeOn('2026-02-28'), await pipeOn('2026-03-31'), await pipeOn('2026-04-01')]).toEqual([
      1450, 1305, 1088,
    ])
  })

  it('replaces the percentage of the same day', async () => {
    const desk = await openDesk()
    await asked(desk, 'discountGroup.save', { group: { ...pipeGroup, basisPoints: 1000 } })
    const { groups } = await asked(desk, 'discountGroup.save', { group: { ...pipeGroup, basisPoints: 1250 } })
    expect(groups).toEqual([{ ...pipeGroup, basisPoints: 1250 }])
  })

  it('refuses a supplier that is not there, and more than the whole', async () => {
    const desk = await openDesk()
    const group = { ...pipeGroup, basisPoints: 1000 }
    expect(
      refused(await answer('discountGroup.save', { group: { ...group, supplierId: 'nobody' } }, desk)),
    ).toEqual({
      code: 'not-found',
      message: 'There is no supplier nobody: name one that supplier.list has.',
      path: 'group.supplierId',
    })
    expect(
      refused(await answer('discountGroup.save', { group: { ...group, basisPoints: 10_001 } }, desk)).path,
    ).toBe('group.basisPoints')
  })

  it('takes the whole off at 100 %', async () => {
    const desk = await openDesk()
    const whole = { ...pipeGroup, basisPoints: 10_000 }
    expect((await asked(desk, 'discountGroup.save', { group: whole })).groups).toEqual([whole])
  })
})
