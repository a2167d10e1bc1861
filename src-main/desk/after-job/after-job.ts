import type { AfterJob } from '../../domain/follow-up/after-job.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import { readAfterJob, saveAfterJob } from '../../store/after-jobs.ts'
import { markJob } from '../../store/jobs.ts'
import { addMove } from '../../store/van/van-stock.ts'
import { reading, writing } from '../../store/store.ts'
import type { ReadTx, WriteTx } from '../../store/tables.ts'
import type { Desk, UseCase } from '../desk.ts'
import { keptWork } from '../quoting/work-up.ts'
import type { WorkedUp } from '../quoting/work-up.ts'
import { storeOf } from '../store-of.ts'
import { deliveredTasks } from '../figures-in-force.ts'
import { acceptedOf, accountOf, nothingYet } from './accepted.ts'
import { asTaught, plannedParts, plannedTasks } from './planned.ts'
import { soundAfterJob } from './sound-after-job.ts'
import { taughtTasks } from './taught-tasks.ts'

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

function plannedIn(work: WorkedUp) {
  const tasks = plannedTasks(work)
  if (!tasks.ok) return tasks
  const { quote, job, emitters } = work
  const roomOf = new Map(job.rooms.map(({ roomId, name }) => [roomId, name]))
  return accept({
    tasks: tasks.value,
    parts: plannedParts(quote),
    swaps: job.swaps.map(({ swapId, roomId }) => ({
      swapId,
      roomName: roomOf.get(roomId) ?? roomId,
      emitterName: emitters[swapId]?.name ?? swapId,
    })),
  })
}

export const afterJobSave: UseCase<'afterJob.save'> = ({ quoteId, afterJob }, desk) =>
  writing(storeOf(desk), async (tx) => {
    const open = await openAfterJob(tx, quoteId, desk)
    if (!open.ok) return open
    const sound = await soundAfterJob(tx, afterJob)
    if (!sound.ok) return sound
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

export const afterJobClose: UseCase<'afterJob.close'> = async ({ quoteId, onDay = null }, desk) => {
  const closedOn = onDay ?? desk.today
  if (closedOn > desk.today)
    return refuse('invalid', `${closedOn} is still to come; give a day up to today.`, 'onDay')
  const noted = await reading(storeOf(desk), (tx) => notedAfterJob(tx, quoteId, desk))
  if (!noted.ok) return noted
  const work = await keptWork(quoteId, desk)
  if (!work.ok) return work
  const planned = plannedTasks(work.value)
  if (!planned.ok) return planned
  return writing(storeOf(desk), async (tx) => {
    const open = await notedAfterJob(tx, quoteId, desk)
    if (!open.ok) return open
    const { accepted, kept } = open.value
    const account = accountOf(accepted, kept)
    if (!account.ok) return account
    const backToVan = await putBack(tx, kept, { quoteId, closedOn, at: desk.now() })
    const afterJob = { ...kept, tasks: asTaught(kept.tasks, planned.value, work.value) }
    await saveAfterJob(tx, quoteId, { afterJob, savedAt: desk.now(), closedOn })
    await markJob(tx, accepted.quote.jobId, { stage: 'done' })
    return accept({ quoteId, closedOn, backToVan, account: account.value })
  })
}

type Closing = { readonly quoteId: string; readonly closedOn: string; readonly at: string }

/** What is left over goes back into the van; says how many kinds of things did. */
async function putBack(
  tx: WriteTx,
  { parts }: AfterJob,
  { quoteId, closedOn, at }: Closing,
): Promise<number> {
  const back = parts.flatMap(({ itemId, backToVan = 0 }) =>
    itemId === undefined || backToVan === 0 ? [] : [{ itemId, quantity: backToVan }],
  )
  const says = `Left over from ${quoteId}`
  for (const one of back) await addMove(tx, { ...one, kind: 'return', onDay: closedOn, at, says })
  return back.length
}

export const labourLearned: UseCase<'labour.learned'> = async (_, desk) => {
  const { figuresInForce } = await import('../figures-in-force.ts')
  const figures = await figuresInForce(desk, desk.today)
  if (!figures.ok) return figures
  const taught = await taughtTasks(storeOf(desk), deliveredTasks, figures.value.settings)
  return taught.ok ? accept({ tasks: taught.value.map(({ learned }) => learned) }) : taught
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

/** What is noted of a job that may be closed. */
async function notedAfterJob(tx: ReadTx, quoteId: string, desk: Desk) {
  const open = await openAfterJob(tx, quoteId, desk)
  if (!open.ok) return open
  const { accepted, kept } = open.value
  if (kept === null)
    return refuse('conflict', 'Nothing is noted of this job yet; note its hours first.', 'quoteId')
  const sound = await soundAfterJob(tx, kept)
  return sound.ok ? accept({ accepted, kept }) : sound
}
