import { describe, expect, it } from 'vitest'
import { requests } from '../../src-main/contract/requests.ts'
import { jobFlow } from '../../src-main/desk/house/job-flow.ts'
import { jobSave } from '../../src-main/desk/jobs/job-save.ts'
import { bedroomJob } from '../job-for-tests.ts'
import { deskWith, filledStore, valueOf } from './store-for-tests.ts'

describe('the flow temperature of a saved job', () => {
  it('is that of the job itself', async () => {
    const at = deskWith(await filledStore())
    const job = bedroomJob()
    valueOf(await jobSave({ job }, at))
    const given = valueOf(await jobFlow({ job }, at))
    const saved = valueOf(await jobFlow({ jobId: job.jobId }, at))
    expect(requests['job.flow'].output.safeParse(saved).error).toBeUndefined()
    expect(saved).toEqual(given)
    expect(saved.after.rooms.map(({ roomId }) => roomId)).toEqual(job.rooms.map(({ roomId }) => roomId))
  })

  it('of a job that was never saved is refused', async () => {
    const at = deskWith(await filledStore())
    const outcome = await jobFlow({ jobId: 'never-saved' }, at)
    expect(outcome).toEqual({
      ok: false,
      problems: [
        {
          code: 'not-found',
          message: 'There is no job never-saved in the data folder.',
          path: 'jobId',
          next: 'job.list shows those that there are.',
        },
      ],
    })
  })
})
