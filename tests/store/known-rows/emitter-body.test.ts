import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bundledCatalogue } from '../../../src-main/desk/bundled-catalogue.ts'
import { item as itemSchema } from '../../../src-main/domain/item.ts'
import type { Emitter } from '../../../src-main/domain/item.ts'
import { emitterReader } from '../../../src-main/store/known-rows/emitter-body.ts'
import { itemOf, itemsOf } from '../../../src-main/store/items.ts'

const rail: Emitter = {
  itemId: 'rail-1',
  name: 'Straight towel rail',
  generic: true,
  alsoCalled: ['ladder rail'],
  retired: false,
  note: '',
  kind: 'emitter',
  form: { kind: 'towelRail', curve: 'straight', rungs: 20 },
  finish: 'chrome',
  widthMm: 500,
  heightMm: 1200,
  depthMm: 35,
  wallGapMm: 0,
  connectionOffWallMm: 70,
  pipeCentresMm: 450,
  ratedW: 377,
  rating: { flowC: 75, returnC: 65, roomC: 20 },
  exponent: 1.15,
  waterLitres: 4.6,
  dryKg: 8.5,
  brackets: [{ name: 'upper', upper: true, holes: [{ acrossMm: -190, upMm: 1105 }] }],
  tappings: [{ at: 'bottomLeft', thread: 'G1/2', holds: 'valve' }],
  box: [{ kind: 'plug', spec: { bitMm: 8, lengthMm: 50 }, count: 4, suits: ['solidMasonry'] }],
}
const forms: readonly Emitter['form'][] = [
  rail.form,
  { kind: 'towelRail', curve: 'curved', rungs: 1 },
  { kind: 'panel', panel: 'single' },
  { kind: 'panel', panel: 'tripleThreeFins' },
  { kind: 'column', columns: 3, sections: 10 },
]

const quick = (body: string) => emitterReader()(body, 'The item')
const bySchema = (body: string): unknown => {
  const parsed = itemSchema.safeParse(JSON.parse(body))
  return parsed.success ? parsed.data : 'refused'
}

/** Every field, and every one within it, by its path. */
function pathsIn(value: unknown, path: readonly string[] = []): readonly (readonly string[])[] {
  if (typeof value !== 'object' || value === null) return [path]
  return [path, ...Object.entries(value).flatMap(([field, inner]) => pathsIn(inner, [...path, field]))]
}

/** The same with another value in one place; undefined takes the field away. */
function put(value: unknown, [field, ...rest]: readonly string[], other: unknown): unknown {
  if (field === undefined) return other
  if (Array.isArray(value))
    return value.map((one, at) => (String(at) === field ? put(one, rest, other) : one))
  const fields = value as Readonly<Record<string, unknown>>
  return { ...fields, [field]: put(fields[field], rest, other) }
}

/** Values on both sides of every bound that an emitter's fields have. */
const edges: readonly unknown[] = [
  0,
  1,
  2,
  8,
  9,
  12,
  13,
  20,
  30,
  31,
  80,
  81,
  130,
  131,
  500,
  501,
  2000,
  2001,
  20_000,
  20_001,
  -1,
  -60,
  -61,
  0.5,
  1.5,
  1_000_000,
  1_000_001,
  1e300,
  -20_000,
  -20_001,
  100_000,
  100_001,
  '',
  ' ',
  'a',
  ' a',
  'a ',
  'a b',
  'a'.repeat(80),
  'a'.repeat(81),
  'a'.repeat(200),
  'a'.repeat(201),
  '.a',
  '00126',
  'white',
  'grey',
  'emitter',
  'vent',
  'panel',
  'column',
  'curved',
  'G1/2',
  '\u00a0a',
  'a\n',
  null,
  true,
  false,
  [],
  {},
  ['a'],
  [1],
  [' a'],
  Array.from({ length: 20 }, () => 'a'),
  Array.from({ length: 21 }, () => 'a'),
  ['a', ''],
  { flowC: 75 },
  undefined,
  ...forms,
]

describe('the body of an emitter, read without the schema', () => {
  it('is what the schema makes of it, for every emitter that is shipped', async () => {
    const { items } = await bundledCatalogue()
    const emitters = items.filter((item) => item.kind === 'emitter')
    expect(emitters.length).toBeGreaterThan(100)
    for (const emitter of emitters) {
      const body = JSON.stringify(emitter)
      expect(quick(body)).toStrictEqual(bySchema(body))
    }
  })

  it('is read so with each form, and with and without what may be absent', () => {
    for (const form of forms) {
      const body = JSON.stringify({ ...rail, form })
      expect(quick(body)).toStrictEqual({ ...rail, form })
    }
    const { alsoCalled, retired, note, rating, ...bare } = rail
    expect(quick(JSON.stringify(bare))).toStrictEqual(bare)
    const last = { ...bare, rating, note, retired, alsoCalled }
    expect(quick(JSON.stringify(last))).toStrictEqual(rail)
  })

  it('is accepted when the schema accepts it as it stands, refused when the schema refuses it: every field at every edge', () => {
    const all = pathsIn(rail).flatMap((path) => edges.map((other) => JSON.stringify(put(rail, path, other))))
    const bodies = all.filter((body) => body !== undefined)
    expect(bodies.length).toBeGreaterThan(2000)
    for (const body of bodies) {
      const truth = bySchema(body)
      const read = quick(body)
      if (truth === 'refused') expect(read, body).toBeNull()
      else if (read !== null) expect(read, body).toStrictEqual(truth)
      else expect(isAsKept(body, truth), body).toBe(false)
    }
  })

  it('is the same for any numbers, texts and forms', () => {
    const path = fc.constantFrom(...pathsIn(rail))
    const other = fc.oneof(fc.double(), fc.integer(), fc.string(), fc.jsonValue(), fc.constantFrom(...edges))
    fc.assert(
      fc.property(fc.array(fc.tuple(path, other), { minLength: 1, maxLength: 3 }), (changes) => {
        const changed = changes.reduce<unknown>((one, [where, value]) => {
          const body = JSON.stringify(one) ?? 'null'
          const whole: unknown = JSON.parse(body)
          return pathsIn(whole).some((has) => has.join() === where.join()) ? put(whole, where, value) : whole
        }, rail)
        const body = JSON.stringify(changed) ?? 'null'
        const truth = bySchema(body)
        const read = quick(body)
        if (truth === 'refused') expect(read).toBeNull()
        else if (read !== null) expect(read).toStrictEqual(truth)
        else expect(isAsKept(body, truth)).toBe(false)
      }),
      { numRuns: 2000 },
    )
  })

  it('has no field more than the schema knows', () => {
    expect(quick(JSON.stringify({ ...rail, colour: 'red' }))).toBeNull()
    expect(quick(JSON.stringify({ colour: 'red', ...rail }))).toBeNull()
    expect(quick(`{"__proto__":{},${JSON.stringify(rail).slice(1)}`)).toBeNull()
    expect(quick(JSON.stringify({ ...rail, form: { ...rail.form, panel: 'single' } }))).toBeNull()
  })

  it('shares what hangs on the wall and lies in the box with others that have the same, and nothing else', () => {
    const read = emitterReader()
    const one = read(JSON.stringify(rail), 'One')
    const same = read(JSON.stringify({ ...rail, itemId: 'rail-2', ratedW: 400 }), 'Same')
    const other = read(JSON.stringify({ ...rail, box: [] }), 'Other')
    expect([one?.itemId, same?.itemId, same?.ratedW, other?.box]).toEqual(['rail-1', 'rail-2', 400, []])
    expect(same?.brackets).toBe(one?.brackets)
    expect(same?.box).toBe(one?.box)
    expect(other?.brackets).not.toBe(one?.brackets)
    expect(Object.isFrozen(one?.brackets)).toBe(true)
  })

  it('is not taken apart at words that stand within a text', () => {
    const name = 'a,"brackets":[b'
    expect(quick(JSON.stringify({ ...rail, name }))).toStrictEqual({ ...rail, name })
  })
})

/** Whether the schema leaves a body as it is, an emitter with its brackets after another field: nothing trimmed, nothing put first. */
function isAsKept(body: string, truth: unknown): boolean {
  const value: unknown = JSON.parse(body)
  const isSame = JSON.stringify(value, sorted) === JSON.stringify(truth, sorted)
  return isSame && body.includes(',"brackets":[') && body.includes('"kind":"emitter"')
}

function sorted(_field: string, value: unknown): unknown {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value
  return Object.fromEntries(Object.entries(value).toSorted(([a], [b]) => (a < b ? -1 : 1)))
}

describe('a damaged row of an item', () => {
  const row = (body: string) => ({ item_id: 'rail-1', body })
  const sentence = 'The item rail-1 is not as it was saved'
  const whole = JSON.stringify(rail)

  it.each([
    ['cut short', whole.slice(0, -1)],
    ['cut short before its brackets', whole.slice(0, 200)],
    ['spoilt before its brackets', whole.replace('"ratedW":', '"ratedW";')],
    ['spoilt after them', whole.replace('"tappings":', '"tappings";')],
    ['without a size', whole.replace('"widthMm":500,', '')],
    ['with a size that cannot be', whole.replace('"widthMm":500', '"widthMm":-500')],
    ['with a bracket that cannot be', whole.replace('"upMm":1105', '"upMm":"1105"')],
    ['with a field of nobody', whole.replace('"generic":true', '"generic":true,"colour":"red"')],
    ['empty', ''],
  ])('is refused with its sentence, alone and among many: %s', (_how, body) => {
    expect(() => itemOf(row(body))).toThrow(sentence)
    expect(() => itemsOf([row(whole), row(body)])).toThrow(sentence)
  })

  it('is read by the schema when it is no emitter, or is not as we write it', () => {
    const vent = { itemId: 'vent-1', name: 'Vent', generic: true, kind: 'vent' as const }
    const spec = { thread: 'G1/2', sealing: 'oRing', finish: 'chrome' } as const
    const rows = [row(JSON.stringify({ ...vent, spec })), row(JSON.stringify({ ...rail, name: ' Rail ' }))]
    expect(itemsOf(rows)).toEqual([
      { ...vent, spec },
      { ...rail, name: 'Rail' },
    ])
  })
})
