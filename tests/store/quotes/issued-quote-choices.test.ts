import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import sample from '../../../resources/sample/two-rooms.job.json' with { type: 'json' }
import { job as jobSchema } from '../../../src-main/domain/job.ts'
import { openDesk } from '../../../src-main/desk/open-desk.ts'
import { answer } from '../../../src-main/desk/router.ts'
import { pickListHow } from '../../../src-main/desk/buying/pick-list-how.ts'
import { keptWork, workUp } from '../../../src-main/desk/quoting/work-up.ts'
import { readIssued } from '../../../src-main/store/quotes.ts'
import { reading } from '../../../src-main/store/store.ts'
import { deskWith, filledStore, issueByHand, valueOf } from '../store-for-tests.ts'

const job = jobSchema.parse(sample)
const tail = 'tail-g1-2-50'

describe('an issued quote', () => {
  it('still takes the items that the firm preferred when it was issued', async () => {
    const { catalogue, figures, quote, pickList } = valueOf(await workUp(job, deskWith(null)))
    const chosen = quote.internal.purchases.find(({ itemId }) => itemId.startsWith('tail-'))?.itemId
    expect(chosen).not.toBe(tail)
    const store = await filledStore()
    const kept = { job, figures, quote, pickList, catalogue: { ...catalogue, favourites: [tail] } }
    const quoteId = await issueByHand(store, kept)
    expect((await reading(store, (tx) => readIssued(tx, quoteId)))?.snapshot.catalogue.favourites).toEqual([
      tail,
    ])
    const again = valueOf(await keptWork(quoteId, deskWith(store)))
    expect(again.takeOff.lines.flatMap(({ itemId }) => itemId ?? [])).toContain(tail)
    expect(again.takeOff.lines.flatMap(({ itemId }) => itemId ?? [])).not.toContain(chosen)
    expect(again.quote).toEqual(quote)
  })

  it('takes what the firm marked as its favourite, and keeps it when the mark is gone', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'tailpiece-liked-'))
    const opened = valueOf(await openDesk({ dataFolder: join(folder, 'data'), mayChoosePath: true }))
    const ask = async (name: string, input: unknown) => valueOf(await answer(name, input, opened.desk()))
    await ask('favourite.set', { itemId: tail, favourite: true })
    const { quoteId } = (await ask('quote.issue', { job })) as { readonly quoteId: string }
    await ask('favourite.set', { itemId: tail, favourite: false })
    const bought = (purchases: readonly { readonly itemId: string }[]) =>
      purchases.map(({ itemId }) => itemId).filter((itemId) => itemId.startsWith('tail-'))
    const kept = valueOf(await keptWork(quoteId, opened.desk()))
    expect(bought(kept.quote.internal.purchases)).toEqual([tail])
    expect(bought(kept.ground.parts.purchases)).toEqual([tail])
    const now = valueOf(await workUp(job, opened.desk()))
    expect(bought(now.quote.internal.purchases)).toEqual(['tail-g1-2-40'])
    await opened.close()
    await rm(folder, { recursive: true })
  })

  it('lists its parts with van stock by its own prices, and as it was without', async () => {
    const { catalogue, figures, quote, pickList } = valueOf(await workUp(job, deskWith(null)))
    const store = await filledStore()
    const quoteId = await issueByHand(store, { job, figures, quote, pickList, catalogue })
    const again = valueOf(await keptWork(quoteId, deskWith(store)))
    expect(valueOf(await pickListHow(again, {}))).toEqual(pickList)
    const vanStock = [{ itemId: 'anchor-metal-10-thin', quantity: 4 }]
    const list = valueOf(await pickListHow(again, { vanStock }))
    expect(list.fromVan?.map(({ quantity }) => quantity)).toEqual([4])
    expect(again.quote).toEqual(quote)
  })

  it('goes out with a gap filled by hand, is refused while it is open, and says the same when it is printed again', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'tailpiece-filled-'))
    const opened = valueOf(await openDesk({ dataFolder: join(folder, 'data'), mayChoosePath: true }))
    const swaps = job.swaps.map((swap, index) => (index === 0 ? { ...swap, elementW: 999 } : swap))
    const gapKey = 'element thread="G1/2" watts=999'
    const out = join(folder, 'quote.pdf')
    const refused = await answer('quote.pdf', { job: { ...job, swaps }, out }, opened.desk())
    expect(refused.ok ? null : refused.problems[0]).toMatchObject({
      code: 'gap',
      message: 'The catalogue has no heating element (999 W, G1/2).',
      next: `Add it to the catalogue with a price, fill it by hand with a fill for ${gapKey}, or let it stand with a reason: a waiver for ${gapKey}.`,
    })
    const fills = [{ gapKey, name: 'Heating element 999 W', netCostPence: 4250 }]
    const filled = { ...job, swaps, fills }
    const printed = await answer('quote.pdf', { job: filled, out }, opened.desk())
    expect(printed.ok).toBe(true)
    const kept = await answer('quote.issue', { job: filled }, opened.desk())
    if (!kept.ok) throw new Error(JSON.stringify(kept.problems))
    const { quoteId } = kept.value as { readonly quoteId: string }
    const again = valueOf(await keptWork(quoteId, opened.desk()))
    expect(again.job.fills).toEqual(fills)
    expect(again.takeOff.lines.map(({ name }) => name)).toContain('Heating element 999 W')
    expect(again.quote.gaps).toEqual([])
    await opened.close()
    await rm(folder, { recursive: true })
  })
})
