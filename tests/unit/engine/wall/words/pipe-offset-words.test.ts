import { describe, expect, it } from 'vitest'
import type { Pipe } from '../../../../../src-main/domain/wall.ts'
import { pipeOffset, remedyFor } from '../../../../../src-main/engine/wall/pipe-offset.ts'
import { pipeRun } from '../../../../../src-main/engine/wall/pipe-run.ts'
import { pipeWarnings } from '../../../../../src-main/engine/wall/pipe-warnings.ts'
import { readOut } from '../../../../why-for-tests.ts'
import { firmOf } from './firm-for-tests.ts'
import { doublePanel, floorPipe, towelRail } from '../walls-for-tests.ts'

const figures = firmOf()
const wallPipe: Pipe = { ...floorPipe('left', 500, 200), from: 'wall' }
const offset = (pipe: Pipe, xMm: number, yMm: number, emitter = towelRail) =>
  pipeOffset(pipe, { side: pipe.side, xMm, yMm }, { emitter, figures })
const clips = (length: readonly string[], count: number, setting = 'clipSpacingCopper15Mm: 500') => [
  ...length.map((line) => `  ${line}`),
  `  Clips along the new pipe, rounded up.: ${count}`,
  ...length.map((line) => `    ${line}`),
  `    ${setting} Mm (the firm)`,
]

describe('the reason of a pipe brought to its valve', () => {
  it('that goes straight in', () => {
    expect(readOut(offset(floorPipe('left', 500, 200), 500, 200).why)).toEqual([
      'The left valve sits over its pipe: it goes straight in.: 0 mm',
      '  Middle of the left valve, from the left end of the wall: 500 mm',
      '  The left pipe, from the left end of the wall: 500 mm (survey)',
      '  End of the left pipe, from the floor: 200 mm (survey)',
      '  Pipe entry of the valve, from the floor: 200 mm',
      '  valveReachMm: 3 Mm (the firm)',
      '  riseReachMm: 5 Mm (the firm)',
    ])
  })

  it('by a longer tail under a rail, and beside a panel', () => {
    const down = offset(floorPipe('right', 500, 200), 498, 230)
    expect(readOut(down.why)).toEqual([
      'The right valve sits 2 mm left of its pipe and 30 mm above its end: a tail 30 mm longer reaches it.: -2 mm',
      '  Middle of the right valve, from the left end of the wall: 498 mm',
      '  The right pipe, from the left end of the wall: 500 mm (survey)',
      '  End of the right pipe, from the floor: 200 mm (survey)',
      '  Pipe entry of the valve, from the floor: 230 mm',
      '  valveReachMm: 3 Mm (the firm)',
      '  riseReachMm: 5 Mm (the firm)',
      '  tailReachMm: 40 Mm (the firm)',
    ])
    expect(offset(floorPipe('left', 500, 200), 535, 200, doublePanel).why.says).toBe(
      'The left valve sits 35 mm right of its pipe: a tail 35 mm longer reaches it.',
    )
  })

  it('that is eased over, with what its material lets it', () => {
    const pulled = readOut(offset(floorPipe('left', 500, 200, { offWallMm: 65 }), 490, 200).why)
    // Connections 75 off the wall, the pipe 65.
    expect(pulled).toEqual([
      'The left valve sits 10 mm left of its pipe, 10 mm further out: the pipe is eased over.: -10 mm',
      '  Middle of the left valve, from the left end of the wall: 490 mm',
      '  The left pipe, from the left end of the wall: 500 mm (survey)',
      '  End of the left pipe, from the floor: 200 mm (survey)',
      '  Pipe entry of the valve, from the floor: 200 mm',
      '  The left pipe, off the wall: 65 mm (survey)',
      "  The emitter's connections, off the wall: 75 mm (catalogue)",
      '  valveReachMm: 3 Mm (the firm)',
      '  riseReachMm: 5 Mm (the firm)',
      '  tailReachMm: 40 Mm (the firm)',
      '  pullCopperMm: 15 Mm (the firm)',
    ])
    const near = offset(floorPipe('left', 500, 200, { offWallMm: 80 }), 500, 200)
    expect(near).toMatchObject({ outMm: -5, remedy: 'pull' })
    expect(near.why.says).toBe(
      'The left valve sits over its pipe, 5 mm nearer the wall: the pipe is eased over.',
    )
  })

  it('by an elbow at each turn from the floor', () => {
    // 300 across; riser 245 - 45 = 200; 500 is one clip's spacing.
    const { yMm: _, ...unmeasured } = floorPipe('left', 500, 0)
    const length = [
      'New pipe, middle to middle of its fittings.: 500 mm',
      '  Across, from the old pipe to the valve: 300 mm',
      '  Riser, from where the pipe is cut up to the valve.: 200 mm',
      '    Pipe entry of the valve, from the floor: 245 mm',
      '    stubMm: 45 Mm (the firm)',
      '    leastPieceMm: 50 Mm (the firm)',
    ]
    expect(readOut(offset(unmeasured, 200, 245).why)).toEqual([
      'The left valve sits 300 mm left of its pipe: it is cut and re-piped with 2 elbows, 500 mm of pipe.: -300 mm',
      '  Middle of the left valve, from the left end of the wall: 200 mm',
      '  The left pipe, from the left end of the wall: 500 mm (survey)',
      '  valveReachMm: 3 Mm (the firm)',
      '  riseReachMm: 5 Mm (the firm)',
      '  tailReachMm: 40 Mm (the firm)',
      '  pullCopperMm: 15 Mm (the firm)',
      '  Elbows: one at each turn.: 2',
      '  Couplers: one where new pipe goes on in a straight line.: 0',
      ...clips(length, 1),
    ])
  })

  it('by a coupler where it is only short, and without its pull where it is fixed', () => {
    const short = offset(floorPipe('left', 500, 100, { fixed: true }), 500, 235)
    const length = [
      'New pipe, middle to middle of its fittings.: 135 mm',
      '  From the end of the pipe up to the valve: 135 mm',
    ]
    expect(readOut(short.why)).toEqual([
      'The left valve sits over its pipe and 135 mm above its end: it is cut and re-piped with 1 coupler, 135 mm of pipe.: 0 mm',
      '  Middle of the left valve, from the left end of the wall: 500 mm',
      '  The left pipe, from the left end of the wall: 500 mm (survey)',
      '  End of the left pipe, from the floor: 100 mm (survey)',
      '  Pipe entry of the valve, from the floor: 235 mm',
      '  valveReachMm: 3 Mm (the firm)',
      '  riseReachMm: 5 Mm (the firm)',
      '  tailReachMm: 40 Mm (the firm)',
      '  Elbows: one at each turn.: 0',
      '  Couplers: one where new pipe goes on in a straight line.: 1',
      ...clips(length, 1),
    ])
  })

  it('along the wall, or at a slant where elbows do not go in', () => {
    // 300 along, 100 up, 75 out: 475. Plastic of 15 is clipped at 300: two.
    const turn = offset({ ...wallPipe, material: 'plastic' }, 800, 300)
    expect(readOut(turn.why).slice(9)).toEqual([
      '  Elbows: one at each turn.: 3',
      '  Couplers: one where new pipe goes on in a straight line.: 0',
      ...clips(
        [
          'New pipe, middle to middle of its fittings.: 475 mm',
          '  Along the wall, from the old pipe to the valve: 300 mm',
          '  Along the wall, from the old pipe to the valve: 100 mm',
          "  The emitter's connections, off the wall: 75 mm (catalogue)",
        ],
        2,
        'clipSpacingPlastic15Mm: 300',
      ),
    ])
    // hypot(120, 35) = 125, and 75 out.
    const slant = offset(wallPipe, 620, 235)
    expect(slant.why.says).toBe(
      'The left valve sits 120 mm right of its pipe and 35 mm above its end: it is cut and re-piped with 2 elbows, 200 mm of pipe.',
    )
    expect(readOut(slant.why).slice(11, 17)).toEqual([
      '  New pipe, middle to middle of its fittings.: 200 mm',
      '    Straight from the old pipe to the valve, for two elbows do not go in.: 125 mm',
      '      Along the wall, from the old pipe to the valve: 120 mm',
      '      Along the wall, from the old pipe to the valve: 35 mm',
      '      leastPieceMm: 50 Mm (the firm)',
      "    The emitter's connections, off the wall: 75 mm (catalogue)",
    ])
  })

  it('counts clips by what the pipe is made of, steel carried on in copper', () => {
    const run = (more: Partial<Pipe>) =>
      pipeRun(
        {
          pipe: floorPipe('left', 500, 0, more),
          miss: { acrossMm: 0, riseMm: 901, outMm: 0 },
          valveMm: 901,
          emitter: towelRail,
        },
        figures,
      )
    expect(run({ material: 'plastic' }).clips).toBe(4)
    expect(run({ material: 'copper' }).clips).toBe(2)
    expect(run({ material: 'steel', outsideMm: 22 }).clips).toBe(2)
    expect(run({ material: 'copper' }).pipeMm).toBe(901)
  })
})

describe('the gentlest remedy', () => {
  const of = (miss: Partial<Parameters<typeof remedyFor>[1]>, more: Partial<Pipe> = {}, under = true) =>
    remedyFor(
      { ...floorPipe('left', 0, 0), ...more },
      { acrossMm: 0, riseMm: 0, outMm: 0, ...miss },
      { under, figures },
    )

  it('is none within reach, to the reach itself', () => {
    expect([of({ acrossMm: 3 }), of({ acrossMm: -3, riseMm: 5 }), of({ outMm: 3 })]).toEqual([
      'none',
      'none',
      'none',
    ])
    expect([of({ acrossMm: 3.1 }), of({ outMm: -3.1 })]).toEqual(['pull', 'pull'])
    expect([of({ riseMm: 5.1 }), of({ riseMm: -500 })]).toEqual(['longerTail', 'none'])
    expect([of({ riseMm: 3 }, { from: 'wall' }), of({ riseMm: 3.1 }, { from: 'wall' })]).toEqual([
      'none',
      'longerTail',
    ])
    expect(of({ riseMm: -3.1 }, { from: 'wall' })).toBe('pull')
    expect(of({ acrossMm: 2, outMm: 3 })).toBe('pull')
    expect(of({ acrossMm: 1, outMm: 30 }, { from: 'wall' })).toBe('none')
  })

  it('is a longer tail down under an emitter, to its reach', () => {
    expect([of({ riseMm: 40 }), of({ riseMm: 40.1 })]).toEqual(['longerTail', 'repipe'])
    expect([of({ riseMm: 40, acrossMm: 3 }), of({ riseMm: 12, acrossMm: 3.1 })]).toEqual([
      'longerTail',
      'pull',
    ])
    expect(of({ riseMm: 40 }, {}, false)).toBe('repipe')
  })

  it('is a longer tail outwards beside an emitter, to its reach', () => {
    const beside = (miss: Parameters<typeof of>[0], more: Partial<Pipe> = {}) => of(miss, more, false)
    expect([beside({ acrossMm: 40 }), beside({ acrossMm: 40.1 })]).toEqual(['longerTail', 'repipe'])
    expect([beside({ acrossMm: -20 }), beside({ acrossMm: -20 }, { side: 'right' })]).toEqual([
      'repipe',
      'longerTail',
    ])
    expect([beside({ acrossMm: 20, outMm: 3 }), beside({ acrossMm: 20, outMm: -3.1 })]).toEqual([
      'longerTail',
      'repipe',
    ])
    expect([beside({ acrossMm: 20, riseMm: 5 }), beside({ acrossMm: 20, riseMm: 5.1 })]).toEqual([
      'longerTail',
      'repipe',
    ])
    expect(of({ acrossMm: 20 })).toBe('repipe')
    expect(beside({ riseMm: 20 })).toBe('repipe')
  })

  it('is a pull as far as the pipe gives, and not of one that is fixed', () => {
    expect([of({ acrossMm: -15 }), of({ acrossMm: -15.1 })]).toEqual(['pull', 'repipe'])
    expect([of({ acrossMm: -9, riseMm: 12 }), of({ acrossMm: -9.1, riseMm: 12 })]).toEqual(['pull', 'repipe'])
    expect([of({ acrossMm: -15 }, { fixed: true }), of({ acrossMm: -15 }, { fixed: false })]).toEqual([
      'repipe',
      'pull',
    ])
    expect([
      of({ acrossMm: -30 }, { material: 'plastic' }),
      of({ acrossMm: -4 }, { material: 'steel' }),
    ]).toEqual(['pull', 'repipe'])
  })
})

describe('what to mind about pipes', () => {
  const told = (pipes: readonly Pipe[], yMm = 235) => {
    const valves = [{ side: 'left' as const, xMm: 500, yMm }]
    const offsets = pipes.slice(0, 1).map((pipe) => offset(pipe, 500, yMm))
    return pipeWarnings({ pipes, valves, offsets }, figures)
  }

  it('a valve without a pipe, and a pipe whose end nobody measured', () => {
    expect(told([])).toEqual(['No pipe was surveyed on the left: how that valve is piped is not worked out.'])
    const { yMm: _, ...unmeasured } = floorPipe('left', 500, 0)
    expect(told([unmeasured])).toEqual([
      "The height of the left pipe's end was not surveyed: it is taken to reach its valve, 235 mm above the floor.",
    ])
    expect(told([floorPipe('left', 500, 235)])).toEqual([])
  })

  it('a second pipe on a side, and pipes that cross', () => {
    expect(told([floorPipe('left', 500, 235), floorPipe('left', 610, 235)])).toEqual([
      'There is more than one pipe on the left; the one 610 mm from the left end of the wall is left out.',
    ])
    expect(told([floorPipe('left', 500, 235), floorPipe('right', 499, 235)])).toEqual([
      'The left pipe stands to the right of the right one: check the survey, or the pipes cross.',
    ])
    expect(told([floorPipe('left', 500, 235), floorPipe('right', 500, 235)])).toEqual([])
  })

  it('too little height for a set-off', () => {
    const low = (yMm: number) =>
      `There is little height for a set-off under the left valve, ${yMm} mm above the floor: it may have to be made under the floor.`
    // Cut at 45, or where the pipe ends if that is lower; the shortest piece is 50.
    expect(told([floorPipe('left', 800, 200)], 94.9)).toEqual([low(94.9)])
    expect(told([floorPipe('left', 800, 200)], 95)).toEqual([])
    expect(told([floorPipe('left', 800, 20)], 69.9)).toEqual([low(69.9)])
    expect(told([floorPipe('left', 800, 20)], 70)).toEqual([])
    expect(told([{ ...floorPipe('left', 800, 20), from: 'wall' }], 60)).toEqual([])
    // Without an elbow there is no set-off; nor where the pipe goes straight in.
    expect(told([floorPipe('left', 500, 40)], 85.5)).toEqual([])
    expect(told([floorPipe('left', 500, 60)], 60)).toEqual([])
  })
})
