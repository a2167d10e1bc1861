import { existsSync } from 'node:fs'
import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { openDesk } from '../../../../src-main/desk/open-desk.ts'
import { putPhotos } from '../../../../src-main/desk/photos/put-photos.ts'
import { certain } from '../../../../src-main/domain/outcome.ts'
import type { Job } from '../../../../src-main/domain/job.ts'
import { bedroomJob } from '../../../job-for-tests.ts'
import { exifWithPlace, frame, jfif, jpeg, scan } from './jpeg-for-tests.ts'
import { routed } from './routed-for-tests.ts'
import type { Routed } from './routed-for-tests.ts'

const folders: string[] = []
const desks: Routed[] = []
let here: Routed
let there: Routed
let hereFolder = ''
let thereFolder = ''

async function deskIn(): Promise<readonly [Routed, string]> {
  const folder = await mkdtemp(join(tmpdir(), 'tailpiece-file-photos-'))
  const desk = routed(await openDesk({ dataFolder: folder, mayChoosePath: false }))
  folders.push(folder)
  desks.push(desk)
  return [desk, folder]
}
beforeEach(async () => {
  ;[here, hereFolder] = await deskIn()
  ;[there, thereFolder] = await deskIn()
})
afterEach(async () => {
  for (const desk of desks.splice(0)) await desk.close()
  for (const folder of folders.splice(0)) await rm(folder, { recursive: true, force: true })
})

const jobId = 'bedroom-1'
const base64 = (bytes: Uint8Array) => Buffer.from(bytes).toString('base64')
const small = jpeg()
const other = jpeg(frame(40, 30))
/** The eight bytes that every PNG begins with (ISO/IEC 15948, 5.2). */
const png = new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])

function jobNaming(...photoIds: readonly string[]): Job {
  const job = bedroomJob({ swaps: [] })
  const rooms = job.rooms.map((room) => ({ ...room, photos: photoIds.map((photoId) => ({ photoId })) }))
  return { ...job, rooms }
}

const filesOf = async (folder: string) => {
  const place = join(folder, 'photos', jobId)
  return existsSync(place) ? (await readdir(place)).toSorted() : []
}

/** Expects that nothing came in. */
async function expectNothing() {
  expect((await there.ask('job.list', {})).jobs).toEqual([])
  expect(await filesOf(thereFolder)).toEqual([])
}

describe('the photos of a job in its file', () => {
  it('come back in another data folder with the same bytes', async () => {
    await here.ask('job.save', { job: bedroomJob({ swaps: [] }) })
    const kept = await Promise.all(
      [small, other].map((bytes) => here.ask('photo.save', { jobId, base64: base64(bytes) })),
    )
    const ids = kept.map(({ photoId }) => photoId)
    const job = jobNaming(...ids)
    await here.ask('job.save', { job })
    const file = await here.ask('job.export', { jobId, photos: true })
    expect(file.photos?.map(({ photoId }) => photoId)).toEqual(ids)
    expect(await there.ask('job.import', file)).toEqual({ jobId, replaced: false, photos: 2 })
    expect((await there.ask('job.read', { jobId })).job).toEqual(job)
    expect(await filesOf(thereFolder)).toEqual(ids.map((id) => `${id}.jpg`).toSorted())
    for (const id of ids) {
      const [from, to] = [hereFolder, thereFolder].map((folder) => join(folder, 'photos', jobId, `${id}.jpg`))
      expect(await readFile(to ?? '')).toEqual(await readFile(from ?? ''))
    }
  })

  it('are in it only when they are asked for, and only those still kept', async () => {
    await here.ask('job.save', { job: bedroomJob({ swaps: [] }) })
    const { photoId } = await here.ask('photo.save', { jobId, base64: base64(small) })
    await here.ask('job.save', { job: jobNaming(photoId, 'gone') })
    expect(await here.ask('job.export', { jobId })).toEqual({ job: jobNaming(photoId, 'gone') })
    expect(await here.ask('job.export', { jobId, photos: false })).not.toHaveProperty('photos')
    const kept = [{ photoId, base64: base64(small) }]
    expect((await here.ask('job.export', { jobId, photos: true })).photos).toEqual(kept)
    const roomId = bedroomJob().rooms[0]?.roomId ?? ''
    expect((await here.ask('job.export', { jobId, photosOf: [roomId] })).photos).toEqual(kept)
    expect((await here.ask('job.export', { jobId, photosOf: [] })).photos).toEqual([])
    expect(await here.say('job.export', { jobId, photosOf: ['attic'] })).toMatchObject({
      problems: [
        {
          code: 'not-found',
          message: `The job has no room attic: it should be ${roomId}.`,
          path: 'photosOf[0]',
        },
      ],
    })
  })

  it('do not go out when something else changed their file', async () => {
    await here.ask('job.save', { job: bedroomJob({ swaps: [] }) })
    const { photoId } = await here.ask('photo.save', { jobId, base64: base64(small) })
    await here.ask('job.save', { job: jobNaming(photoId) })
    await writeFile(join(hereFolder, 'photos', jobId, `${photoId}.jpg`), jpeg(exifWithPlace()))
    expect(await here.say('job.export', { jobId, photos: true })).toMatchObject({
      ok: false,
      problems: [{ code: 'io', path: 'photoId' }],
    })
  })

  it('refuse the whole file, each with its place, when one is no whole picture or says where it was taken', async () => {
    const job = jobNaming('good', 'broken', 'drawing', 'told', 'text')
    const photos = [
      { photoId: 'good', base64: base64(small) },
      { photoId: 'broken', base64: base64(small.subarray(0, small.length - 4)) },
      { photoId: 'drawing', base64: base64(png) },
      { photoId: 'told', base64: base64(jpeg(exifWithPlace())) },
      { photoId: 'text', base64: 'no photo' },
    ]
    expect(await there.say('job.import', { job, photos })).toMatchObject({
      ok: false,
      problems: [
        {
          code: 'invalid',
          path: 'photos[1].base64',
          message: 'The photo is not a whole JPEG: it breaks off, or a part of it is damaged.',
        },
        {
          code: 'invalid',
          path: 'photos[2].base64',
          message: 'The photo is not a whole JPEG: it does not begin as a JPEG does.',
        },
        { code: 'refused', path: 'photos[3].base64' },
        {
          code: 'invalid',
          path: 'photos[4].base64',
          message: 'The photo is not written in base64: letters, figures, + and / in fours.',
        },
      ],
    })
    await expectNothing()
  })

  it('refuse the whole file when one is over-large, in kB or in dots', async () => {
    const wide = new Uint8Array([0xff, 0xd8, ...jfif, ...frame(2001, 30), ...scan, 0xff, 0xd9])
    const photos = [
      { photoId: 'heavy', base64: base64(new Uint8Array(1500 * 1024 + 1)) },
      { photoId: 'wide', base64: base64(wide) },
    ]
    expect(await there.say('job.import', { job: jobNaming('heavy', 'wide'), photos })).toMatchObject({
      problems: [
        { path: 'photos[0].base64', message: 'The photo has 1501 kB; at most 1500 kB are kept.' },
        {
          path: 'photos[1].base64',
          message: 'The photo is 2001 by 30 dots; at most 2000 either way are kept.',
        },
      ],
    })
    await expectNothing()
  })

  it('refuse a photo that no room names, and one that is there twice, also by capitals alone', async () => {
    const photos = ['a', 'nobody', 'A', 'a'].map((photoId) => ({ photoId, base64: base64(small) }))
    expect(await there.say('job.import', { job: jobNaming('a', 'A'), photos })).toMatchObject({
      problems: [
        {
          code: 'invalid',
          path: 'photos[1].photoId',
          message: 'No room of the job has the photo nobody: name it in a room’s photos, or leave it out.',
        },
        {
          code: 'invalid',
          path: 'photos[2].photoId',
          message: 'The photo A is in the file twice: it should be there once.',
        },
        { path: 'photos[3].photoId' },
      ],
    })
    await expectNothing()
  })

  it('leave nothing behind when the job itself is refused', async () => {
    const job = { ...jobNaming('a'), swaps: bedroomJob().swaps.map((swap) => ({ ...swap, roomId: 'attic' })) }
    const photos = [{ photoId: 'a', base64: base64(small) }]
    expect(await there.say('job.import', { job, photos })).toMatchObject({
      ok: false,
      problems: [{ path: 'job.swaps[0].roomId' }, { path: 'job.swaps[0].emitterId' }],
    })
    await expectNothing()
  })

  it('take the place of photos of the same name when the job is replaced, and leave the others', async () => {
    await there.ask('job.import', {
      job: jobNaming('a', 'b'),
      photos: ['a', 'b'].map((photoId) => ({ photoId, base64: base64(small) })),
    })
    const again = { job: jobNaming('a', 'b'), photos: [{ photoId: 'a', base64: base64(other) }] }
    expect(await there.say('job.import', again)).toMatchObject({ problems: [{ code: 'conflict' }] })
    expect(await readFile(join(thereFolder, 'photos', jobId, 'a.jpg'))).toEqual(Buffer.from(small))
    expect(await there.ask('job.import', { ...again, replace: true })).toEqual({
      jobId,
      replaced: true,
      photos: 1,
    })
    expect(await filesOf(thereFolder)).toEqual(['a.jpg', 'b.jpg'])
    expect(await readFile(join(thereFolder, 'photos', jobId, 'a.jpg'))).toEqual(Buffer.from(other))
    expect(await readFile(join(thereFolder, 'photos', jobId, 'b.jpg'))).toEqual(Buffer.from(small))
  })

  it('leave the old job as it is when they cannot be written', async () => {
    await there.ask('job.import', { job: jobNaming() })
    await mkdir(join(thereFolder, 'photos'))
    await writeFile(join(thereFolder, 'photos', jobId), 'a file where the folder should be')
    const said = await there.say('job.import', {
      job: { ...jobNaming('a'), title: 'Changed' },
      photos: [{ photoId: 'a', base64: base64(small) }],
      replace: true,
    })
    expect(said).toMatchObject({ ok: false, problems: [{ code: 'io', path: 'photos' }] })
    expect((await there.ask('job.read', { jobId })).job).toEqual(jobNaming())
  })

  it('can be taken back out of their places, where the old ones then stand again', async () => {
    await there.ask('job.import', {
      job: jobNaming('a'),
      photos: [{ photoId: 'a', base64: base64(small) }],
    })
    const opened = certain(await openDesk({ dataFolder: null, mayChoosePath: false }))
    const desk = { ...opened.desk(), dataFolder: thereFolder }
    const photos = ['a', 'b'].map((photoId) => ({ photoId, bytes: other }))
    const put = await putPhotos(desk, { jobId, photos })
    expect(await readFile(join(thereFolder, 'photos', jobId, 'a.jpg'))).toEqual(Buffer.from(other))
    await put.undo()
    expect(await filesOf(thereFolder)).toEqual(['a.jpg'])
    expect(await readFile(join(thereFolder, 'photos', jobId, 'a.jpg'))).toEqual(Buffer.from(small))
    await (await putPhotos(desk, { jobId, photos })).finish()
    expect(await filesOf(thereFolder)).toEqual(['a.jpg', 'b.jpg'])
    await opened.close()
  })
})
