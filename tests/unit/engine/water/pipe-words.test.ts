import { describe, expect, it } from 'vitest'
import { pipeContent } from '../../../../src-main/engine/water/pipe-content.ts'
import { pipeLoss } from '../../../../src-main/engine/water/pipe-loss.ts'
import {
  valveKv,
  valveKvM3PerH,
  valveLoss,
  valveLossPa,
} from '../../../../src-main/engine/water/valve-loss.ts'
import { velocityWarning } from '../../../../src-main/engine/water/velocity-warning.ts'
import { waterProperties } from '../../../../src-main/engine/water/water-properties.ts'
import { answered, refused } from '../../../answered.ts'
import { defaultFigures } from '../../../figures-for-tests.ts'
import { readOut } from '../../../why-for-tests.ts'

const figures = defaultFigures('2026-11-25')
const outside = (waterC: number) => `Water must be between 1 and 110 °C; it was ${waterC} °C.`

describe('the reason of a pipe’s loss', () => {
  const pipe = { insideMm: 13.6, lengthM: 10, roughnessMm: 0.0015, meanC: 50, litresPerMinute: 5 }
  const shape = (input: Parameters<typeof pipeLoss>[0]) =>
    readOut(answered(pipeLoss(input)).why).map((line) => line.replace(/^(.*): [-\d.e+]+(?= |$)/, '$1:'))

  it('walks from the pressure to bore, roughness, water and each zeta', () => {
    const industrial = '(IAPWS-IF97 region 1, at 1 atmosphere)'
    const velocity = [
      'Velocity: flow / area of the bore: m/s',
      '  Water flow: L/min',
      '  Inside diameter: mm',
    ]
    const density = [`Density of water: kg/m³ ${industrial}`, '  Temperature of the water: °C']
    const pressure = [
      'Velocity pressure: density × velocity² / 2: Pa',
      ...[...velocity, ...density].map((line) => `  ${line}`),
    ]
    const inset = (by: number, lines: readonly string[]) => lines.map((line) => ' '.repeat(by) + line)
    expect(shape({ ...pipe, zetas: [0.7, 1.5] })).toEqual([
      'Pressure lost: pipe × length + fittings: Pa (Darcy-Weisbach)',
      '  Pipe, per metre: friction factor / bore × velocity pressure: Pa/m',
      '    Friction factor, turbulent: Colebrook-White:',
      '      Re: density × velocity × bore / viscosity:',
      ...inset(8, velocity),
      '        Inside diameter: mm',
      ...inset(8, density),
      '        Viscosity of water: Pa·s (IAPWS formulation 2008 for viscosity)',
      '          Temperature of the water: °C',
      '      Roughness: mm',
      '      Inside diameter: mm',
      '    Inside diameter: mm',
      ...inset(4, pressure),
      '  Length: m',
      '  Fittings: zetas added × velocity pressure: Pa',
      '    Zeta:',
      '    Zeta:',
      ...inset(4, pressure),
    ])
  })

  it('names how the water runs', () => {
    const regimeAt = (litresPerMinute: number) => shape({ ...pipe, litresPerMinute })[2]
    expect(regimeAt(0.5)).toBe('    Friction factor, laminar: 64 / Re:')
    expect(regimeAt(1)).toBe(
      '    Friction factor, between laminar at Re 2300 and turbulent at Re 4000: a straight line:',
    )
    expect(shape({ ...pipe, zetas: [] })).toContain('  Fittings: zetas added × velocity pressure: Pa')
  })

  it('of slow water is Hagen and Poiseuille’s: 128 × viscosity × length × flow / (π × bore⁴)', () => {
    const { viscosityPaS } = answered(waterProperties({ waterC: 50 }))
    const loss = answered(pipeLoss({ ...pipe, litresPerMinute: 0.5 }))
    const wanted = (128 * viscosityPaS * 10 * (0.5 / 60_000)) / (Math.PI * 0.0136 ** 4)
    expect(loss.totalPa).toBeCloseTo(wanted, 9)
    expect(loss.velocityMPerS).toBeCloseTo(0.5 / 60_000 / ((Math.PI / 4) * 0.0136 ** 2), 12)
  })

  it.each([
    [{ insideMm: 0 }, 'invalid', 'insideMm', 'This must be more than 0; it was 0.'],
    [{ lengthM: 0 }, 'invalid', 'lengthM', 'This must be more than 0; it was 0.'],
    [{ litresPerMinute: 0 }, 'invalid', 'litresPerMinute', 'This must be more than 0; it was 0.'],
    [
      { roughnessMm: 0.681 },
      'impossible',
      'roughnessMm',
      'The roughness must be 0 to 0.68 mm, 0.05 of the bore, for the friction law to hold; it was 0.681 mm. Drawn copper is about 0.0015 mm.',
    ],
    [
      { roughnessMm: -0.001 },
      'impossible',
      'roughnessMm',
      'The roughness must be 0 to 0.68 mm, 0.05 of the bore, for the friction law to hold; it was -0.001 mm. Drawn copper is about 0.0015 mm.',
    ],
    [{ meanC: 0.9 }, 'impossible', 'meanC', outside(0.9)],
    [{ meanC: 110.1 }, 'impossible', 'meanC', outside(110.1)],
    [{ zetas: [0, -0.1] }, 'invalid', 'zetas[1]', "A fitting's zeta must be 0 or more; it was -0.1."],
    [
      { litresPerMinute: 1e-15 },
      'impossible',
      'litresPerMinute',
      'A flow of 1e-15 L/min through a bore of 13.6 mm has no sense; check both.',
    ],
    [
      { litresPerMinute: 1e9 },
      'impossible',
      'litresPerMinute',
      'A flow of 1000000000 L/min through a bore of 13.6 mm has no sense; check both.',
    ],
  ])('is refused for %j', (change, code, path, message) => {
    expect(refused(pipeLoss({ ...pipe, ...change }))).toEqual({ code, path, message })
  })

  it('takes a smooth pipe, one as rough as the law holds, and water of 1 and of 110 degrees', () => {
    for (const change of [
      { roughnessMm: 0 },
      { insideMm: 10, roughnessMm: 0.5 },
      { meanC: 1 },
      { meanC: 110 },
    ])
      expect(pipeLoss({ ...pipe, ...change }).ok).toBe(true)
  })

  it('is refused where the loss passes what can be reckoned', () => {
    expect(refused(pipeLoss({ ...pipe, lengthM: 1e308 }))).toEqual({
      code: 'impossible',
      message: 'Such a flow through such a pipe loses more than can be reckoned; check bore and flow.',
    })
  })
})

describe('the reason of a run of pipe’s water', () => {
  const bores = [
    {
      material: 'copper',
      source: 'table C',
      sizes: [
        { outsideMm: 15, insideMm: 13.6 },
        { outsideMm: 22, insideMm: 20.2 },
      ],
    },
  ] as const

  // π / 4 × 20² × 10 / 1000 = π.
  it('by its bore, or by its size with the table it stands in', () => {
    const measured = answered(pipeContent({ insideMm: 20, lengthM: 10 }, []))
    expect(measured.litres).toBeCloseTo(Math.PI, 12)
    expect(readOut(measured.why)).toEqual([
      'Pipe, bore 20 mm: π / 4 × bore² × length: 3.14159 L',
      '  Bore: 20 mm',
      '  Length: 10 m',
    ])
    // π / 4 × 13.6² × 10 / 1000 = 1.45267.
    const sized = answered(pipeContent({ material: 'copper', outsideMm: 15, lengthM: 10 }, bores))
    expect(readOut(sized.why)).toEqual([
      'Pipe, copper 15 mm: π / 4 × bore² × length: 1.45267 L',
      '  Bore: 13.6 mm (table C)',
      '  Length: 10 m',
    ])
  })

  it.each([
    [
      { insideMm: 13.6, lengthM: -0.1 },
      'invalid',
      'lengthM',
      'A run of pipe must be 0 m long or more; it was -0.1.',
    ],
    [{ insideMm: 0, lengthM: 1 }, 'invalid', 'insideMm', 'The bore must be more than 0 mm; it was 0.'],
    [
      { material: 'copper', outsideMm: 28, lengthM: 1 },
      'not-found',
      'outsideMm',
      'The bore of copper 28 mm is not known; known sizes of copper are 15, 22. Give the bore itself.',
    ],
    [
      { material: 'steel', outsideMm: 15, lengthM: 1 },
      'not-found',
      'outsideMm',
      'The bore of steel 15 mm is not known; known sizes of steel are none. Give the bore itself.',
    ],
  ] as const)('is refused for %j', (run, code, path, message) => {
    expect(refused(pipeContent(run, bores))).toEqual({ code, path, message })
  })

  it('of no length is nothing', () => {
    expect(answered(pipeContent({ insideMm: 13.6, lengthM: 0 }, [])).litres).toBe(0)
  })
})

describe('the words of a valve', () => {
  it('name the standard for the loss and for the Kv', () => {
    const source = 'IEC 60534-2-1, incompressible, turbulent, not choked'
    const loss = answered(valveLoss({ kvM3PerH: 0.6, litresPerMinute: 1, meanC: 50 }))
    // 0.06 m3/h through Kv 0.6: a hundredth of a bar, times 0.98805.
    expect(loss.pa).toBeCloseTo(988.05, 2)
    expect(loss.why.source).toBe(source)
    expect(loss.why.from[2]?.says).toBe('Density of water')
    const kv = answered(valveKv({ litresPerMinute: 1, pa: loss.pa, meanC: 50 }))
    expect(kv.why.source).toBe(source)
    expect(kv.why.value).toBeCloseTo(0.6, 12)
    expect(kv.why.from[2]?.says).toBe('Density of water')
  })

  it('of the bare equations, where they do not hold', () => {
    const water = { litresPerMinute: 1, densityKgPerM3: 1000 }
    expect(() => valveLossPa({ ...water, kvM3PerH: -1 })).toThrow('No loss of a valve of Kv -1 at 1 L/min')
    expect(() => valveLossPa({ ...water, litresPerMinute: 0, kvM3PerH: 1 })).toThrow(
      'No loss of a valve of Kv 1 at 0 L/min',
    )
    expect(() => valveLossPa({ ...water, kvM3PerH: 1e-200 })).toThrow('No loss of a valve of Kv 1e-200')
    expect(() => valveKvM3PerH({ ...water, pa: -1 })).toThrow('No Kv that loses -1 Pa at 1 L/min')
    expect(() => valveKvM3PerH({ ...water, litresPerMinute: -2, pa: 1 })).toThrow(
      'No Kv that loses 1 Pa at -2 L/min',
    )
    expect(() => valveKvM3PerH({ litresPerMinute: 1e300, densityKgPerM3: 1e300, pa: 1e-300 })).toThrow(
      'No Kv',
    )
  })

  it('at the bounds of flow and pressure', () => {
    const at = (litresPerMinute: number, pa = 100) => valveKv({ litresPerMinute, pa, meanC: 50 })
    for (const held of [at(1e-9), at(1_000_000), at(1, 1e-6), at(1, 1e8)]) expect(held.ok).toBe(true)
    expect(refused(at(0.9e-9)).path).toBe('litresPerMinute')
    expect(refused(at(1_000_000.1)).path).toBe('litresPerMinute')
    expect(refused(at(1, 0.9e-6)).path).toBe('pa')
    expect(refused(at(1, 1.01e8))).toEqual({
      code: 'invalid',
      path: 'pa',
      message: 'The pressure must be 0.000001 to 100000000 Pa; it was 101000000.',
    })
  })
})

describe('a warning of the water’s speed', () => {
  // The firm's figures: up to 1 m/s is quiet in pipes between the two bores, and from 0.3 m/s air is carried along.
  const settings = (id: string, value: number) => ({
    [`hydraulics.${id}`]: { says: id, unit: '', value, source: 'test' },
  })
  const own = {
    ...figures,
    settings: {
      ...settings('smallBoreMm', 10),
      ...settings('largeBoreMm', 50),
      ...settings('noiseSmallBoreMPerS', 0.7),
      ...settings('noiseMPerS', 1),
      ...settings('noiseLargeBoreMPerS', 1.5),
      ...settings('airMPerS', 0.3),
    },
  }
  const at = (insideMm: number, velocityMPerS: number) => velocityWarning({ insideMm, velocityMPerS }, own)

  it('goes by the bore, and is none at the limits themselves', () => {
    for (const [insideMm, most] of [
      [10, 0.7],
      [10.1, 1],
      [50, 1],
      [50.1, 1.5],
    ] as const) {
      expect(at(insideMm, most)).toBeNull()
      expect(at(insideMm, most + 0.001)?.kind).toBe('noise')
    }
    expect(at(13.6, 0.3)).toBeNull()
    expect(at(13.6, 0.299)?.kind).toBe('air')
  })

  it('tells speed and limit, and what would be right', () => {
    expect(at(13.6, 1.234)).toEqual({
      kind: 'noise',
      message:
        'Water runs at 1.2 m/s here; above 1 m/s it may be heard. A wider pipe or less flow is quieter.',
    })
    expect(at(13.6, 0.1)).toEqual({
      kind: 'air',
      message:
        "Water runs at 0.1 m/s here; below 0.3 m/s it may leave air behind. Vent the pipe's high points.",
    })
  })
})
