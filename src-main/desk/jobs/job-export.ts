import { accept } from '../../domain/outcome.ts'
import { readFirm } from '../../store/firm.ts'
import { readJob } from '../../store/jobs.ts'
import { reading } from '../../store/store.ts'
import type { UseCase } from '../desk.ts'
import { storeOf } from '../store-of.ts'
import { noSuchJob } from './no-such-job.ts'

export const jobExport: UseCase<'job.export'> = ({ jobId }, desk) =>
  reading(storeOf(desk), async (tx) => {
    const job = await readJob(tx, jobId)
    if (job === null) return noSuchJob(jobId)
    const firm = job.firm ?? (await readFirm(tx))
    return accept({ job: firm === null ? job : { ...job, firm } })
  })
