import { describe, expect, it } from 'vitest'
import { given } from '../../src-main/domain/derivation.ts'
import type { Figures } from '../../src-main/domain/figures.ts'
import { threadMajorMm } from '../../src-main/engine/takeoff/thread-sizes.ts'
import { fillOldHoles } from '../../src-main/engine/takeoff/rules/making-good/fill-old-holes.ts'
import { tapeOnThread } from '../../src-main/engine/takeoff/rules/seal/tape-on-thread.ts'
import { inhibitor } from '../../src-main/engine/takeoff/rules/water/inhibitor.ts'
import { named } from '../../src-main/engine/takeoff/rule.ts'
import { jobFacts } from '../../src-main/engine/takeoff/job-facts.ts'
import { defaultFigures } from '../figures-for-tests.ts'
import { bedroomJob } from '../job-for-tests.ts'
import { typical } from '../typical-asks.ts'

const delivered = defaultFigures('2026-11-25')

/** The delivered figures with some of them set for a check. */
function figuresWith(values: Readonly<Record<string, number>>): Figures {
  const settings = { ...delivered.settings }
  for (const [id, value] of Object.entries(values)) {
    const setting = settings[id]
    if (setting === undefined) throw new Error(`There is no setting ${id}`)
    settings[id] = { ...setting, value }
  }
  return { ...delivered, settings }
}

describe('threads are those of ISO 228 (threadchart.net, inches x 25.4)', () => {
  it.each([
    ['G1/2', 20.955],
    ['G3/4', 26.441],
  ] as const)('%s has a major diameter of %s mm', (thread, mm) => {
    expect(threadMajorMm[thread]).toBeCloseTo(mm, 3)
  })
  it.each([
    ['G3/8', 0.656],
    ['G1/4', 0.518],
    ['G1/8', 0.383],
  ] as const)('%s has a major diameter of %s in', (thread, inches) => {
    expect(threadMajorMm[thread] / 25.4).toBeCloseTo(inches, 3)
  })
})

describe('tape on a half-inch tail', () => {
  const metres = (turns: number) => {
    const figures = figuresWith({ 'seal.tapeTurnsCount': turns, 'seal.tapeOverlapRatio': 0 })
    return tapeOnThread.gives(typical.joint, named(figures, tapeOnThread.uses))[0]?.quantity ?? 0
  }

  it('a wrap is pi x 20.955 mm = 65.8 mm (circumference of ISO 228 G 1/2)', () => {
    expect(metres(1)).toBeCloseTo(0.0658, 4)
  })
  it('10 to 15 wraps take 0.66 to 0.99 m (wrap count: practice, no published source)', () => {
    expect(metres(10)).toBeCloseTo(0.66, 2)
    expect(metres(15)).toBeCloseTo(0.99, 2)
  })
  it('a 12 m roll does about 14 tails at 12.5 wraps (roll length and wraps: from memory)', () => {
    expect(Math.floor(12 / metres(12.5))).toBe(14)
  })
})

describe('volume of old holes, pi d squared L / 4 (worked out by hand for common plug holes)', () => {
  it.each([
    [5.5, 30, 0.713],
    [6, 35, 0.99],
    [7, 40, 1.539],
    [8, 50, 2.513],
    [10, 60, 4.712],
  ])('a hole of %s x %s mm holds %s ml', (diameterMm, depthMm, millilitres) => {
    const figures = figuresWith({ 'making.fillerWasteRatio': 0 })
    const ask = { ...typical.swap, oldHoles: { count: 1, diameterMm, depthMm } }
    const need = fillOldHoles.gives(ask, named(figures, fillOldHoles.uses))[0]
    expect(need?.quantity).toBeCloseTo(millilitres, 3)
  })
})

describe('water treatment', () => {
  it("a sealed system with steel panels holds 11 L for each kW of boiler (chemical supplier's instruction sheet)", () => {
    const { contentLitres: _, ...unsurveyed } = bedroomJob().survey.system
    const job = bedroomJob({ survey: { ...bedroomJob().survey, system: { ...unsurveyed, boilerKW: 15 } } })
    expect(jobFacts(job, [], delivered).job.contentLitres).toBe(165)
  })
  it('1 litre treats 100 litres (from memory): 112 litres take 1.12', () => {
    const ask = { ...typical.job, contentLitres: 112, contentWhy: given('Water', 112, 'L'), drainedShare: 1 }
    expect(inhibitor.gives(ask, named(delivered, inhibitor.uses))[0]?.quantity).toBeCloseTo(1.12, 6)
  })
})
