import fc from 'fast-check'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { InputOf } from '../../../src-main/contract/requests.ts'
import { answer } from '../../../src-main/desk/router.ts'
import { ask, begin, refusalOf, today } from './van-for-tests.ts'
import type { Begun } from './van-for-tests.ts'

let begun: Begun
beforeAll(async () => {
  begun = await begin()
}, 120_000)
afterAll(() => begun.gone())

const itemId = 'elbow-compression-15'
const name = 'Elbow, compression, 15 mm'
const tape = 'seal-tape-12'

type Note = InputOf<'van.note'>

describe('what is noted of the van', () => {
  it('adds up move by move, with what was there after each', async () => {
    await begun.inTwoWindows(async (desk, other) => {
      const notes: readonly Note[] = [
        { itemId, kind: 'receipt', quantity: 10, onDay: '2026-11-20', says: 'From the counter' },
        { itemId, kind: 'use', quantity: 4, onDay: '2026-11-21' },
        { itemId, kind: 'return', quantity: 1 },
        { itemId, kind: 'count', quantity: 5 },
        { itemId, kind: 'correction', quantity: -2, says: 'Two were cracked' },
        { itemId, kind: 'correction', quantity: 1, says: 'One was in the door' },
      ]
      const told = []
      for (const note of notes) told.push((await ask(desk, 'van.note', note)).quantity)
      expect(told).toEqual([10, 6, 7, 5, 3, 4])
      const moves = await ask(other, 'van.moves', { itemId })
      expect(moves).toMatchObject({ itemId, name, unit: 'each', quantity: 4 })
      expect(moves.moves.map(({ kind, quantity, after }) => [kind, quantity, after])).toEqual([
        ['receipt', 10, 10],
        ['use', -4, 6],
        ['return', 1, 7],
        ['count', -2, 5],
        ['correction', -2, 3],
        ['correction', 1, 4],
      ])
      expect(moves.moves[0]).toMatchObject({ onDay: '2026-11-20', says: 'From the counter' })
      expect(moves.moves[2]).toMatchObject({ onDay: today })
      expect(moves.moves[2]).not.toHaveProperty('says')
      expect(moves.moves.map(({ counted }) => counted)).toEqual([
        undefined,
        undefined,
        undefined,
        5,
        undefined,
        undefined,
      ])
      expect((await ask(other, 'van.stock', {})).items).toEqual([
        { itemId, name, kind: 'pipeFitting', unit: 'each', quantity: 4, since: today },
      ])
    })
  })

  it('sums decimals exactly, and leaves out what is used up', async () => {
    await begun.inTwoWindows(async (desk) => {
      await ask(desk, 'van.note', { itemId: tape, kind: 'receipt', quantity: 0.1 })
      await ask(desk, 'van.note', { itemId: tape, kind: 'receipt', quantity: 0.2 })
      expect((await ask(desk, 'van.moves', { itemId: tape })).quantity).toBe(0.3)
      await ask(desk, 'van.note', { itemId: tape, kind: 'use', quantity: 0.3 })
      expect((await ask(desk, 'van.stock', {})).items).toEqual([])
    })
  })

  it('is refused where it says nothing, where it is still to come and where the van has not so much', async () => {
    await begun.inTwoWindows(async (desk) => {
      const refused = (note: Omit<Note, 'itemId'>) => refusalOf(desk, 'van.note', { itemId, ...note })
      expect(await refused({ kind: 'receipt', quantity: 0 })).toMatchObject({
        code: 'invalid',
        path: 'quantity',
        message: 'A receipt is of more than nothing; what goes out is a use.',
      })
      expect(await refused({ kind: 'receipt', quantity: 0.000_000_4 })).toMatchObject({ code: 'invalid' })
      expect((await refused({ kind: 'use', quantity: -1 })).message).toBe(
        'A use is of more than nothing; what is used goes out by itself.',
      )
      expect(await refused({ kind: 'return', quantity: -1 })).toMatchObject({ path: 'quantity' })
      expect(await refused({ kind: 'count', quantity: -1 })).toMatchObject({ path: 'quantity' })
      expect((await refused({ kind: 'correction', quantity: 0, says: 'why' })).message).toBe(
        'A correction adds something or takes it away.',
      )
      expect(await refused({ kind: 'correction', quantity: 1 })).toMatchObject({ path: 'says' })
      expect(await refused({ kind: 'correction', quantity: 1, says: '  ' })).toMatchObject({ path: 'says' })
      expect(await refused({ kind: 'use', quantity: 1 })).toMatchObject({
        code: 'impossible',
        message: `The van has none of ${name}, so 1 can’t go out of it.`,
        next: 'Count what is there, and note the count first.',
      })
      await ask(desk, 'van.note', { itemId, kind: 'receipt', quantity: 2 })
      expect((await refused({ kind: 'use', quantity: 3 })).message).toContain('The van has 2 of')
      expect(await refused({ kind: 'correction', quantity: -3, says: 'lost' })).toMatchObject({
        code: 'impossible',
      })
      expect(await refused({ kind: 'receipt', quantity: 1, onDay: '2026-11-26' })).toEqual({
        code: 'invalid',
        path: 'onDay',
        message: '2026-11-26 is still to come; give a day up to today.',
      })
      expect(
        await refusalOf(desk, 'van.note', { itemId: 'no-such', kind: 'count', quantity: 1 }),
      ).toMatchObject({
        code: 'not-found',
        path: 'itemId',
        message: 'The catalogue has no item called no-such.',
      })
      expect(await refusalOf(desk, 'van.moves', { itemId: 'no-such' })).toMatchObject({ code: 'not-found' })
      expect((await ask(desk, 'van.moves', { itemId })).moves).toHaveLength(1)
    })
  })
})

const note = fc.record({
  itemId: fc.constantFrom(itemId, tape),
  kind: fc.constantFrom('receipt', 'use', 'return', 'count', 'correction'),
  /** In hundredths, so that the model counts in whole numbers. */
  hundredths: fc.integer({ min: -300, max: 900 }),
  window: fc.constantFrom(0, 1),
})
type AnyNote = typeof note extends fc.Arbitrary<infer N> ? N : never

/** What a move adds, counted in hundredths; null where it may not be. */
function added({ kind, hundredths }: AnyNote, held: number): number | null {
  if (kind === 'correction') return hundredths !== 0 && held + hundredths >= 0 ? hundredths : null
  if (kind === 'count') return hundredths >= 0 ? hundredths - held : null
  if (hundredths <= 0) return null
  if (kind === 'use') return held >= hundredths ? -hundredths : null
  return hundredths
}

describe('the stock of the van', () => {
  it('is the sum of its moves and never less than nothing, whatever is noted in whatever order', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(note, { minLength: 1, maxLength: 25 }), async (notes) => {
        await begun.inTwoWindows(async (first, second) => {
          const model = new Map<string, number>()
          for (const one of notes) {
            const held = model.get(one.itemId) ?? 0
            const change = added(one, held)
            const desk = one.window === 0 ? first : second
            const { itemId: which, kind, hundredths } = one
            const input = { itemId: which, kind, quantity: hundredths / 100, says: 'so it was' }
            const outcome = await answer('van.note', input, desk)
            expect([one, held, outcome.ok]).toEqual([one, held, change !== null])
            if (change !== null) model.set(one.itemId, held + change)
          }
          const { items } = await ask(second, 'van.stock', {})
          expect(new Map(items.map((item) => [item.itemId, item.quantity]))).toEqual(
            new Map([...model].flatMap(([id, held]) => (held === 0 ? [] : [[id, held / 100]]))),
          )
          for (const [id, held] of model) {
            const { moves, quantity } = await ask(first, 'van.moves', { itemId: id })
            expect(quantity).toBe(held / 100)
            expect(moves.every(({ after }) => after >= 0)).toBe(true)
            expect(Math.round(moves.reduce((sum, move) => sum + move.quantity, 0) * 100)).toBe(held)
          }
        })
      }),
      { numRuns: 8 },
    )
  })

  it('is the same for receipts and returns in any order', async () => {
    const into = [
      { itemId, kind: 'receipt', quantity: 3.1 },
      { itemId, kind: 'return', quantity: 0.2 },
      { itemId, kind: 'receipt', quantity: 0.7 },
    ] as const
    for (const order of [into, into.toReversed()]) {
      await begun.inTwoWindows(async (desk) => {
        for (const one of order) await ask(desk, 'van.note', one)
        expect((await ask(desk, 'van.stock', {})).items.map(({ quantity }) => quantity)).toEqual([4])
      })
    }
  })

  it('lets only one of two windows take the last one', async () => {
    await begun.inTwoWindows(async (first, second) => {
      await ask(first, 'van.note', { itemId, kind: 'receipt', quantity: 1 })
      const uses = await Promise.all(
        [first, second].map((desk) => answer('van.note', { itemId, kind: 'use', quantity: 1 }, desk)),
      )
      expect(uses.map(({ ok }) => ok).toSorted()).toEqual([false, true])
      expect((await ask(second, 'van.moves', { itemId })).quantity).toBe(0)
    })
  })
})
