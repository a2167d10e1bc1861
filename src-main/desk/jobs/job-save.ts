import { accept } from '../../domain/outcome.ts'
import { saveJob } from '../../store/jobs.ts'
import { readItems } from '../../store/items.ts'
import { writing } from '../../store/store.ts'
import type { UseCase } from '../desk.ts'
import { storeOf } from '../store-of.ts'
import { checkJob } from './check-job.ts'

export const jobSave: UseCase<'job.save'> = (input, desk) =>
  writing(storeOf(desk), async (tx) => {
    const items = await readItems(
      tx,
      input.job.swaps.map(({ emitterId }) => emitterId),
    )
    const checked = checkJob(input.job, { items })
    if (!checked.ok) return checked
    const savedAt = desk.now()
    await saveJob(tx, checked.value, savedAt)
    return accept({ jobId: input.job.jobId, savedAt })
  })
