import { expect, it } from 'vitest'
import sample from '../../../resources/sample/two-rooms.job.json' with { type: 'json' }
import { job as jobSchema } from '../../../src-main/domain/job.ts'
import { keptWork, workUp } from '../../../src-main/desk/quoting/work-up.ts'
import { deskWith, filledStore, issueByHand, valueOf } from '../store-for-tests.ts'

it('a quote that an earlier program kept, without the lifting figures of this one, is still read as it stood', async () => {
  const job = jobSchema.parse(sample)
  const worked = valueOf(await workUp(job, deskWith(null)))
  const { catalogue, figures, quote, pickList } = worked
  const settings = Object.fromEntries(
    Object.entries(figures.settings).filter(([id]) => !id.startsWith('lift.') || id === 'lift.onePersonKg'),
  )
  const snapshot = { job, catalogue, figures: { ...figures, settings }, quote, pickList }
  const store = await filledStore()
  const quoteId = await issueByHand(store, snapshot)
  expect(valueOf(await keptWork(quoteId, deskWith(store))).quote).toEqual(quote)
})
