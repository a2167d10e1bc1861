import { existsSync } from 'node:fs'
import { mkdtemp, readdir, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { openDesk } from '../../../../src-main/desk/open-desk.ts'
import { routed } from './routed-for-tests.ts'
import type { Routed } from './routed-for-tests.ts'
import { bedroomJob } from '../../../job-for-tests.ts'
import { exifWithPlace, frame, jfif, jpeg, scan } from './jpeg-for-tests.ts'

let folder = ''
let desk: Routed
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'tailpiece-photos-'))
  desk = routed(await openDesk({ dataFolder: folder, mayChoosePath: false }))
  await desk.ask('job.save', { job: { ...bedroomJob(), swaps: [] } })
})
afterEach(async () => {
  await desk.close()
  await rm(folder, { recursive: true, force: true })
})

const jobId = 'bedroom-1'
const base64 = (bytes: Uint8Array) => Buffer.from(bytes).toString('base64')
const save = (bytes: Uint8Array, of = jobId) => desk.say('photo.save', { jobId: of, base64: base64(bytes) })

describe('a photo of a job', () => {
  it('is kept in the data folder under its job, listed, read back whole, and removed', async () => {
    const kept = await desk.ask('photo.save', { jobId, base64: base64(jpeg()) })
    expect(kept).toMatchObject({ bytes: jpeg().length, widthPx: 40, heightPx: 30 })
    expect(await readdir(join(folder, 'photos', jobId))).toEqual([`${kept.photoId}.jpg`])
    expect(await desk.ask('photo.list', { jobId })).toEqual({
      photos: [kept],
      mostBytes: 1500 * 1024,
      mostPx: 2000,
    })
    const { photoId } = kept
    expect(await desk.ask('photo.read', { jobId, photoId })).toEqual({ ...kept, base64: base64(jpeg()) })
    expect(await desk.ask('photo.remove', { jobId, photoId })).toEqual({ photoId })
    expect((await desk.ask('photo.list', { jobId })).photos).toEqual([])
    for (const name of ['photo.read', 'photo.remove'] as const)
      expect(await desk.say(name, { jobId, photoId })).toMatchObject({
        ok: false,
        problems: [{ code: 'not-found', path: 'photoId' }],
      })
  })

  it('goes with its job', async () => {
    await desk.ask('photo.save', { jobId, base64: base64(jpeg()) })
    await desk.ask('job.remove', { jobId })
    expect(existsSync(join(folder, 'photos', jobId))).toBe(false)
  })

  it('is refused while it still says where it was taken, and nothing is left behind', async () => {
    expect(await save(jpeg(exifWithPlace()))).toMatchObject({ ok: false, problems: [{ code: 'refused' }] })
    expect(existsSync(join(folder, 'photos'))).toBe(false)
  })

  it('is refused when it is too large, either way', async () => {
    const wide = new Uint8Array([0xff, 0xd8, ...jfif, ...frame(2001, 30), ...scan, 0xff, 0xd9])
    const high = new Uint8Array([0xff, 0xd8, ...jfif, ...frame(40, 2000), ...scan, 0xff, 0xd9])
    expect(await save(wide)).toMatchObject({
      problems: [{ message: 'The photo is 2001 by 30 dots; at most 2000 either way are kept.' }],
    })
    expect(await save(high)).toMatchObject({ ok: true })
    expect(await save(new Uint8Array(1500 * 1024 + 1))).toMatchObject({
      problems: [{ message: 'The photo has 1501 kB; at most 1500 kB are kept.' }],
    })
  })

  it('is refused for a job that is not there, and when it is not written in base64', async () => {
    expect(await save(jpeg(), 'nobody')).toMatchObject({ ok: false, problems: [{ code: 'not-found' }] })
    expect(await desk.say('photo.save', { jobId, base64: 'abc' })).toMatchObject({
      problems: [{ code: 'invalid', path: 'base64' }],
    })
  })

  it('says so when something else changed its file', async () => {
    const { photoId } = await desk.ask('photo.save', { jobId, base64: base64(jpeg()) })
    await writeFile(join(folder, 'photos', jobId, `${photoId}.jpg`), jpeg(exifWithPlace()))
    expect(await desk.say('photo.read', { jobId, photoId })).toMatchObject({
      problems: [
        {
          code: 'io',
          message: `The file of the photo ${photoId} was changed by something else since it was kept.`,
        },
      ],
    })
  })

  it('cannot be asked for outside the folder', async () => {
    expect(await desk.say('photo.read', { jobId: '..', photoId: 'x' })).toMatchObject({
      problems: [{ code: 'invalid', path: 'jobId' }],
    })
  })
})
