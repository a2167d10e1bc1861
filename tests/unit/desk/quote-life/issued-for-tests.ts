import { cp, mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, onTestFinished } from 'vitest'
import type { AnswerOf, InputOf, RequestName } from '../../../../src-main/contract/requests.ts'
import type { Desk } from '../../../../src-main/desk/desk.ts'
import { openDesk } from '../../../../src-main/desk/open-desk.ts'
import { answer } from '../../../../src-main/desk/router.ts'
import { job as jobSchema } from '../../../../src-main/domain/job.ts'
import type { Job } from '../../../../src-main/domain/job.ts'
import sample from '../../../../resources/sample/two-rooms.job.json' with { type: 'json' }
import { answered } from '../../../answered.ts'

export const firm = {
  name: 'Sampleton Test Heating',
  addressLines: ['2 Example Row'],
  phone: '01632 960100',
  email: 'office@test-heating.example.com',
}
export const job: Job = { ...jobSchema.parse(sample), firm }
export const issueDay = '2026-03-02'
export const moment = '2026-03-02T09:30:00.000Z'

let begun = ''
beforeAll(async () => {
  begun = await mkdtemp(join(tmpdir(), 'tailpiece-hand-over-'))
  const open = answered(await openDesk({ dataFolder: begun, mayChoosePath: false }))
  await open.close()
}, 60_000)
afterAll(() => rm(begun, { recursive: true, force: true }))

/** A desk on a data file of its own with the shipped catalogue, on a fixed day at a fixed moment. */
export async function deskOfToday(changes: Partial<Desk> = {}): Promise<Desk> {
  const folder = await mkdtemp(join(tmpdir(), 'tailpiece-hand-over-'))
  await cp(begun, folder, { recursive: true })
  const open = answered(await openDesk({ dataFolder: folder, mayChoosePath: true }))
  onTestFinished(async () => {
    await open.close()
    await rm(folder, { recursive: true, force: true })
  })
  return { ...open.desk(), today: issueDay, now: () => moment, ...changes }
}

export async function ask<N extends RequestName>(
  desk: Desk,
  name: N,
  input: InputOf<N>,
): Promise<AnswerOf<N>> {
  return answered(await answer(name, input, desk)) as AnswerOf<N>
}
