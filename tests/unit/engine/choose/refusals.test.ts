import { describe, expect, it } from 'vitest'
import type { Emitter } from '../../../../src-main/domain/item.ts'
import { refusalsOf } from '../../../../src-main/engine/choose/refusals.ts'
import type { Screen } from '../../../../src-main/engine/choose/screen-emitters.ts'
import type { ObstacleLimit, WallLimits } from '../../../../src-main/engine/choose/wall-limits.ts'

/** A wall of 1800 x 2400 mm, the centre line in its middle, the bottom edge 150 mm up: round figures, made up here. */
const limits: WallLimits = {
  centreMm: 900,
  centrePerPipeCentres: 0,
  bottomMm: 150,
  widthMm: 1800,
  heightMm: 2400,
  skirtingMm: 0,
  needSideMm: 60,
  needFloorMm: 100,
  needSkirtingMm: 20,
  needCeilingMm: 100,
  valveSideMm: 60,
  valveBodyHalfMm: 20,
  dropUnderMm: 60,
  dropBesideMm: 20,
  obstacles: [],
}
const screen: Screen = {
  limits,
  at: { flowC: 55, returnC: 45, roomC: 20 },
  needW: 500,
  othersW: 0,
  share: 1,
  want: {},
}

type Sizes = {
  readonly widthMm?: number
  readonly heightMm?: number
  readonly pipeCentresMm?: number
  readonly givesW?: number
  readonly packPence?: number
  readonly form?: Emitter['form']
  readonly finish?: Emitter['finish']
  readonly brackets?: Emitter['brackets']
}
function reasons(sizes: Sizes, changes: Partial<Screen> = {}): readonly string[] {
  const { widthMm = 600, heightMm = 600, pipeCentresMm = 550, givesW = 900, packPence = 5000 } = sizes
  const { form = { kind: 'panel', panel: 'single' }, finish = 'white' } = sizes
  const { brackets = [{ name: 'left', upper: true, holes: [{ acrossMm: 0, upMm: 100 }] }] } = sizes
  const emitter = { widthMm, heightMm, form, finish, brackets }
  const one = { widthMm, heightMm, pipeCentresMm, valveSides: 3, givesW, packPence }
  return refusalsOf(emitter, one, { ...screen, ...changes }).map(({ says }) => says)
}
const among = (...obstacles: readonly ObstacleLimit[]) => ({ limits: { ...limits, obstacles } })
const board: ObstacleLimit = {
  name: 'Window board',
  kind: 'windowBoard',
  leftMm: 0,
  rightMm: 1800,
  lowMm: 720,
  highMm: 760,
  needMm: 50,
}

describe('why an emitter is not offered', () => {
  it('has nothing to say of one that heats, fits and is as wanted', () => {
    expect(reasons({})).toEqual([])
  })
  it('says how many watts are missing, and at which flow and return: 500 - 410', () => {
    expect(reasons({ givesW: 410 })).toEqual(['90 W short at 55/45'])
  })
  it('counts what the other emitters of the room give: 500 - 60 - 410', () => {
    expect(reasons({ givesW: 410 }, { othersW: 60 })).toEqual(['30 W short at 55/45'])
  })
  it('says by how much it is too wide: 1600 + 2 valves of 60 + 2 clear ends of 60 on 1800', () => {
    expect(reasons({ widthMm: 1600, pipeCentresMm: 1670 })).toEqual(['40 mm too wide for the wall'])
  })
  it('says to which end it comes too close when the wall is wide enough: centre at 350, half of 600, 60 clear', () => {
    expect(reasons({}, { limits: { ...limits, centreMm: 350 } })).toEqual([
      '10 mm too close to the left end of the wall',
    ])
    expect(reasons({}, { limits: { ...limits, centreMm: 1450 } })).toEqual([
      '10 mm too close to the right end of the wall',
    ])
  })
  it('says by how much it is too tall: 150 + 2200 + 100 clear under 2400', () => {
    expect(reasons({ heightMm: 2200 })).toEqual(['50 mm too tall for the wall'])
  })
  it('says that its valves need more room below than there is: 60 mm drop at 40 mm', () => {
    const low = { ...limits, bottomMm: 40, needFloorMm: 50 }
    expect(reasons({}, { limits: low })).toEqual(['hangs 20 mm too low: its valves need it'])
  })
  it('says that it sits too close to the skirting: 150 - 140 where 20 is asked', () => {
    expect(reasons({}, { limits: { ...limits, skirtingMm: 140 } })).toEqual([
      '10 mm too close to the skirting',
    ])
  })
  it('says what it hits, and by how much: its top at 750, the board from 720', () => {
    expect(reasons({}, among(board))).toEqual(['hits the window board by 30 mm'])
  })
  it('says what it is too close to: its top at 730, the board from 760, 50 asked', () => {
    const higher = { ...board, lowMm: 760, highMm: 800 }
    expect(reasons({ heightMm: 580 }, among(higher))).toEqual(['20 mm too close to the window board'])
  })
  it('names an obstacle that has a name of its own', () => {
    const socket = { ...board, kind: 'socket' as const, name: 'By the bed' }
    expect(reasons({}, among(socket))).toEqual(['hits the socket (By the bed) by 30 mm'])
  })
  it('says what was asked for instead', () => {
    const want = { kind: 'towelRail', finish: 'chrome', maxHeightMm: 500, maxWidthMm: 550 } as const
    expect(reasons({}, { want })).toEqual([
      'it is a panel radiator; a towel rail was asked for',
      'it is white; chrome was asked for',
      '100 mm taller than was asked for',
      '50 mm wider than was asked for',
    ])
  })
  it('says all that is wrong, not only the first thing', () => {
    expect(reasons({ givesW: 410, heightMm: 2200 }, among(board))).toEqual([
      '90 W short at 55/45',
      '50 mm too tall for the wall',
      // The board is 40 mm deep and lies within the emitter's height: out by its top, 760 - 90 up from the valves' drop.
      'hits the window board by 670 mm',
    ])
  })
  it('says when its listing is no use', () => {
    expect(reasons({ givesW: 0 })).toEqual([
      'the temperatures that it was rated at cannot be; correct its listing',
    ])
    expect(reasons({ packPence: -1 })).toEqual(['nobody asks a price for it today'])
    expect(reasons({ packPence: 0 })).toEqual([])
    expect(reasons({ brackets: [] })).toEqual(['its bracket holes are not listed, so it cannot be set out'])
  })
})
