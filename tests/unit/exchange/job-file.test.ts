import { describe, expect, it } from 'vitest'
import sample from '../../../resources/sample/two-rooms.job.json' with { type: 'json' }
import { job } from '../../../src-main/domain/job.ts'
import { jobFileSchema, sizedJobFile } from '../../../src-main/exchange/job-file.ts'
import { bedroomJob } from '../../job-for-tests.ts'

type Schema = {
  readonly type?: string
  readonly required?: readonly string[]
  readonly additionalProperties?: boolean
  readonly properties?: Readonly<Record<string, Schema>>
  readonly items?: Schema
  readonly $defs?: Readonly<Record<string, Schema>>
}

describe('the JSON Schema of a job file', () => {
  const schema = (jobFileSchema() as Schema).$defs?.['Job'] ?? {}

  it('asks for what every job has, and leaves the rest open', () => {
    expect(schema.type).toBe('object')
    const must = [
      'format',
      'version',
      'jobId',
      'title',
      'createdOn',
      'customer',
      'site',
      'survey',
      'rooms',
      'swaps',
    ]
    expect(schema.required?.toSorted()).toEqual(must.toSorted())
    expect(Object.keys(schema.properties ?? {})).toContain('options')
  })

  it('knows no field that the doors do not know, at any depth', () => {
    const loose: string[] = []
    const walk = (part: Schema, path: string) => {
      if (part.type === 'object' && part.properties !== undefined && part.additionalProperties !== false)
        loose.push(path)
      for (const [name, inner] of Object.entries(part.properties ?? {})) walk(inner, `${path}.${name}`)
      if (part.items !== undefined) walk(part.items, `${path}[]`)
    }
    walk(schema, 'job')
    expect(Object.keys(schema.properties ?? {}).length).toBeGreaterThan(8)
    expect(loose).toEqual([])
  })

  it('fits the sample: each of its fields is in the schema', () => {
    expect(job.parse(sample)).toEqual(sample)
    for (const name of Object.keys(sample)) expect(Object.keys(schema.properties ?? {})).toContain(name)
  })
})

describe('a job that is not one', () => {
  it.each([
    ['an unknown field', { ...sample, colour: 'red' }],
    ['another version', { ...sample, version: 2 }],
    ['a day that is none', { ...sample, createdOn: '2026-02-30' }],
    ['an id with a path in it', { ...sample, jobId: '../etc' }],
  ])('is refused: %s', (_, wrong) => {
    expect(job.safeParse(wrong).success).toBe(false)
  })
})

describe('a job file that came out too long', () => {
  const quotes = [{}, {}]
  const photos = [{}]
  it.each([
    [{ quotes }, 'With its 2 quotes the job', 'quotes', 'Take the job without its quotes.'],
    [{ quotes: [{}] }, 'With its quote the job', 'quotes', 'Take the job without its quotes.'],
    [{ quotes, photos }, 'With its photo and its 2 quotes the job', 'photos', /each in a file of its own/],
    [{ photos: [] }, 'With its 0 photos the job', 'photos', /the job without photos/],
  ])('says what is in it and what to leave out: %j', (beside, says, path, next) => {
    expect(sizedJobFile({ job: bedroomJob(), ...beside }, 10)).toMatchObject({
      ok: false,
      problems: [
        { code: 'refused', message: expect.stringContaining(says), path, next: expect.stringMatching(next) },
      ],
    })
  })
})
