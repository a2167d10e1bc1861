import { describe, expect, it } from 'vitest'
import {
  pipeLoss as pipeLossRequest,
  waterFlow as waterFlowRequest,
} from '../../../../src-main/contract/heating/water.ts'
import { compressedWater } from '../../../../src-main/engine/water/compressed-water.ts'
import { darcyFriction } from '../../../../src-main/engine/water/friction-factor.ts'
import { pipeLoss } from '../../../../src-main/engine/water/pipe-loss.ts'
import { doseLitres, systemContent } from '../../../../src-main/engine/water/system-dose.ts'
import { waterFlow } from '../../../../src-main/engine/water/water-flow.ts'
import { waterProperties } from '../../../../src-main/engine/water/water-properties.ts'
import { waterViscosityPaS } from '../../../../src-main/engine/water/water-viscosity.ts'
import { answered, leavesOf, refused } from '../../../answered.ts'

describe('water', () => {
  it.each([0.9, 110.1, NaN, Infinity])('is refused at %d degrees', (waterC) => {
    expect(refused(waterProperties({ waterC })).path).toBe('waterC')
  })

  it('is no business of the bare equations where they do not hold', () => {
    expect(() => compressedWater({ kelvin: 200, pressureMPa: 0.1 })).toThrow('No liquid water')
    expect(() => waterViscosityPaS({ kelvin: 300, densityKgPerM3: 2000 })).toThrow('No viscosity')
  })
})

describe('a water flow', () => {
  it('carries the watts it was asked for', () => {
    const flow = answered(waterFlow({ watts: 1500, flowC: 70, returnC: 55 }))
    expect(flow.kgPerS * flow.heatCapacityJPerKgK * 15).toBeCloseTo(1500, 9)
    expect(((flow.litresPerMinute / 60_000) * flow.densityKgPerM3) / flow.kgPerS).toBeCloseTo(1, 12)
  })

  it('has every figure at the leaves of its reason, and fits the answer of its request', () => {
    const flow = answered(waterFlow({ watts: 1500, flowC: 70, returnC: 55 }))
    for (const figure of [1500, 70, 55, 62.5]) expect(leavesOf(flow.why)).toContain(figure)
    expect(waterFlowRequest.output.safeParse(flow).error).toBeUndefined()
  })

  it.each([
    [{ watts: 100, flowC: 50, returnC: 50 }, 'flowC'],
    [{ watts: 100, flowC: 40, returnC: 50 }, 'flowC'],
    [{ watts: 100, flowC: 120, returnC: 50 }, 'flowC'],
    [{ watts: 100, flowC: 50, returnC: 0 }, 'returnC'],
    [{ watts: 0, flowC: 60, returnC: 50 }, 'watts'],
    [{ watts: NaN, flowC: 60, returnC: 50 }, 'watts'],
  ])('is refused for %j', (input, path) => {
    expect(refused(waterFlow(input)).path).toBe(path)
  })
})

const pipe = { insideMm: 13.6, lengthM: 10, roughnessMm: 0.0015, meanC: 60, litresPerMinute: 5 }

describe('a pipe’s loss', () => {
  it('is the metre’s loss times the length, and the fittings’ share of the velocity pressure', () => {
    const plain = answered(pipeLoss(pipe))
    expect(plain.totalPa).toBeCloseTo(plain.perMetrePa * 10, 9)
    const { densityKgPerM3 } = answered(waterProperties({ waterC: 60 }))
    const fitted = answered(pipeLoss({ ...pipe, zetas: [1.5, 0.5] }))
    expect(fitted.totalPa - plain.totalPa).toBeCloseTo(densityKgPerM3 * plain.velocityMPerS ** 2, 9)
    expect(fitted.perMetrePa).toBe(plain.perMetrePa)
  })

  it('names how the water runs, and does not jump from one to the next', () => {
    const factor = (reynolds: number) => darcyFriction({ reynolds, relativeRoughness: 1e-4 })
    expect(factor(2299).regime).toBe('laminar')
    expect(factor(3000).regime).toBe('transition')
    expect(factor(4001).regime).toBe('turbulent')
    for (const border of [2300, 4000]) {
      const step = factor(border + 1e-6).frictionFactor - factor(border - 1e-6).frictionFactor
      expect(Math.abs(step)).toBeLessThan(1e-9)
    }
  })

  it('has every figure at the leaves of its reason, and fits the answer of its request', () => {
    const loss = answered(pipeLoss({ ...pipe, zetas: [0.7] }))
    for (const figure of [13.6, 10, 0.0015, 60, 5, 0.7]) expect(leavesOf(loss.why)).toContain(figure)
    expect(pipeLossRequest.output.safeParse(loss).error).toBeUndefined()
  })

  it.each([
    [{ insideMm: 0 }, 'insideMm'],
    [{ lengthM: -1 }, 'lengthM'],
    [{ litresPerMinute: 0 }, 'litresPerMinute'],
    [{ litresPerMinute: Number.MIN_VALUE }, 'litresPerMinute'],
    [{ insideMm: Number.MIN_VALUE, roughnessMm: 0 }, 'litresPerMinute'],
    [{ roughnessMm: -0.1 }, 'roughnessMm'],
    [{ roughnessMm: 1 }, 'roughnessMm'],
    [{ meanC: 0 }, 'meanC'],
    [{ zetas: [1, -1] }, 'zetas[1]'],
    [{ zetas: [NaN] }, 'zetas[0]'],
  ])('is refused for %j', (change, path) => {
    expect(refused(pipeLoss({ ...pipe, ...change })).path).toBe(path)
  })

  it('has no friction factor where there is no flow or too rough a pipe', () => {
    expect(() => darcyFriction({ reynolds: 0, relativeRoughness: 0 })).toThrow('No friction factor')
    expect(() => darcyFriction({ reynolds: 1e5, relativeRoughness: 0.06 })).toThrow('No friction factor')
  })
})

describe('a system’s content', () => {
  it('is what was surveyed, before any allowance', () => {
    const content = answered(systemContent({ surveyedLitres: 95, boilerKW: 24, litresPerKW: 11 }))
    expect(content).toMatchObject({ litres: 95, surveyed: true })
  })

  it('is an allowance by the boiler otherwise, and says so', () => {
    const content = answered(systemContent({ boilerKW: 24, litresPerKW: 11 }))
    expect(content).toMatchObject({ litres: 264, surveyed: false })
    expect(content.why.says).toContain('allowance')
  })

  it.each([
    [{ litresPerKW: 11 }, 'boilerKW'],
    [{ surveyedLitres: -1, litresPerKW: 11 }, 'surveyedLitres'],
    [{ boilerKW: -1, litresPerKW: 11 }, 'boilerKW'],
    [{ boilerKW: 24, litresPerKW: 0 }, 'litresPerKW'],
    [{ boilerKW: 24, litresPerKW: NaN }, 'litresPerKW'],
  ])('is refused for %j', (input, path) => {
    expect(refused(systemContent(input)).path).toBe(path)
  })
})

describe('a dose', () => {
  it('is for the share let out only, and carries the content’s reason', () => {
    const content = answered(systemContent({ boilerKW: 24, litresPerKW: 11 }))
    const input = { contentLitres: content.litres, contentWhy: content.why, treatedLitresPerLitre: 100 }
    const dose = answered(doseLitres({ ...input, drainedShare: 0.25 }))
    expect(dose.litres).toBeCloseTo(0.66, 12)
    for (const figure of [24, 11, 0.25, 100]) expect(leavesOf(dose.why)).toContain(figure)
    expect(answered(doseLitres({ ...input, drainedShare: 0 })).litres).toBe(0)
  })

  it.each([
    [{ contentLitres: -1, drainedShare: 1, treatedLitresPerLitre: 100 }, 'contentLitres'],
    [{ contentLitres: 1, drainedShare: 1.2, treatedLitresPerLitre: 100 }, 'drainedShare'],
    [{ contentLitres: 1, drainedShare: 1, treatedLitresPerLitre: 0 }, 'treatedLitresPerLitre'],
    [{ contentLitres: NaN, drainedShare: 1, treatedLitresPerLitre: 100 }, 'contentLitres'],
  ])('is refused for %j', (input, path) => {
    expect(refused(doseLitres(input)).path).toBe(path)
  })
})
