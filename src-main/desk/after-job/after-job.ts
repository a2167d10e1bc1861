import type { AfterJob } from '../../domain/after-job.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { Quote } from '../../domain/quote.ts'
import { finalAccount } from '../../engine/quote/life/final-account.ts'
import { standing } from '../../engine/quote/life/quote-state.ts'
import { labourOfJob } from '../../engine/labour/labour-of-job.ts'
import { readAfterJob, saveAfterJob } from '../../store/after-jobs.ts'
import { markJob } from '../../store/jobs.ts'
import { addMove } from '../../store/van/van-stock.ts'
import { reading, writing } from '../../store/store.ts'
import type { ReadTx } from '../../store/tables.ts'
import type { Desk, UseCase } from '../desk.ts'
import { issuedOf } from '../quote-life/quote-row.ts'
import type { WithEvents } from '../quote-life/quote-row.ts'
import { keptWork } from '../quoting/work-up.ts'
import type { WorkedUp } from '../quoting/work-up.ts'
import { storeOf } from '../store-of.ts'
import { deliveredTasks } from '../figures-in-force.ts'
import { taughtTasks } from './taught-tasks.ts'

const nothingYet: AfterJob = { tasks: [], parts: [], variations: [] }

export const afterJobRead: UseCase<'afterJob.read'> = async ({ quoteId }, desk) => {
  const accepted = await reading(storeOf(desk), (tx) => acceptedOf(tx, quoteId, desk))
  if (!accepted.ok) return accepted
  const work = await keptWork(quoteId, desk)
  if (!work.ok) return work
  const planned = plannedIn(work.value)
  if (!planned.ok) return planned
  const kept = await reading(storeOf(desk), (tx) => readAfterJob(tx, quoteId))
  return accept({
    afterJob: kept?.afterJob ?? null,
    closedOn: kept?.closedOn ?? null,
    planned: planned.value,
  })
}

function plannedIn({ quote, ground, figures, emitters, job }: WorkedUp) {
  const labour = labourOfJob(ground.facts, figures)
  if (!labour.ok) return labour
  const { rooms, shared } = labour.value.tasks
  const all = [...rooms.flatMap(({ tasks }) => tasks), ...shared]
  const tasks = [...Map.groupBy(all, ({ taskId }) => taskId)].map(([taskId, same]) => ({
    taskId,
    name: same[0]?.name ?? taskId,
    count: same.reduce((sum, { howMany }) => sum + howMany, 0),
    expectedMin: same.reduce((sum, { expectedMin }) => sum + expectedMin, 0),
  }))
  const roomOf = new Map(job.rooms.map(({ roomId, name }) => [roomId, name]))
  return accept({
    tasks,
    parts: partsOf(quote),
    swaps: job.swaps.map(({ swapId, roomId }) => ({
      swapId,
      roomName: roomOf.get(roomId) ?? roomId,
      emitterName: emitters[swapId]?.name ?? swapId,
    })),
  })
}

/** What was bought for the job, as if all that is needed were used and the rest left over. */
function partsOf({ internal }: Pick<Quote, 'internal'>): AfterJob['parts'] {
  return internal.purchases.map(({ itemId, name, unit, need, leftover, oneOff }) => ({
    ...(oneOff === true ? {} : { itemId }),
    name,
    unit,
    planned: Math.round((need + leftover) * 1e6) / 1e6,
    used: need,
  }))
}

export const afterJobSave: UseCase<'afterJob.save'> = ({ quoteId, afterJob }, desk) =>
  writing(storeOf(desk), async (tx) => {
    const open = await openAfterJob(tx, quoteId, desk)
    if (!open.ok) return open
    const account = accountOf(open.value.accepted, afterJob)
    if (!account.ok) return account
    await saveAfterJob(tx, quoteId, { afterJob, savedAt: desk.now(), closedOn: null })
    return accept({ quoteId, account: account.value })
  })

export const afterJobAccount: UseCase<'afterJob.account'> = ({ quoteId }, desk) =>
  reading(storeOf(desk), async (tx) => {
    const accepted = await acceptedOf(tx, quoteId, desk)
    if (!accepted.ok) return accepted
    const kept = await readAfterJob(tx, quoteId)
    return accountOf(accepted.value, kept?.afterJob ?? nothingYet)
  })

export const afterJobClose: UseCase<'afterJob.close'> = ({ quoteId, onDay = null }, desk) =>
  writing(storeOf(desk), async (tx) => {
    const open = await openAfterJob(tx, quoteId, desk)
    if (!open.ok) return open
    const { accepted, kept } = open.value
    if (kept === null)
      return refuse('conflict', 'Nothing is noted of this job yet; note its hours first.', 'quoteId')
    const closedOn = onDay ?? desk.today
    if (closedOn > desk.today)
      return refuse('invalid', `${closedOn} is still to come; give a day up to today.`, 'onDay')
    const account = accountOf(accepted, kept)
    if (!account.ok) return account
    const back = kept.parts.flatMap(({ itemId, backToVan = 0 }) =>
      itemId === undefined || backToVan === 0 ? [] : [{ itemId, quantity: backToVan }],
    )
    for (const one of back) {
      const says = `Left over from ${quoteId}`
      await addMove(tx, { ...one, kind: 'return', onDay: closedOn, at: desk.now(), says })
    }
    await saveAfterJob(tx, quoteId, { afterJob: kept, savedAt: desk.now(), closedOn })
    await markJob(tx, accepted.quote.jobId, { stage: 'done' })
    return accept({ quoteId, closedOn, backToVan: back.length, account: account.value })
  })

export const labourLearned: UseCase<'labour.learned'> = async (_, desk) => {
  const { figuresInForce } = await import('../figures-in-force.ts')
  const figures = await figuresInForce(desk, desk.today)
  if (!figures.ok) return figures
  const taught = await taughtTasks(storeOf(desk), deliveredTasks, figures.value.settings)
  return taught.ok ? accept({ tasks: taught.value.map(({ learned }) => learned) }) : taught
}

/** The account by the quote's own lines and the tax rates of its day. */
function accountOf({ quote }: WithEvents, after: AfterJob) {
  const { quote: accepted, figures } = quote.snapshot
  return finalAccount(accepted, after, figures)
}

/** A quote that the customer accepted; nothing happens after another. */
async function acceptedOf(tx: ReadTx, quoteId: string, desk: Desk): Promise<Outcome<WithEvents>> {
  const found = await issuedOf(tx, quoteId)
  if (!found.ok) return found
  const { quote, events } = found.value
  if (standing({ events, validUntil: quote.validUntil }, desk.today).state === 'accepted') return found
  const message = `${quoteId} is not accepted, so there is no job to note anything of.`
  return refuse('conflict', message, 'quoteId', 'Note that the customer accepted it first.')
}

async function openAfterJob(tx: ReadTx, quoteId: string, desk: Desk) {
  const accepted = await acceptedOf(tx, quoteId, desk)
  if (!accepted.ok) return accepted
  const kept = await readAfterJob(tx, quoteId)
  if (kept === null || kept.closedOn === null)
    return accept({ accepted: accepted.value, kept: kept?.afterJob ?? null })
  const message = `The job of ${quoteId} was closed on ${kept.closedOn}; its account stays as it is.`
  return refuse('conflict', message, 'quoteId')
}
