import { describe, expect, it } from 'vitest'
import { job as jobSchema } from '../../../../src-main/domain/job.ts'
import { copyOfJob } from '../../../../src-main/desk/jobs/copy-of-job.ts'
import { bedroomJob } from '../../../job-for-tests.ts'

const as = { jobId: 'job-copy', today: '2026-11-25' }

describe('a copy of a job', () => {
  it('has the same survey under an id, a title and a day of its own', () => {
    const from = bedroomJob()
    const copy = copyOfJob(from, as)
    expect(copy).toEqual({
      ...from,
      jobId: 'job-copy',
      title: 'Back bedroom radiator (copy)',
      createdOn: '2026-11-25',
      stage: 'surveying',
    })
  })

  it('is not quoted, not accepted, not put away, and has no reference yet', () => {
    const from = bedroomJob({
      quotedOn: '2026-03-03',
      reference: 'R-7',
      stage: 'accepted',
      archived: true,
    })
    const copy = copyOfJob(from, as)
    expect(copy.stage).toBe('surveying')
    for (const gone of ['quotedOn', 'reference', 'archived']) expect(copy).not.toHaveProperty(gone)
  })

  it('of a job with the longest title is still a job', () => {
    const copy = copyOfJob(bedroomJob({ title: 'x'.repeat(200) }), as)
    expect(copy.title).toBe(`${'x'.repeat(193)} (copy)`)
    expect(jobSchema.safeParse(copy).success).toBe(true)
  })
})
