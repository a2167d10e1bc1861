import { describe, expect, it } from 'vitest'
import type { Item } from '../../../src-main/domain/item.ts'
import type { Desk } from '../../../src-main/desk/desk.ts'
import { idFromName } from '../../../src-main/desk/catalogue/item-copy.ts'
import { seedCatalogue } from '../../../src-main/store/catalogue.ts'
import { readItem } from '../../../src-main/store/items.ts'
import { saveJob } from '../../../src-main/store/jobs.ts'
import { reading, writing } from '../../../src-main/store/store.ts'
import { refused } from '../../answered.ts'
import { asked, outcome } from './ask-for-tests.ts'
import { bedroomJob } from '../../job-for-tests.ts'
import { smallCatalogue } from '../catalogue-for-tests.ts'
import { deskWith, filledStore, now } from '../store-for-tests.ts'

const openDesk = async () => deskWith(await filledStore())
const named = (itemId: string): Item => {
  const item = smallCatalogue.items.find((one) => one.itemId === itemId)
  if (item === undefined) throw new Error(`The small catalogue has no ${itemId}`)
  return item
}
const valve = named('test-trv-angled-15') as Item & { readonly kind: 'valve' }
const panel = named('test-panel-600x1000') as Item & { readonly kind: 'emitter' }
const searched = async (desk: Desk, text: string, more: object = {}) =>
  (await asked(desk, 'catalogue.search', { text, ...more })).items.map(({ item }) => item.itemId)

describe('item.save', () => {
  it('keeps a new item, which the search finds at once by its name and by the trade’s words for it', async () => {
    const desk = await openDesk()
    const item: Item = { ...valve, itemId: 'own-trv', name: 'Our usual stat head and body', alsoCalled: [] }
    expect(await asked(desk, 'item.save', { item })).toEqual({
      item: { ...item, generic: false },
      isNew: true,
    })
    expect(await searched(desk, 'usual head')).toEqual(['own-trv'])
    expect(await searched(desk, 'TRV')).toContain('own-trv')
    expect(await searched(desk, 'thermostatic valve half inch')).toContain('own-trv')
  })

  it('takes the generic mark off when a figure changes, and leaves it on for a name, a note or a word', async () => {
    const desk = await openDesk()
    const renamed = {
      ...panel,
      name: 'Panel, the one we like',
      note: 'By the van door',
      alsoCalled: ['big one'],
    }
    expect((await asked(desk, 'item.save', { item: renamed })).item.generic).toBe(true)
    const changed = await asked(desk, 'item.save', { item: { ...renamed, ratedW: panel.ratedW + 1 } })
    expect(changed).toMatchObject({ isNew: false, item: { generic: false } })
    const back = await asked(desk, 'item.save', { item: { ...renamed, generic: true } })
    expect(back.item.generic).toBe(false)
  })

  it('lets the firm say that a generic figure is its own', async () => {
    const desk = await openDesk()
    const { item } = await asked(desk, 'item.save', { item: { ...panel, generic: false } })
    expect(item.generic).toBe(false)
  })

  it('finds an item by its supplier’s code after it was changed', async () => {
    const desk = await openDesk()
    await asked(desk, 'item.save', { item: { ...panel, name: 'Another name' } })
    expect(await searched(desk, '00126')).toEqual([panel.itemId])
    expect(await searched(desk, 'another name')).toEqual([panel.itemId])
  })

  it('is not undone by a later edition of the shipped catalogue', async () => {
    const desk = await openDesk()
    const item = { ...panel, ratedW: 1234 }
    await asked(desk, 'item.save', { item })
    if (desk.store === null) throw new Error('There is a store')
    await writing(desk.store, (tx) => seedCatalogue(tx, smallCatalogue, 'test-2'))
    expect(await reading(desk.store, (tx) => readItem(tx, panel.itemId))).toMatchObject({
      ratedW: 1234,
      generic: false,
    })
  })

  it('says what is wrong with a field, and where', async () => {
    const desk = await openDesk()
    const wrong = { ...valve, spec: { ...valve.spec, pipeMm: 16 } } as unknown as Item
    const first = refused(await outcome(desk, 'item.save', { item: wrong }))
    expect(first).toMatchObject({ code: 'invalid', path: 'item.spec.pipeMm' })
    expect(refused(await outcome(desk, 'item.save', { item: { ...panel, dryKg: 0 } }))).toEqual({
      code: 'invalid',
      message: 'Dry (kg) must be more than 0; it was 0.',
      path: 'item.dryKg',
    })
  })

  it('refuses another kind under the same id', async () => {
    const desk = await openDesk()
    const item = { ...named('test-pipe-15'), itemId: valve.itemId }
    expect(refused(await outcome(desk, 'item.save', { item }))).toMatchObject({
      code: 'conflict',
      path: 'item.kind',
      message: `${valve.name} is of the kind valve, and an item's kind cannot be changed to pipe.`,
    })
  })

  it('refuses figures that are right alone and wrong together', async () => {
    const desk = await openDesk()
    const base = { generic: false, name: 'Own', itemId: 'own' } as const
    const plug: Item = {
      ...base,
      kind: 'plug',
      spec: { bitMm: 6, lengthMm: 30, screwLeastMm: 5, screwMostMm: 4 },
    }
    expect(refused(await outcome(desk, 'item.save', { item: plug }))).toEqual({
      code: 'invalid',
      message:
        'The thickest screw that it takes (4 mm) is thinner than the thinnest (5 mm): give the larger of the two here.',
      path: 'item.spec.screwMostMm',
    })
    const level: Item = { ...plug, spec: { ...plug.spec, screwMostMm: 5 } }
    expect((await outcome(desk, 'item.save', { item: level })).ok).toBe(true)
    const anchor: Item = {
      ...base,
      kind: 'anchor',
      itemId: 'own-anchor',
      spec: { bitMm: 8, boardLeastMm: 16, boardMostMm: 9, allowedShearN: 200, allowedPullN: 100 },
    }
    expect(refused(await outcome(desk, 'item.save', { item: anchor })).path).toBe('item.spec.boardMostMm')
    const fitting = { shape: 'reducer', joint: 'compression', outsideMm: 22 } as const
    const reducer: Item = { ...base, kind: 'pipeFitting', itemId: 'own-reducer', spec: fitting }
    expect(refused(await outcome(desk, 'item.save', { item: reducer }))).toMatchObject({
      message: 'A reducer goes from one pipe to another: give the other pipe’s size.',
      path: 'item.spec.toMm',
    })
    const same: Item = { ...reducer, spec: { ...fitting, toMm: 22 } }
    expect(refused(await outcome(desk, 'item.save', { item: same })).message).toBe(
      'A reducer from 22 mm to 22 mm reduces nothing: give another size, or call it a coupler.',
    )
    const right: Item = { ...reducer, spec: { ...fitting, toMm: 15 } }
    expect((await outcome(desk, 'item.save', { item: right })).ok).toBe(true)
  })

  it('refuses a thing in the box that is no thing of its kind', async () => {
    const desk = await openDesk()
    const box = [
      { kind: 'vent', spec: { thread: 'G1/2', sealing: 'oRing' }, count: 1 },
      { kind: 'blank', spec: { thread: 'G5/8' }, count: 1 },
    ] as const
    expect(refused(await outcome(desk, 'item.save', { item: { ...panel, box } }))).toMatchObject({
      code: 'invalid',
      path: 'item.box[1].spec.thread',
    })
    const unknown = [{ kind: 'vent', spec: { colour: 'white' }, count: 1 }] as const
    expect(refused(await outcome(desk, 'item.save', { item: { ...panel, box: unknown } }))).toMatchObject({
      message: 'There is no field called colour here; take it out or check its spelling.',
      path: 'item.box[0].spec.colour',
    })
    expect((await outcome(desk, 'item.save', { item: { ...panel, box: box.slice(0, 1) } })).ok).toBe(true)
  })
})

describe('item.copy', () => {
  it('makes one of the firm’s own, generic as long as its figures are, with no prices', async () => {
    const desk = await openDesk()
    const { item } = await asked(desk, 'item.copy', { itemId: panel.itemId, name: 'Panel 600 × 1000 (ours)' })
    expect(item).toEqual({ ...panel, itemId: 'panel-600-1000-ours', name: 'Panel 600 × 1000 (ours)' })
    const read = await asked(desk, 'catalogue.item', { itemId: item.itemId })
    expect(read).toMatchObject({ own: true, prices: [], favourite: false })
  })

  it('gives each copy an id of its own, and refuses one that is taken', async () => {
    const desk = await openDesk()
    const copy = { itemId: panel.itemId, name: 'Twin' }
    expect((await asked(desk, 'item.copy', copy)).item.itemId).toBe('twin')
    expect((await asked(desk, 'item.copy', copy)).item.itemId).toBe('twin-2')
    expect((await asked(desk, 'item.copy', copy)).item.itemId).toBe('twin-3')
    expect((await asked(desk, 'item.copy', { ...copy, newItemId: 'T.1' })).item.itemId).toBe('T.1')
    expect(refused(await outcome(desk, 'item.copy', { ...copy, newItemId: 'T.1' }))).toMatchObject({
      code: 'conflict',
      path: 'newItemId',
    })
    expect(refused(await outcome(desk, 'item.copy', { ...copy, itemId: 'nowhere' }))).toMatchObject({
      code: 'not-found',
      path: 'itemId',
    })
  })

  it('puts a copy of a retired item on the shelf', async () => {
    const desk = await openDesk()
    const { item } = await asked(desk, 'item.copy', { itemId: 'test-old-wipes', name: 'Wipes, new pack' })
    expect(item.retired).toBeUndefined()
    expect(await searched(desk, 'wipes')).toEqual(['wipes-new-pack'])
  })

  it('makes an id of any name', () => {
    expect(idFromName('Towel rail, 500 wide')).toBe('towel-rail-500-wide')
    expect(idFromName('Émaillé  ½"')).toBe('emaille-1-2')
    expect(idFromName('—')).toBe('item')
    expect(idFromName(`${'a'.repeat(69)} b`)).toBe('a'.repeat(69))
    expect(idFromName('x'.repeat(200))).toHaveLength(70)
  })
})

describe('item.retire', () => {
  it('takes an item out of the search and puts it back, and names the jobs that put it up', async () => {
    const desk = await openDesk()
    if (desk.store === null) throw new Error('There is a store')
    const job = bedroomJob()
    const [swap] = job.swaps
    if (swap === undefined) throw new Error('The bedroom job has a swap')
    await writing(desk.store, (tx) =>
      saveJob(tx, bedroomJob({ swaps: [{ ...swap, emitterId: panel.itemId }] }), now()),
    )
    const away = await asked(desk, 'item.retire', { itemId: panel.itemId, retired: true })
    expect(away).toEqual({
      item: { ...panel, retired: true },
      usedBy: [{ jobId: job.jobId, title: job.title }],
    })
    expect(await searched(desk, '600 x 1000')).toEqual([])
    expect(await searched(desk, '', { retired: true })).toEqual([panel.itemId, 'test-old-wipes'])
    const back = await asked(desk, 'item.retire', { itemId: panel.itemId, retired: false })
    expect(back.item).toEqual(panel)
    expect(await searched(desk, '600 x 1000')).toEqual([panel.itemId])
  })

  it('names no job where none uses it, and refuses an item that is not there', async () => {
    const desk = await openDesk()
    expect(
      (await asked(desk, 'item.retire', { itemId: 'test-panel-600x1200', retired: true })).usedBy,
    ).toEqual([])
    expect(refused(await outcome(desk, 'item.retire', { itemId: 'nowhere', retired: true }))).toMatchObject({
      code: 'not-found',
      path: 'itemId',
      message: 'There is no item nowhere in the catalogue.',
    })
  })
})
