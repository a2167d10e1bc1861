import { describe, expect, it } from 'vitest'
import type { Derivation } from '../../../../src-main/domain/derivation.ts'
import type { Figures, Fixing } from '../../../../src-main/domain/figures.ts'
import type { EmitterShape } from '../../../../src-main/domain/item.ts'
import { setOutSheet } from '../../../../src-main/documents/set-out-view.ts'
import { anchorEachHole } from '../../../../src-main/engine/takeoff/rules/fixings/anchor-each-hole.ts'
import { plugEachHole } from '../../../../src-main/engine/takeoff/rules/fixings/plug-each-hole.ts'
import { screwEachHole } from '../../../../src-main/engine/takeoff/rules/fixings/screw-each-hole.ts'
import { swapFacts } from '../../../../src-main/engine/takeoff/swap-facts.ts'
import { drillBits } from '../../../../src-main/engine/tools/rules/drill-bits.ts'
import { setOutWall } from '../../../../src-main/engine/wall/set-out-wall.ts'
import type { SetOutInput } from '../../../../src-main/engine/wall/set-out-wall.ts'
import { testEmitter } from '../../../documents/material-for-tests.ts'
import { defaultFigures } from '../../../figures-for-tests.ts'
import { bedroomJob } from '../../../job-for-tests.ts'
import { bathroomWall, doublePanel, panelInput, railInput, studWall } from './walls-for-tests.ts'

const defaults = defaultFigures('2026-11-25')

/** Fixings of the test's own, so that the loads are worked by hand. */
const anchor: Fixing = {
  fixingId: 'anchor',
  name: 'Anchor',
  builds: ['boardOnStuds'],
  holeMm: 10,
  depthMm: 60,
  anchor: { bitMm: 10 },
  allowedShearN: 90,
  allowedPullN: 20,
  source: 'the test',
}
const stud: Fixing = {
  fixingId: 'stud',
  name: 'Stud screw',
  builds: ['boardOnStuds'],
  intoStud: true,
  holeMm: 3,
  depthMm: 55,
  screw: { diameterMm: 5, lengthMm: 70 },
  allowedShearN: 300,
  allowedPullN: 200,
  source: 'the test',
}
const firm = (...fixings: readonly Fixing[]): Figures => ({ ...defaults, fixings })

/** The left pair of holes, 480 left of 1800, falls on the stud at 1320; the right pair, at 2280, between studs. */
const studs = { firstMm: 1320, spacingMm: 600, widthMm: 47 }
const light: EmitterShape = { ...doublePanel, dryKg: 8, waterLitres: 2 }
function halfOnStud(changes: Partial<SetOutInput> = {}): SetOutInput {
  return panelInput({ emitter: light, extraKg: 0, wall: { ...studWall, obstacles: [], studs }, ...changes })
}

function setOutOf(input: SetOutInput, figures: Figures) {
  const out = setOutWall(input, figures)
  if (!out.ok) throw new Error(out.problems[0]?.message)
  return out.value
}

function all(why: Derivation): readonly Derivation[] {
  return [why, ...why.from.flatMap(all)]
}

// m = 8 + 2 = 10 kg; weight 98.0665 N (3rd CGPM, 1901); four fixings: shear 24.516625 N each.
// e = 35 + 100 / 2 = 85, rise 480 - 110 = 370, two upper fixings: pull 98.0665 x 85 / (370 x 2) = 11.264395 N each.
const shearN = 98.0665 / 4
const pullN = (98.0665 * 85) / (370 * 2)

describe('each hole', () => {
  const out = setOutOf(halfOnStud(), firm(anchor, stud))

  it('has a screw into the stud where it falls on one, and an anchor where it does not', () => {
    expect(
      out.holes.map(({ id, fixing, drillMm, depthMm }) => [id, fixing?.fixingId, drillMm, depthMm]),
    ).toEqual([
      ['A1', 'stud', 3, 55],
      ['A2', 'stud', 3, 55],
      ['B1', 'anchor', 10, 60],
      ['B2', 'anchor', 10, 60],
    ])
  })

  it('is set beside what its own fixing may carry; lower holes bear no pull', () => {
    const use = out.holes.map(({ fixing }) => fixing?.useRatio ?? Number.NaN)
    expect(use[0]).toBeCloseTo(shearN / 300, 9) // 0.0817, more than the pull's 11.26 / 200 = 0.0563
    expect(use[1]).toBeCloseTo(shearN / 300, 9)
    expect(use[2]).toBeCloseTo(pullN / 20, 9) // 0.563
    expect(use[3]).toBeCloseTo(shearN / 90, 9) // 0.272
  })

  it('counts: the fixing that is used the most speaks for all', () => {
    expect(out.fixing).toMatchObject({ fixingId: 'anchor', name: 'Anchor', needsBoard: false })
    expect(out.fixing.load.pullUse).toBeCloseTo(pullN / 20, 9)
    const weak = setOutOf(
      halfOnStud(),
      firm({ ...anchor, allowedPullN: 2000 }, { ...stud, allowedPullN: 12 }),
    )
    expect(weak.fixing).toMatchObject({ fixingId: 'stud', name: 'Stud screw' })
    expect(weak.fixing.load.pullUse).toBeCloseTo(pullN / 12, 9)
  })

  it('has its reason: which holes, where, and each fixing that was tried', () => {
    const says = all(out.why).map((one) => one.says)
    expect(says).toContain('Each hole takes the fixing that suits its place.')
    expect(says).toContain('A1 and A2, on a stud, through painted wall.')
    expect(says).toContain('B1 and B2, through painted wall.')
    expect(says).toContain('Anchor: it holds.')
    expect(says).toContain('Stud screw: it holds.')
    expect(all(out.why).find((one) => one.says.startsWith('Each hole takes'))?.value).toBe(
      'Stud screw and Anchor',
    )
  })

  it('is warned of once: on the stud a screw, beside it the board alone', () => {
    expect(out.warnings).toEqual([
      'Holes B1 and B2 miss the studs and are held by the board alone.',
      'Holes A1 and A2 fall on a stud: there a screw into the timber takes the place of the anchor.',
    ])
  })

  it('of one kind has the plain reason, without a list of places', () => {
    const alone = setOutOf(halfOnStud({ wall: { ...studWall, obstacles: [] } }), firm(anchor, stud))
    const says = all(alone.why).map((one) => one.says)
    expect(says).toContain('The lightest fixing that holds.')
    expect(says).not.toContain('Each hole takes the fixing that suits its place.')
  })

  it('takes the next heavier fixing of its own kind alone', () => {
    const heavier = { ...anchor, fixingId: 'anchor-2', name: 'Heavy anchor', allowedPullN: 100 }
    const mixed = setOutOf(halfOnStud(), firm({ ...anchor, allowedPullN: 11 }, heavier, stud))
    expect(mixed.holes.map(({ fixing }) => fixing?.fixingId)).toEqual([
      'stud',
      'stud',
      'anchor-2',
      'anchor-2',
    ])
  })
})

describe('a backing board', () => {
  it('is called for when one kind of hole does not hold, or nothing suits it, and then no hole has a fixing of its own', () => {
    const weak = setOutOf(halfOnStud(), firm({ ...anchor, allowedPullN: 11 }, stud))
    expect(weak.fixing).toMatchObject({ fixingId: 'anchor', needsBoard: true, load: { holds: false } })
    expect(weak.holes.map((hole) => hole.fixing)).toEqual([undefined, undefined, undefined, undefined])
    const none = setOutOf(halfOnStud(), firm(anchor))
    expect(none.fixing).toMatchObject({ fixingId: 'anchor', needsBoard: true })
    const alone = setOutOf(halfOnStud(), firm(stud))
    expect(alone.fixing).toMatchObject({ fixingId: 'stud', needsBoard: true })
  })
})

describe('holes that are lower ones only', () => {
  /** Upper holes 300 from the centre, between studs; lower ones 480 from it, on the stud at 1320 and the one at 2280. */
  const emitter: EmitterShape = {
    ...light,
    brackets: [
      { name: 'Upper', upper: true, holes: [-300, 300].map((acrossMm) => ({ acrossMm, upMm: 480 })) },
      { name: 'Lower', upper: false, holes: [-480, 480].map((acrossMm) => ({ acrossMm, upMm: 110 })) },
    ],
  }
  const wall = { ...studWall, obstacles: [], studs: { firstMm: 1320, spacingMm: 480, widthMm: 47 } }
  // Studs at 1320, 1800 and 2280: uppers at 1500 and 2100 miss them.

  it('need not hold against any pull', () => {
    const out = setOutOf(halfOnStud({ emitter, wall }), firm(anchor, { ...stud, allowedPullN: 1 }))
    expect(out.fixing).toMatchObject({ fixingId: 'anchor', needsBoard: false })
    expect(out.holes.map(({ id, fixing }) => [id, fixing?.fixingId])).toEqual([
      ['A1', 'anchor'],
      ['A2', 'anchor'],
      ['B1', 'stud'],
      ['B2', 'stud'],
    ])
    expect(out.holes[2]?.fixing?.useRatio).toBeCloseTo(shearN / 300, 9)
    expect(all(out.why).map(({ says }) => says)).toContain(
      'The lower fixings carry weight alone, no pull: it holds in shear.',
    )
  })

  it('must hold their weight', () => {
    const at = (allowedShearN: number) =>
      setOutOf(halfOnStud({ emitter, wall }), firm(anchor, { ...stud, allowedShearN }))
    expect(at(shearN).fixing.needsBoard).toBe(false)
    const under = at(shearN - 0.01)
    expect(under.fixing).toMatchObject({
      fixingId: 'stud',
      needsBoard: true,
      load: { pullN: 0, pullUse: 0, holds: false },
    })
    expect(all(under.why).map(({ says }) => says)).toContain(
      'The lower fixings carry weight alone, no pull: it does not hold in shear.',
    )
  })

  it('bear the pull where every hole counts alike', () => {
    const even = { ...emitter, brackets: emitter.brackets.map((one) => ({ ...one, upper: false })) }
    const out = setOutOf(halfOnStud({ emitter: even, wall }), firm({ ...anchor, allowedPullN: 100 }, stud))
    // All four hold, about the bracket's foot.
    const footMm = defaults.settings['wall.bracketFootMm']?.value ?? Number.NaN
    expect(out.holes[2]?.fixing?.useRatio).toBeCloseTo((98.0665 * 85) / (footMm * 4) / 200, 9)
  })
})

describe('a part tiled wall', () => {
  const plug = (fixingId: string, finishes: Fixing['finishes']): Fixing => ({
    fixingId,
    name: `Plug ${fixingId}`,
    builds: ['solidMasonry'],
    ...(finishes === undefined ? {} : { finishes }),
    holeMm: 8,
    depthMm: 60,
    plug: { bitMm: 8, lengthMm: 50 },
    screw: { diameterMm: 6, lengthMm: 70 },
    allowedShearN: 900,
    allowedPullN: 900,
    source: 'the test',
  })
  const wall = { ...bathroomWall, obstacles: [], tiledToMm: 1200 }

  it('takes the fixing for tile below and the one for plaster above, where the figures tell them apart', () => {
    const out = setOutOf(railInput({ wall }), firm(plug('t', ['tile']), plug('p', ['paint', 'paper'])))
    expect(out.holes.map(({ id, fixing }) => [id, fixing?.fixingId])).toEqual([
      ['A1', 'p'],
      ['B1', 'p'],
      ['C1', 't'],
      ['D1', 't'],
    ])
    expect(all(out.why).map(({ says }) => says)).toContain('C1 and D1, through tile.')
  })

  it('is refused where one of the two has none', () => {
    const out = setOutWall(railInput({ wall }), firm(plug('t', ['tile'])))
    expect(out).toMatchObject({
      ok: false,
      problems: [
        {
          code: 'gap',
          message:
            "No fixing for solid masonry with a finish of paint is among the firm's figures; add one with the loads it may carry.",
        },
      ],
    })
  })
})

describe('what is asked for', () => {
  const job = bedroomJob()
  const [room] = job.rooms
  const [swap] = job.swaps
  if (room === undefined || swap === undefined) throw new Error('The test job is whole')
  const figures = firm(anchor, stud)
  const emitter = { ...testEmitter, ...light }
  const placed = (input: SetOutInput) => {
    const setOut = setOutOf(input, figures)
    return { swap: { ...swap, pipes: [] }, room, wall: input.wall, emitter, setOut }
  }
  const holesOf = (input: SetOutInput) => swapFacts(placed(input), job, figures).holes
  const use = { value: () => Number.NaN, why: () => ({ says: '', value: 0, from: [] }) }

  it('follows each hole: screws for the stud, anchors beside it, no plug', () => {
    const holes = holesOf(halfOnStud())
    const kinds = (rule: typeof anchorEachHole) => holes.map((hole) => rule.gives(hole, use).length)
    expect(kinds(anchorEachHole)).toEqual([0, 0, 1, 1])
    expect(kinds(screwEachHole)).toEqual([1, 1, 0, 0])
    expect(kinds(plugEachHole)).toEqual([0, 0, 0, 0])
    expect(holes.map((hole) => drillBits.gives(hole, use).map(({ name }) => name))).toEqual([
      ['Pilot bit for timber, 3 mm'],
      ['Pilot bit for timber, 3 mm'],
      ['Bit for board, 10 mm'],
      ['Bit for board, 10 mm'],
    ])
  })

  it('goes through tile first only where there is tile', () => {
    const wall = { ...studWall, obstacles: [], studs, finish: 'tile' as const, tiledToMm: 400 }
    // Upper holes at 150 + 480 = 630, lower ones at 260.
    const holes = holesOf(halfOnStud({ wall }))
    expect(holes.map((hole) => hole.wallFinish)).toEqual(['paint', 'tile', 'paint', 'tile'])
    const inTile = holes.filter((hole) => hole.wallFinish === 'tile' && hole.fixing.intoStud === true)
    expect(inTile.map((hole) => drillBits.gives(hole, use).map(({ name }) => name))).toEqual([
      ['Tile bit, 4 mm, for the pilot', 'Tile bit, 3 mm', 'Pilot bit for timber, 3 mm'],
    ])
    const { tiledToMm: _, ...whole } = wall
    expect(holesOf(halfOnStud({ wall: whole })).map((hole) => hole.wallFinish)).toEqual(
      Array.from({ length: 4 }, () => 'tile'),
    )
  })

  it('is an old set-out without fixings for each hole too', () => {
    const now = placed(halfOnStud())
    const holes = now.setOut.holes.map((hole) => {
      const { fixing: _, ...bare } = hole
      return bare
    })
    const old = { ...now, setOut: { ...now.setOut, holes } }
    expect(swapFacts(old, job, figures).holes.map((hole) => hole.fixing.name)).toEqual(
      Array.from({ length: 4 }, () => 'Anchor'),
    )
    expect(() => swapFacts(now, job, firm(anchor))).toThrow(
      'The set-out chose a fixing that is not there: stud',
    )
  })

  it('says on the sheet once what the emitter hits, though fit and set-out both say it', () => {
    const low = placed(halfOnStud({ bottomMm: 80 }))
    const hits = low.setOut.warnings.filter((says) => says.includes('to the floor'))
    expect(hits).toHaveLength(1)
    const { warnings } = setOutSheet({ ...low, swap, clashes: hits, jobCautions: [], lifts: [] })
    expect(warnings.filter((says) => says.includes('to the floor'))).toEqual(hits)
  })

  it('is on the sheet: each fixing with its holes, or one for all', () => {
    const sheet = (from: ReturnType<typeof placed>) =>
      setOutSheet({ ...from, swap, clashes: [], jobCautions: [], lifts: [] }).fixing.name
    expect(sheet(placed(halfOnStud()))).toBe('A1 and A2: Stud screw; B1 and B2: Anchor')
    expect(sheet(placed(halfOnStud({ wall: { ...studWall, obstacles: [] } })))).toBe('Anchor')
  })
})
