import { describe, expect, it } from 'vitest'
import { job as jobSchema, room as roomSchema } from '../../../src-main/domain/job.ts'
import { freeId, newRoom, newSwap } from '../../../src-renderer/screens/job/new-things.ts'
import { newJob } from '../../../src-renderer/screens/jobs/new-job.ts'
import { startTyped, swapAskedOf, wrongIn } from '../../../src-renderer/screens/job/swap-typed.ts'
import { bedroomJob } from '../../job-for-tests.ts'
import { emitterForTests } from './emitter-for-tests.ts'

describe('what the survey begins with', () => {
  it('is a job that the desk takes as it is', () => {
    const job = newJob({ title: 'Back bedroom', customer: 'Robin Sample', today: '2026-11-25' })
    expect(jobSchema.safeParse(job).success).toBe(true)
    expect(job.survey.surveyedOn).toBe('2026-11-25')
  })
  it('gives two new jobs names of their own', () => {
    const named = { title: 'Back bedroom', customer: 'Robin Sample', today: '2026-11-25' }
    expect(newJob(named).jobId).not.toBe(newJob(named).jobId)
  })
  it('is a room as large as it was measured, with a wall as long as the room', () => {
    const asked = { name: 'Box room', use: 'bedroom', lengthM: 3, widthM: 2.5, heightM: 2.4 } as const
    const room = newRoom(asked, ['room-1'])
    expect(roomSchema.safeParse(room).success).toBe(true)
    expect(room).toMatchObject({ roomId: 'room-2', heat: { volumeM3: 18 } })
    expect(room.walls).toMatchObject([{ widthMm: 3000, heightMm: 2400 }])
  })
  it('takes the first free number for a name', () => {
    expect(freeId('room', ['room-1', 'room-3'])).toBe('room-2')
  })
})

describe('a swap that is being added', () => {
  const start = startTyped(bedroomJob())
  it('names every box that is still empty, and those only', () => {
    expect(Object.keys(wrongIn(start))).toEqual(['oldWidth', 'oldHeight', 'leftX', 'rightX'])
    expect(Object.keys(wrongIn({ ...start, hasOld: false, leftX: '900' }))).toEqual(['rightX'])
  })
  it('says what would be right', () => {
    expect(wrongIn({ ...start, leftX: 'abc' }).leftX).toMatch(/number of millimetres, more than 0/)
  })
  it('becomes a swap that the desk takes, with both pipes where they were measured', () => {
    const typed = { ...start, oldWidth: '1000', oldHeight: '600', leftX: '900', rightX: '1970,5', size: '10' }
    expect(wrongIn(typed)).toEqual({})
    const swap = newSwap(swapAskedOf(typed, emitterForTests()), ['swap-1'])
    expect(jobSchema.safeParse(bedroomJob({ swaps: [swap] })).success).toBe(true)
    expect(swap.pipes).toMatchObject([
      { side: 'left', xMm: 900, outsideMm: 10 },
      { side: 'right', xMm: 1970.5, outsideMm: 10 },
    ])
    expect(swap.centre).toEqual({ kind: 'betweenPipes' })
  })
})
