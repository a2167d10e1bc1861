import { rm } from 'node:fs/promises'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { answer } from '../../../src-main/desk/router.ts'
import type { Derivation } from '../../../src-main/domain/derivation.ts'
import type { AfterJob } from '../../../src-main/domain/follow-up/after-job.ts'
import { refused } from '../../answered.ts'
import { acceptedQuote, ask, begunFolder, inTwoWindows, sampleJob, variations } from './accepted-job.ts'

let begun: string
beforeAll(async () => {
  begun = await begunFolder()
})
afterAll(() => rm(begun, { recursive: true }))

const nothing: AfterJob = { tasks: [], parts: [], variations: [] }

const everySentence = ({ says, source = '', from }: Derivation): string =>
  [says, source, ...from.map(everySentence)].join('\n')

describe('after the job', { timeout: 60_000 }, () => {
  it('shows what was reckoned: the tasks come to the quote’s own minutes, the parts to what was bought', async () => {
    await inTwoWindows(begun, async ([desk]) => {
      const quoteId = await acceptedQuote(desk)
      const { planned, afterJob, closedOn } = await ask(desk, 'afterJob.read', { quoteId })
      expect([afterJob, closedOn]).toEqual([null, null])
      const account = await ask(desk, 'afterJob.account', { quoteId })
      const minutes = planned.tasks.reduce((sum, { expectedMin }) => sum + expectedMin, 0)
      expect(minutes).toBeCloseTo(account.internal.quotedMin, 6)
      expect(new Set(planned.tasks.map(({ taskId }) => taskId)).size).toBe(planned.tasks.length)
      expect(planned.parts.length).toBeGreaterThan(10)
      expect(planned.parts.every(({ planned: bought, used }) => used <= bought)).toBe(true)
      expect(planned.swaps.map(({ swapId }) => swapId)).toEqual(sampleJob.swaps.map(({ swapId }) => swapId))
    })
  })

  it('needs a quote that was accepted', async () => {
    await inTwoWindows(begun, async ([desk]) => {
      const { quoteId } = await ask(desk, 'quote.issue', { job: sampleJob })
      for (const name of [
        'afterJob.read',
        'afterJob.account',
        'afterJob.close',
        'finalAccount.pdf',
      ] as const) {
        expect(refused(await answer(name, { quoteId }, desk))).toMatchObject({
          code: 'conflict',
          message: `${quoteId} is not accepted, so there is no job to note anything of.`,
        })
      }
      const saved = await answer('afterJob.save', { quoteId, afterJob: nothing }, desk)
      expect(refused(saved).code).toBe('conflict')
      expect(refused(await answer('afterJob.read', { quoteId: 'Q-none' }, desk)).code).toBe('not-found')
    })
  })

  it('keeps what is saved, and adds variations to the account', async () => {
    await inTwoWindows(begun, async ([first, second]) => {
      const quoteId = await acceptedQuote(first)
      const before = await ask(first, 'afterJob.account', { quoteId })
      expect(before.grossPence).toBe(before.quoteGrossPence)
      const afterJob = { ...nothing, variations, paidPence: 10_000, notes: 'The stop tap is stiff.' }
      const saved = await ask(first, 'afterJob.save', { quoteId, afterJob })
      // By hand: 32.17 - 15.01 before tax; the sample's lines bear the standard rate alone, 20 % (HMRC).
      expect(saved.account.netPence).toBe(before.netPence + 1_716)
      expect(saved.account.variationsNetPence).toBe(1_716)
      expect(saved.account.toPayPence).toBe(saved.account.grossPence - 10_000)
      expect(await ask(second, 'afterJob.account', { quoteId })).toEqual(saved.account)
      expect((await ask(second, 'afterJob.read', { quoteId })).afterJob).toEqual(afterJob)
    })
  })

  it('refuses two variations of one name, and things back to a van that keeps no account of them', async () => {
    await inTwoWindows(begun, async ([desk]) => {
      const quoteId = await acceptedQuote(desk)
      const [one] = variations
      const twice = [one, one].flatMap((same) => (same === undefined ? [] : [same]))
      const save = (afterJob: AfterJob) => answer('afterJob.save', { quoteId, afterJob }, desk)
      expect(refused(await save({ ...nothing, variations: twice }))).toMatchObject({
        message: 'Two variations are called v-1; each has a name of its own.',
        path: 'afterJob.variations[1].variationId',
      })
      const part = { name: 'Brass oddment', unit: 'each' as const, planned: 2, used: 1, backToVan: 1 }
      const sentence =
        'Brass oddment is no item of the catalogue, so the van keeps no account of it; put nothing of it back.'
      for (const wrong of [part, { ...part, itemId: 'not-there' }]) {
        const parts = [{ ...part, backToVan: 0 }, wrong]
        expect(refused(await save({ ...nothing, parts }))).toMatchObject({
          message: sentence,
          path: 'afterJob.parts[1].backToVan',
        })
      }
      expect((await ask(desk, 'afterJob.read', { quoteId })).afterJob).toBeNull()
    })
  })
})

describe('closing the job', { timeout: 60_000 }, () => {
  it('puts leftovers into the van once, marks the job done, and then nothing changes in either window', async () => {
    await inTwoWindows(begun, async ([first, second]) => {
      const quoteId = await acceptedQuote(first)
      expect(refused(await answer('afterJob.close', { quoteId }, first)).message).toBe(
        'Nothing is noted of this job yet; note its hours first.',
      )
      const { planned } = await ask(first, 'afterJob.read', { quoteId })
      const parts = planned.parts.map((part) => {
        const over = Math.round((part.planned - part.used) * 1e6) / 1e6
        return part.itemId !== undefined && over > 0 ? { ...part, backToVan: over } : part
      })
      const back = parts.filter(({ backToVan }) => backToVan !== undefined)
      expect(back.length).toBeGreaterThan(2)
      await ask(first, 'afterJob.save', { quoteId, afterJob: { ...nothing, parts } })
      const early = await answer('afterJob.close', { quoteId, onDay: '2026-03-21' }, first)
      expect(refused(early)).toMatchObject({ code: 'invalid', path: 'onDay' })

      const both = await Promise.all(
        [first, second].map((desk) => answer('afterJob.close', { quoteId, onDay: '2026-03-19' }, desk)),
      )
      expect(both.map(({ ok }) => ok).toSorted()).toEqual([false, true])
      const stock = (await ask(second, 'van.stock', {})).items
      const held = Object.fromEntries(stock.map(({ itemId, quantity }) => [itemId, quantity]))
      const expected = Object.fromEntries(
        [...Map.groupBy(back, ({ itemId = '' }) => itemId)].map(([itemId, same]) => [
          itemId,
          Math.round(same.reduce((sum, { backToVan = 0 }) => sum + backToVan, 0) * 1e6) / 1e6,
        ]),
      )
      expect(held).toEqual(expected)
      const [someItem = ''] = Object.keys(expected)
      const { moves } = await ask(second, 'van.moves', { itemId: someItem })
      expect(moves).toMatchObject([
        { kind: 'return', onDay: '2026-03-19', says: `Left over from ${quoteId}` },
      ])

      const closed = `The job of ${quoteId} was closed on 2026-03-19; its account stays as it is.`
      const save = await answer('afterJob.save', { quoteId, afterJob: nothing }, second)
      expect(refused(save)).toMatchObject({ code: 'conflict', message: closed })
      expect(refused(await answer('afterJob.close', { quoteId }, second)).message).toBe(closed)
      expect((await ask(second, 'afterJob.read', { quoteId })).closedOn).toBe('2026-03-19')
      const { jobs } = await ask(second, 'job.list', {})
      expect(jobs.find(({ jobId }) => jobId === sampleJob.jobId)?.stage).toBe('done')
    })
  })

  it('teaches the next quote, which says by how many jobs, and leaves the closed one as it was', async () => {
    await inTwoWindows(begun, async ([desk, second]) => {
      const quoteId = await acceptedQuote(desk)
      const before = await ask(desk, 'quote.build', { job: sampleJob })
      expect((await ask(desk, 'labour.learned', {})).tasks).toEqual([])
      const { planned } = await ask(desk, 'afterJob.read', { quoteId })
      // Every task took twice what was reckoned.
      const tasks = planned.tasks
        .filter(({ expectedMin }) => expectedMin > 0)
        .map(({ taskId, name, count, expectedMin }) => ({ taskId, name, count, minutes: 2 * expectedMin }))
      await ask(desk, 'afterJob.save', { quoteId, afterJob: { ...nothing, tasks } })
      expect((await ask(desk, 'quote.build', { job: sampleJob })).totals).toEqual(before.totals)
      await ask(desk, 'afterJob.close', { quoteId })

      const learned = (await ask(second, 'labour.learned', {})).tasks
      expect(learned.map(({ taskId }) => taskId).toSorted()).toEqual(
        tasks.map(({ taskId }) => taskId).toSorted(),
      )
      // The delivered minutes weigh as much as 4 tasks. A job of n tasks that took twice its reckoning teaches
      // (4 p + 2 m p) / (4 + m) for one, where m = n x (reckoned / plain): by hand, learned / p - 1 = m / (4 + m) < 1.
      for (const { jobs, priorMin, expectedMin, taskId } of learned) {
        const plan = planned.tasks.find((one) => one.taskId === taskId)
        const plainCount = (plan?.expectedMin ?? 0) / priorMin
        expect(jobs).toBe(1)
        expect(expectedMin / priorMin - 1).toBeCloseTo(plainCount / (4 + plainCount), 9)
      }
      const after = await ask(second, 'quote.build', { job: sampleJob })
      expect(after.labour.expectedMin).toBeGreaterThan(before.labour.expectedMin)
      const behind = "the firm's own one job, with the delivered minutes as a start"
      const labourSays = (quote: typeof after) =>
        quote.lines.filter(({ section }) => section === 'labour').map(({ why }) => everySentence(why))
      expect(labourSays(before).filter((says) => says.includes(behind))).toEqual([])
      expect(labourSays(after).filter((says) => !says.includes(behind))).toEqual([])
      expect((await ask(second, 'afterJob.read', { quoteId })).planned).toEqual(planned)
    })
  })

  it('teaches nothing where the job took what was reckoned, whatever the walls and the house', async () => {
    await inTwoWindows(begun, async ([desk]) => {
      const quoteId = await acceptedQuote(desk)
      const before = await ask(desk, 'quote.build', { job: sampleJob })
      const { planned } = await ask(desk, 'afterJob.read', { quoteId })
      const tasks = planned.tasks.map(({ taskId, name, count, expectedMin }) => ({
        taskId,
        name,
        count,
        minutes: expectedMin,
      }))
      await ask(desk, 'afterJob.save', { quoteId, afterJob: { ...nothing, tasks } })
      await ask(desk, 'afterJob.close', { quoteId })
      for (const { expectedMin, priorMin } of (await ask(desk, 'labour.learned', {})).tasks)
        expect(expectedMin).toBeCloseTo(priorMin, 9)
      const after = await ask(desk, 'quote.build', { job: sampleJob })
      expect(after.labour.expectedMin).toBeCloseTo(before.labour.expectedMin, 6)
      expect(after.totals).toEqual(before.totals)
    })
  })
})
