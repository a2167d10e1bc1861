import { describe, expect, it } from 'vitest'
import type { Obstacle } from '../../../../../src-main/domain/wall.ts'
import { clearances, clearOf, isClash, shows } from '../../../../../src-main/engine/wall/clashes.ts'
import { formOnWall, shapeOf } from '../../../../../src-main/engine/wall/emitter-on-wall.ts'
import { fitWall } from '../../../../../src-main/engine/wall/fit-wall.ts'
import { listInWords, mmInWords, roundedMm } from '../../../../../src-main/engine/wall/in-words.ts'
import { placeEmitter } from '../../../../../src-main/engine/wall/place-emitter.ts'
import { finiteInput } from '../../../../../src-main/engine/wall/wall-input.ts'
import type { PlaceInput } from '../../../../../src-main/engine/wall/wall-input.ts'
import { answered, refused } from '../../../../answered.ts'
import { testEmitter } from '../../../../documents/material-for-tests.ts'
import { readOut } from '../../../../why-for-tests.ts'
import { firmOf } from './firm-for-tests.ts'
import { bathroomWall, railInput } from '../walls-for-tests.ts'

const figures = firmOf()
const bare = { ...bathroomWall, obstacles: [] }
const at = (xMm: number) => ({ kind: 'at', xMm }) as const
const placed = (input: PlaceInput) => answered(placeEmitter(input, figures))
const obstacle = (more: Partial<Obstacle> = {}): Obstacle => ({
  obstacleId: 'o',
  name: 'Shelf',
  kind: 'shelf',
  xMm: 1000,
  yMm: 1600,
  widthMm: 300,
  heightMm: 30,
  ...more,
})

describe('numbers that could not be measured', () => {
  it.each([
    [{ a: NaN }, 'a'],
    [{ a: { b: [1, Infinity] } }, 'a.b[1]'],
    [{ a: -1e9 - 1 }, 'a'],
    [[{ a: 1e10 }], '[0].a'],
  ])('%j', (input, path) => {
    expect(refused(finiteInput(input))).toEqual({
      code: 'invalid',
      path,
      message: `${path} is not a number that can be worked with; give one that could be measured.`,
    })
  })

  it('a thousand million itself is let through, and what is no number', () => {
    const input = { a: 1e9, b: -1e9, c: null, d: 'NaN', e: undefined }
    expect(answered(finiteInput(input))).toBe(input)
  })
})

describe('the reasons of a fit', () => {
  const input = railInput({
    wall: { ...bare, skirtingHeightMm: 120, obstacles: [obstacle()] },
    centre: at(645),
  })
  const looked = () => clearances(input, placed(input), figures)

  // Bottom 300, top 1500, ends 395 and 895 of 1800, ceiling 2400; the shelf is 105 across and 100 up.
  it('tell every clearance with what is asked and what there is', () => {
    expect(looked().map((one) => readOut(one.why).filter((line) => !line.startsWith('    ')))).toEqual([
      [
        'The emitter has 300 mm to the floor; 100 mm is needed.: 300 mm',
        '  Bottom edge above the floor: 300 mm (survey)',
        '  clearFloorMm: 100 Mm (the firm)',
        '  valveDropUnderMm: 65 Mm (the firm)',
      ],
      [
        'The emitter has 180 mm to the skirting; 20 mm is needed.: 180 mm',
        '  Bottom edge above the floor: 300 mm (survey)',
        '  Height of the skirting: 120 mm (survey)',
        '  clearSkirtingMm: 20 Mm (the firm)',
      ],
      [
        'The emitter has 900 mm to the ceiling; 90 mm is needed.: 900 mm',
        '  Bottom edge above the floor: 300 mm (survey)',
        '  Height: 1200 mm (catalogue)',
        '  Height of the wall: 2400 mm (survey)',
        '  clearCeilingMm: 90 Mm (the firm)',
      ],
      [
        'The emitter has 395 mm to the left end of the wall; 50 mm is needed.: 395 mm',
        '  clearSideMm: 50 Mm (the firm)',
      ],
      [
        'The emitter has 905 mm to the right end of the wall; 50 mm is needed.: 905 mm',
        '  Width of the wall: 1800 mm (survey)',
        '  clearSideMm: 50 Mm (the firm)',
      ],
      [
        'The emitter has 105 mm to Shelf; 58 mm is needed.: 105 mm',
        '  Shelf, from the left end of the wall: 1000 mm (survey)',
        '  Shelf, from the floor: 1600 mm (survey)',
        '  Shelf, width: 300 mm (survey)',
        '  Shelf, height: 30 mm (survey)',
        '  clearShelfMm: 58 Mm (the firm)',
      ],
    ])
  })

  it('have no skirting where there is none', () => {
    for (const skirtingHeightMm of [undefined, 0]) {
      const plain = {
        ...input,
        wall: { ...bare, ...(skirtingHeightMm === undefined ? {} : { skirtingHeightMm }) },
      }
      expect(clearances(plain, placed(plain), figures).map((one) => one.with)).toEqual([
        'floor',
        'ceiling',
        'left end of the wall',
        'right end of the wall',
      ])
    }
  })

  it('look at an obstacle on each of its sides', () => {
    const have = (more: Partial<Obstacle>) => {
      const here = { ...input, wall: { ...bare, obstacles: [obstacle(more)] } }
      return clearances(here, placed(here), figures).at(-1)?.haveMm
    }
    // To the right, to the left, above and below an emitter from 395 to 895 and 235 to 1500; over it by 95.
    expect(have({ xMm: 900, yMm: 800 })).toBe(5)
    expect(have({ xMm: 80, yMm: 800 })).toBe(15)
    expect(have({ xMm: 500, yMm: 1512 })).toBe(12)
    expect(have({ xMm: 500, yMm: 180 })).toBe(25)
    expect(have({ xMm: 800, yMm: 1405, heightMm: 300 })).toBe(-95)
  })

  it('begin with centre, width and front, and say the first clash', () => {
    const fit = answered(fitWall(input, figures))
    expect([fit.why.says, fit.why.value]).toEqual(['It fits: every clearance is kept.', 'fits'])
    expect(fit.why.from.slice(0, 3).map(({ says }) => says)).toEqual([
      'The centre line is where it was put.',
      'Width on the wall, with the valves.',
      'How far it stands out.',
    ])
    expect(fit.why.from).toHaveLength(9)
    const low = answered(fitWall({ ...input, bottomMm: 99.9 }, figures))
    expect([low.why.says, low.why.value]).toEqual([
      'It does not fit: The emitter has 99.9 mm to the floor; 100 mm is needed.',
      'does not fit',
    ])
    expect(low.clashes[1]?.says).toBe('The emitter overlaps the skirting by 20.1 mm; 20 mm is needed clear.')
  })

  it('clash only where there is less than is asked', () => {
    expect([isClash({ needMm: 50, haveMm: 50 }), isClash({ needMm: 50, haveMm: 49.9 })]).toEqual([
      false,
      true,
    ])
    const touching = {
      ...input,
      wall: { ...bare, obstacles: [obstacle({ xMm: 895, clearanceMm: 0, yMm: 900 })] },
    }
    const last = clearances(touching, placed(touching), figures).at(-1)
    expect(last).toMatchObject({ haveMm: 0, says: 'The emitter has 0 mm to Shelf; 0 mm is needed.' })
  })

  it.each([
    ['window', 51],
    ['windowBoard', 52],
    ['door', 53],
    ['doorSwing', 10],
    ['socket', 54],
    ['switch', 55],
    ['mirror', 21],
    ['basin', 56],
    ['bath', 57],
    ['shelf', 58],
    ['cable', 59],
    ['pipeInWall', 31],
    ['other', 22],
  ] as const)('ask round a %s what the firm asks', (kind, value) => {
    expect(clearOf(obstacle({ kind }), figures).value).toBe(value)
    expect(shows({ kind })).toBe(kind !== 'cable' && kind !== 'pipeInWall')
    const own = clearOf(obstacle({ kind, clearanceMm: 7 }), figures)
    expect(readOut(own.why)).toEqual(['Clear space asked round Shelf: 7 mm (survey)'])
    expect(own.value).toBe(7)
  })
})

describe('what of an emitter the wall minds', () => {
  it('is its shape, with its rating only where it has one', () => {
    const { rating: _, ...unrated } = testEmitter
    expect(shapeOf(unrated)).not.toHaveProperty('rating')
    const rating = { flowC: 55, returnC: 45, roomC: 20 }
    expect(shapeOf({ ...unrated, rating }).rating).toEqual(rating)
  })

  it('is whether people lean on it, and whether it is curved', () => {
    const rail = (curve: 'straight' | 'curved') =>
      formOnWall({
        form: { ...testEmitter.form, kind: 'towelRail', curve } as Parameters<typeof formOnWall>[0]['form'],
      })
    expect(rail('curved')).toEqual({ curved: true })
    expect(rail('straight')).toEqual({ curved: false })
    expect(formOnWall({ form: testEmitter.form })).toEqual({ curved: false, extraKg: 0 })
  })
})

it('distances and names are read as a fitter says them', () => {
  expect([212.04, 212.06, -0.04, 0.05].map(mmInWords)).toEqual(['212 mm', '212.1 mm', '0 mm', '0.1 mm'])
  expect(Object.is(roundedMm(-0.04), 0)).toBe(true)
  expect([[], ['A1'], ['A1', 'B1'], ['A1', 'A2', 'B1']].map(listInWords)).toEqual([
    '',
    'A1',
    'A1 and B1',
    'A1, A2 and B1',
  ])
})
