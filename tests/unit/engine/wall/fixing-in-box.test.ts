import { describe, expect, it } from 'vitest'
import type { Derivation } from '../../../../src-main/domain/derivation.ts'
import type { Fixing } from '../../../../src-main/domain/figures.ts'
import type { Boxed, EmitterShape } from '../../../../src-main/domain/item.ts'
import { setOutWall } from '../../../../src-main/engine/wall/set-out-wall.ts'
import { defaultFigures } from '../../../figures-for-tests.ts'
import { bathroomWall, railInput, towelRail } from './walls-for-tests.ts'

function all(why: Derivation): readonly Derivation[] {
  return [why, ...why.from.flatMap(all)]
}

describe('the fixing packed with the emitter', () => {
  const plugOf = (bitMm: number, allowedPullN: number): Fixing => ({
    fixingId: `plug-${bitMm}`,
    name: `Plug ${bitMm}`,
    builds: ['solidMasonry'],
    holeMm: bitMm,
    depthMm: 60,
    plug: { bitMm, lengthMm: 50 },
    screw: { diameterMm: 6, lengthMm: 70 },
    allowedShearN: 900,
    allowedPullN,
    source: 'the test',
  })
  const wall = { ...bathroomWall, obstacles: [] }
  const boxOf = (bitMm: number, suits?: Boxed['suits']): readonly Boxed[] => [
    {
      kind: 'plug' as const,
      spec: { bitMm, lengthMm: 50 },
      count: 4,
      ...(suits === undefined ? {} : { suits }),
    },
    { kind: 'screw' as const, spec: { diameterMm: 6, lengthMm: 70 }, count: 4 },
  ]
  const chosen = (box: EmitterShape['box'], ...fixings: readonly Fixing[]) => {
    const input = railInput({ wall, emitter: { ...towelRail, box } })
    const out = setOutWall(input, { ...defaultFigures('2026-11-25'), fixings })
    if (!out.ok) throw new Error(out.problems[0]?.message)
    return [out.value.fixing.fixingId, all(out.value.why).some(({ says }) => says.startsWith('It is packed'))]
  }

  it('goes before a lighter one, if it is meant for this wall, is all there and holds', () => {
    const both = [plugOf(6, 900), plugOf(8, 900)] as const
    expect(chosen([], ...both)).toEqual(['plug-6', false])
    expect(chosen(boxOf(8), ...both)).toEqual(['plug-8', true])
    expect(chosen(boxOf(8, ['solidMasonry']), ...both)).toEqual(['plug-8', true])
    expect(chosen(boxOf(8, ['hollowBlock']), ...both)).toEqual(['plug-6', false])
    expect(chosen(boxOf(9), ...both)).toEqual(['plug-6', false])
    expect(chosen(boxOf(8).slice(0, 1), ...both)).toEqual(['plug-6', false])
    expect(chosen(boxOf(8).slice(1), ...both)).toEqual(['plug-6', false])
    expect(chosen(boxOf(8), plugOf(6, 900), plugOf(8, 0.1))).toEqual(['plug-6', false])
  })
})
