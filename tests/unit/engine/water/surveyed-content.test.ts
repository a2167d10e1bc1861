import { describe, expect, it } from 'vitest'
import { pipeContent } from '../../../../src-main/engine/water/pipe-content.ts'
import { surveyedContent } from '../../../../src-main/engine/water/surveyed-content.ts'
import type { SurveyedContentInput } from '../../../../src-main/engine/water/surveyed-content.ts'
import { deliveredBores as bores } from '../../../../src-main/desk/hydraulics/pipe-bores.ts'
import { answered, leavesOf, refused } from '../../../answered.ts'

const panels = [
  { name: 'Panel', waterLitres: 3, count: 8 },
  { name: 'Towel rail', waterLitres: 5.5 },
]
const runs = [
  { material: 'copper', outsideMm: 22, lengthM: 30 },
  { material: 'copper', outsideMm: 15, lengthM: 60 },
] as const
const whole = { emitters: panels, pipes: runs, boilerLitres: 2, litresPerKW: 11 }
const content = (input: SurveyedContentInput) => answered(surveyedContent(input, bores))

describe('the water in a run of pipe', () => {
  it('goes by the bore of its size', () => {
    // pi / 4 x 20.2 mm squared = 320.474 mm2: 0.320474 L/m.
    const { litres, why } = answered(pipeContent(runs[0], bores))
    expect(litres).toBeCloseTo(9.6142, 4)
    expect(leavesOf(why)).toEqual([20.2, 30])
    expect(why.says).toBe('Pipe, copper 22 mm: π / 4 × bore² × length')
    expect(why.from[0]?.source).toContain('EN 1057')
  })

  it('goes by the bore itself where that was measured', () => {
    const { litres, why } = answered(pipeContent({ insideMm: 10, lengthM: 10 }, bores))
    expect(litres).toBeCloseTo(0.785398, 6)
    expect(why.says).toBe('Pipe, bore 10 mm: π / 4 × bore² × length')
    expect(why.from[0]?.source).toBeUndefined()
    expect(answered(pipeContent({ insideMm: 10, lengthM: 0 }, [])).litres).toBe(0)
  })

  it('says which sizes are known when this one is not', () => {
    expect(refused(pipeContent({ material: 'plastic', outsideMm: 8, lengthM: 1 }, bores))).toEqual({
      code: 'not-found',
      message:
        'The bore of plastic 8 mm is not known; known sizes of plastic are 10, 15, 22, 28. Give the bore itself.',
      path: 'outsideMm',
    })
    expect(refused(pipeContent({ material: 'steel', outsideMm: 15, lengthM: 1 }, [])).message).toContain(
      'known sizes of steel are none.',
    )
  })

  it('refuses a bore of nothing and a length below nothing', () => {
    expect(refused(pipeContent({ insideMm: 0, lengthM: 1 }, bores))).toEqual({
      code: 'invalid',
      message: 'The bore must be more than 0 mm; it was 0.',
      path: 'insideMm',
    })
    expect(refused(pipeContent({ insideMm: 10, lengthM: -1 }, bores))).toEqual({
      code: 'invalid',
      message: 'A run of pipe must be 0 m long or more; it was -1.',
      path: 'lengthM',
    })
  })
})

describe('the water in a system, part by part', () => {
  it('adds emitters, pipes and boiler', () => {
    // 8 x 3 + 5.5 = 29.5; 30 m x 0.320474 + 60 m x 0.145267 = 9.61421 + 8.71602; boiler 2: 49.8302.
    const answer = content(whole)
    expect(answer.litres).toBeCloseTo(49.8302, 3)
    expect(answer.surveyed).toBe(true)
    expect(answer.says).toBe('Water in the system, as surveyed: emitters + pipes + boiler')
    expect(answer.parts.map(({ what, surveyed }) => [what, surveyed])).toEqual([
      ['emitters', true],
      ['pipes', true],
      ['boiler', true],
    ])
    expect(answer.parts.map(({ litres }) => Number(litres.toFixed(3)))).toEqual([29.5, 18.33, 2])
    expect(leavesOf(answer.why)).toEqual([3, 8, 5.5, 1, 20.2, 30, 13.6, 60, 2])
    expect(answer.why).toMatchObject({ says: answer.says, unit: 'L' })
  })

  it('allows for the rest by boiler output, less what was surveyed, and marks it', () => {
    // 18 kW x 11 L/kW = 198; emitters 29.5 and boiler 2 are known: 166.5 stand for the pipes.
    const answer = content({ emitters: panels, boilerLitres: 2, boilerKW: 18, litresPerKW: 11 })
    expect(answer.litres).toBe(198)
    expect(answer.surveyed).toBe(false)
    expect(answer.says).toBe('Water in the system: as surveyed, with an allowance for pipes')
    expect(answer.parts.at(-1)).toEqual({ what: 'allowance', litres: 166.5, surveyed: false })
    const rest = answer.why.from.at(-1)
    expect(rest?.says).toBe(
      'Allowance for the rest: boiler output × litres per kW, less what was surveyed, not below 0',
    )
    expect(rest?.from.map(({ says, value }) => [says, value])).toEqual([
      ['Boiler output', 18],
      ['Allowance', 11],
      ['What was surveyed', 31.5],
    ])
  })

  it('adds nothing where what was surveyed is as much as the allowance already, and says so', () => {
    const answer = content({ emitters: panels, boilerKW: 2, litresPerKW: 11 })
    expect(answer.litres).toBe(29.5)
    expect(answer.surveyed).toBe(false)
    expect(answer.says).toBe(
      'Water in the system: what was surveyed is already as much as the allowance for all of it, so nothing is added for pipes and boiler; survey that too',
    )
  })

  it('takes an empty list for none, not for unknown', () => {
    const bare = content({ emitters: [], pipes: [], boilerLitres: 0, litresPerKW: 11 })
    expect(bare).toMatchObject({ litres: 0, surveyed: true })
  })

  it.each([
    [
      { litresPerKW: 11, boilerKW: 18 },
      'emitters',
      'Give the emitters, the pipes or the water in the boiler.',
    ],
    [
      { emitters: panels, litresPerKW: 11 },
      'boilerKW',
      'Nobody surveyed the pipes and the boiler: give the boiler output to allow for that by, or what it holds.',
    ],
    [
      { ...whole, emitters: [{ name: 'Panel', waterLitres: -1 }] },
      'emitters[0].waterLitres',
      'The water in Panel must be 0 L or more; it was -1.',
    ],
    [
      { ...whole, emitters: [{ name: 'Panel', waterLitres: 1, count: -2 }] },
      'emitters[0].count',
      'The count must be 0 or more; it was -2.',
    ],
    [
      { ...whole, boilerLitres: -1 },
      'boilerLitres',
      'The water in the boiler must be 0 L or more; it was -1.',
    ],
    [{ ...whole, boilerKW: -1 }, 'boilerKW', 'The boiler output must be 0 kW or more; it was -1.'],
    [{ ...whole, litresPerKW: 0 }, 'litresPerKW', 'The allowance must be more than 0 L/kW; it was 0.'],
  ])('refuses what cannot be: %j', (input, path, message) => {
    expect(refused(surveyedContent(input, bores))).toEqual({ code: 'invalid', message, path })
  })

  it('names the run of pipe that is at fault, and figures that are none', () => {
    const pipes = [runs[0], { insideMm: -1, lengthM: 1 }]
    expect(refused(surveyedContent({ ...whole, pipes }, bores)).path).toBe('pipes[1].insideMm')
    expect(refused(surveyedContent({ ...whole, boilerLitres: Number.NaN }, bores)).path).toBe('boilerLitres')
    const past = { ...whole, emitters: [{ name: 'Sea', waterLitres: 1e308, count: 10 }] }
    expect(refused(surveyedContent(past, bores)).message).toBe(
      'These figures make more water than can be reckoned; check them.',
    )
  })
})
