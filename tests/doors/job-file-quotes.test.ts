import { createHash } from 'node:crypto'
import { mkdir, readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { AnswerOf } from '../../src-main/contract/requests.ts'
import { job as jobSchema } from '../../src-main/domain/job.ts'
import sample from '../../resources/sample/two-rooms.job.json' with { type: 'json' }
import { askTerminal, doorDay, removeFolder, tempFolder } from './doors-for-tests.ts'

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

const firm = { name: 'Sampleton Test Heating', addressLines: ['2 Example Row'] }
const job = { ...jobSchema.parse(sample), firm }
const { jobId } = job

async function ask(name: string, input: unknown, dataFolder: string) {
  const file = join(folder, 'asked.json')
  await writeFile(file, JSON.stringify(input))
  const said = await askTerminal([name, '--in', file, '--data', dataFolder])
  expect(said).toMatchObject({ code: 0, stderr: '' })
  return JSON.parse(said.stdout) as unknown
}

async function pdfOf(quoteId: string, dataFolder: string) {
  const out = join(folder, `${quoteId}.pdf`)
  await ask('quote.pdf', { quoteId, out }, dataFolder)
  return readFile(out)
}

describe('A job file with its issued quotes, through the terminal', () => {
  it('carries an accepted quote to another data folder: its PDF is the same bytes, and all that was noted stands', async () => {
    await ask('job.save', { job }, data.here)
    const issued = (await ask('quote.issue', { job }, data.here)) as AnswerOf<'quote.issue'>
    const { quoteId } = issued
    await ask('quote.mark', { quoteId, kind: 'accepted' }, data.here)
    const afterJob = {
      tasks: [],
      parts: [],
      variations: [],
      paidPence: 250_00,
      notes: 'Came back for a bleed',
    }
    await ask('afterJob.save', { quoteId, afterJob }, data.here)
    const before = await pdfOf(quoteId, data.here)
    expect(createHash('sha256').update(before).digest('hex')).toBe(issued.pdfHash)

    const exported = await ask('job.export', { jobId, quotes: true, photos: true }, data.here)
    const file = join(folder, 'two-rooms.job.json')
    await writeFile(file, JSON.stringify(exported))
    const taken = await askTerminal(['job.import', '--in', file, '--data', data.there])
    expect(taken).toMatchObject({ code: 0, stderr: '' })
    expect(JSON.parse(taken.stdout)).toEqual({ jobId, replaced: false, photos: 0, quotes: 1 })

    expect(await pdfOf(quoteId, data.there)).toEqual(before)
    expect(await ask('job.export', { jobId, quotes: true, photos: true }, data.there)).toEqual(exported)
    expect(await ask('afterJob.read', { quoteId }, data.there)).toEqual(
      await ask('afterJob.read', { quoteId }, data.here),
    )
    expect(await ask('quote.read', { quoteId }, data.there)).toMatchObject({
      quote: { state: 'accepted', since: doorDay },
      pdfHash: issued.pdfHash,
    })
    expect(await ask('quote.nextNumber', {}, data.there)).toEqual({ number: 'Q-2026-0002' })
    expect(await ask('afterJob.close', { quoteId }, data.there)).toMatchObject({ quoteId, closedOn: doorDay })
  })

  it('says where a PDF has changed, and takes nothing in', async () => {
    const file = join(folder, 'two-rooms.job.json')
    const written = JSON.parse(await readFile(file, 'utf8')) as AnswerOf<'job.export'>
    const base64 = Buffer.from('%PDF-1.7 another').toString('base64')
    const quotes = written.quotes?.map((quote) => ({ ...quote, pdf: { ...quote.pdf, base64 } }))
    const wrong = join(folder, 'wrong.job.json')
    await writeFile(wrong, JSON.stringify({ ...written, quotes }))
    const empty = join(folder, 'empty')
    await mkdir(empty)
    const said = await askTerminal(['job.import', '--in', wrong, '--data', empty])
    expect(said).toMatchObject({ code: 1, stdout: '' })
    expect(said.stderr).toContain('quotes[0].pdf.base64')
    expect(await ask('quote.list', {}, empty)).toEqual({ quotes: [] })
    expect(await ask('job.list', {}, empty)).toEqual({ jobs: [] })
  })
})
