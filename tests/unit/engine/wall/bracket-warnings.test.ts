import { describe, expect, it } from 'vitest'
import type { EmitterShape } from '../../../../src-main/domain/item.ts'
import { setOutWall } from '../../../../src-main/engine/wall/set-out-wall.ts'
import { defaultFigures } from '../../../figures-for-tests.ts'
import { bathroomWall, doublePanel, railInput, towelRail } from './walls-for-tests.ts'

const figures = defaultFigures('2026-11-25')
const longMm = figures.settings['wall.longEmitterMm']?.value ?? Number.NaN
const thinMm = figures.settings['wall.thinWallMm']?.value ?? Number.NaN
const wall = { ...bathroomWall, widthMm: 6000, finish: 'paint' as const, obstacles: [] }

/** The emitter 3000 from the left end, its bottom edge at 300. */
function warningsFor(emitter: EmitterShape, more: { readonly thicknessMm?: number } = {}) {
  const input = railInput({
    wall: { ...wall, ...more },
    emitter,
    centre: { kind: 'at', xMm: 3000 },
    pipes: [],
  })
  const out = setOutWall(input, figures)
  if (!out.ok) throw new Error(out.problems[0]?.message)
  return out.value.warnings.filter((says) => !says.startsWith('No pipe was surveyed'))
}

const oneHole = (name: string, acrossMm: number, upMm: number) => ({
  name,
  upper: upMm > 600,
  holes: [{ acrossMm, upMm }],
})
const rail = (...holes: readonly (readonly [acrossMm: number, upMm: number])[]): EmitterShape => ({
  ...towelRail,
  brackets: holes.map(([acrossMm, upMm], nth) => oneHole(`Bracket ${nth}`, acrossMm, upMm)),
})

describe('holes outside the emitter', () => {
  it('are named: beside it, below it and above it', () => {
    // The rail is 500 wide and 1200 high.
    const out = warningsFor(rail([-251, 1105], [250, 1200], [-250, 0], [200, -1], [0, 1201]))
    expect(out).toEqual([
      'Holes A1, D1 and E1 lie outside the emitter: check its brackets in the catalogue before drilling.',
    ])
    expect(warningsFor(rail([-200, 1105], [251, 95]))).toEqual([
      'Hole B1 lies outside the emitter: check its brackets in the catalogue before drilling.',
    ])
  })
})

describe('a very short emitter', () => {
  it('on brackets one above the other is warned of, and on two beside each other is not', () => {
    expect(warningsFor({ ...rail([0, 1105], [0, 95]), widthMm: 200, pipeCentresMm: 150 })).toEqual([
      'All its brackets stand in one upright line, so that it can tip sideways: check them in the catalogue.',
    ])
    expect(warningsFor({ ...rail([-40, 1105], [40, 95]), widthMm: 200, pipeCentresMm: 150 })).toEqual([])
  })
})

describe('a very long emitter', () => {
  const panel = (widthMm: number, ...across: readonly number[]): EmitterShape => ({
    ...doublePanel,
    widthMm,
    pipeCentresMm: widthMm + 90,
    brackets: across.map((acrossMm, nth) => ({
      name: `Strip ${nth}`,
      upper: true,
      holes: [480, 110].map((upMm) => ({ acrossMm, upMm })),
    })),
  })

  it('is told of a third bracket from the length at which it is usual, unless it has one', () => {
    expect(warningsFor(panel(longMm, -600, 600))).toEqual([
      `It is ${longMm} mm long and hangs on brackets at 2 places; from ${longMm} mm a third in the middle is usual.`,
    ])
    expect(warningsFor(panel(longMm - 1, -600, 600))).toEqual([])
    expect(warningsFor(panel(3000, -1300, 0, 1300))).toEqual([])
  })

  it('shares its load over the holes of all three', () => {
    const shearN = (emitter: EmitterShape) => {
      const out = setOutWall(
        railInput({ wall, emitter, centre: { kind: 'at', xMm: 3000 }, pipes: [], extraKg: 0 }),
        figures,
      )
      if (!out.ok) throw new Error(out.problems[0]?.message)
      return out.value.fixing.load.shearN
    }
    // 40 + 7.2 kg over six holes, g by the 3rd CGPM (1901).
    expect(shearN(panel(2000, -800, 0, 800))).toBeCloseTo((47.2 * 9.80665) / 6, 9)
  })
})

describe('a thin wall', () => {
  const usual = rail([-200, 1105], [200, 95])

  it('lets cables of its other side count here too, up to the thickness of the regulation', () => {
    expect(warningsFor(usual, { thicknessMm: thinMm })).toEqual([
      `The wall is ${thinMm} mm thick: cables may also run in it to sockets and switches on its other side (BS 7671, 522.6.202): look there too.`,
    ])
    expect(warningsFor(usual, { thicknessMm: thinMm + 1 })).toEqual([])
    expect(warningsFor(usual)).toEqual([])
  })
})
