import { mkdir, readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { AnswerOf } from '../../src-main/contract/requests.ts'
import { mostJobFileBytes, sizedJobFile } from '../../src-main/exchange/job-file.ts'
import { mostInputBytes } from '../../src-main/shell/read-json.ts'
import { bedroomJob } from '../job-for-tests.ts'
import { exifWithPlace, frame, jpeg, segment } from '../unit/desk/photos/jpeg-for-tests.ts'
import { askTerminal, removeFolder, tempFolder } from './doors-for-tests.ts'

let folder = ''
const data = { here: '', there: '' }
beforeAll(async () => {
  folder = await tempFolder()
  for (const name of ['here', 'there'] as const) {
    data[name] = join(folder, name)
    await mkdir(data[name])
  }
})
afterAll(() => removeFolder(folder))

const jobId = 'bedroom-1'
const base64 = (bytes: Uint8Array) => Buffer.from(bytes).toString('base64')
const small = jpeg()
const second = jpeg(frame(40, 30))

async function ask(name: string, input: unknown, dataFolder: string) {
  const file = join(folder, 'asked.json')
  await writeFile(file, JSON.stringify(input))
  return askTerminal([name, '--in', file, '--data', dataFolder])
}

function jobNaming(...photoIds: readonly string[]) {
  const job = bedroomJob({ swaps: [] })
  return {
    ...job,
    rooms: job.rooms.map((room) => ({ ...room, photos: photoIds.map((photoId) => ({ photoId })) })),
  }
}

describe('A job file with its photos, through the terminal', () => {
  it('is written to a file, read from it in another data folder, and its photos are the same bytes', async () => {
    const photos = [small, second].map((bytes, at) => ({ photoId: `photo-${at}`, base64: base64(bytes) }))
    const began = await ask('job.import', { job: jobNaming('photo-0', 'photo-1'), photos }, data.here)
    expect(began).toMatchObject({ code: 0, stderr: '' })
    const exported = await ask('job.export', { jobId, photos: true }, data.here)
    expect(exported).toMatchObject({ code: 0, stderr: '' })
    const file = join(folder, 'bedroom.job.json')
    await writeFile(file, exported.stdout)

    const taken = await askTerminal(['job.import', '--in', file, '--data', data.there])
    expect(JSON.parse(taken.stdout)).toEqual({ jobId, replaced: false, photos: 2 })
    for (const [at, bytes] of [small, second].entries())
      expect(await readFile(join(data.there, 'photos', jobId, `photo-${at}.jpg`))).toEqual(Buffer.from(bytes))
    const again = await ask('job.export', { jobId, photos: true }, data.there)
    expect(JSON.parse(again.stdout)).toEqual(JSON.parse(exported.stdout))
  })

  it('refuses a photo that is none, one that says where it was taken, and what is no photo of it at all', async () => {
    const empty = join(folder, 'empty')
    await mkdir(empty)
    const job = jobNaming('one', 'two')
    const given = [
      { photoId: 'one', base64: base64(Buffer.from('a letter, not a picture')) },
      { photoId: 'two', base64: base64(jpeg(exifWithPlace())) },
      { photoId: 'three', base64: base64(small) },
    ]
    const said = await ask('job.import', { job, photos: given }, empty)
    expect(said).toMatchObject({ code: 1, stdout: '' })
    const { problems } = JSON.parse(said.stderr) as { problems: readonly { path: string; message: string }[] }
    expect(problems.map(({ path }) => path)).toEqual([
      'photos[0].base64',
      'photos[1].base64',
      'photos[2].photoId',
    ])
    const wrong = await ask('job.import', { job, photos: [{ photoId: 'one', base64: 7 }] }, empty)
    expect(wrong.stderr).toContain('photos[0].base64')
    const listed = await ask('job.list', {}, empty)
    expect(JSON.parse(listed.stdout)).toEqual({ jobs: [] })
  })

  it('is refused, with how large it came out, where its photos make more than a door takes in', async () => {
    // Twelve photos of 1.3 MB each are 12 x 1.3 x 4 / 3 = 20.8 MB in base64.
    const picture = segment(0xe2, [...Buffer.from('ICC_PROFILE'), ...new Uint8Array(60_000)])
    const heavy = base64(jpeg(...Array.from({ length: 22 }, () => picture)))
    const ids = Array.from({ length: 12 }, (_, at) => `heavy-${at}`)
    const large = join(folder, 'large')
    await mkdir(join(large, 'photos', jobId), { recursive: true })
    await ask('job.import', { job: jobNaming(...ids) }, large)
    for (const id of ids)
      await writeFile(join(large, 'photos', jobId, `${id}.jpg`), Buffer.from(heavy, 'base64'))
    const said = await ask('job.export', { jobId, photos: true }, large)
    expect(said).toMatchObject({ code: 1, stdout: '' })
    expect(said.stderr).toMatch(
      /With its 12 photos the job makes a file of 2\d\.\d MB; a job file has at most 20\.0 MB\./,
    )
    expect((await ask('job.export', { jobId }, large)).code).toBe(0)
    const some = await ask('job.export', { jobId, photosOf: [] }, large)
    expect((JSON.parse(some.stdout) as AnswerOf<'job.export'>).photos).toEqual([])
  })

  it('may be as long as any door takes, to the byte', () => {
    expect(mostJobFileBytes).toBeLessThanOrEqual(mostInputBytes)
    const file = { job: bedroomJob(), photos: [{ photoId: 'a', base64: base64(small) }] }
    const bytes = Buffer.byteLength(`${JSON.stringify(file, null, 2)}\n`)
    expect(sizedJobFile(file, bytes).ok).toBe(true)
    expect(sizedJobFile(file, bytes - 1)).toMatchObject({
      ok: false,
      problems: [
        { code: 'refused', path: 'photos', message: expect.stringContaining('With its photo the job') },
      ],
    })
  })
})
