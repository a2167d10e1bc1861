import { describe, expect, it } from 'vitest'
import { job as jobShape } from '../../../src-main/domain/job.ts'
import type { Job } from '../../../src-main/domain/job.ts'
import sample from '../../../resources/sample/two-rooms.job.json' with { type: 'json' }
import {
  curve,
  flowSpan,
  moved,
  pathOf,
  stepOf,
  tensBetween,
  ticksOf,
  topOf,
  xAt,
  yAt,
} from '../../../src-renderer/parts/flow-plot/geometry.ts'
import type { Plot } from '../../../src-renderer/parts/flow-plot/geometry.ts'
import { outputAt, roomHeatNow, warmFrom } from '../../../src-renderer/parts/flow-plot/room-output.ts'
import { staysAt, withFlow } from '../../../src-renderer/parts/flow-plot/use-for-house.ts'
import { crossingSays, readOut, staysSays } from '../../../src-renderer/parts/flow-plot/what-if.words.ts'
import { emitterForTests } from './emitter-for-tests.ts'

const job = jobShape.parse(sample)
const [rail, panel] = job.swaps
const catalogue = (railW: number, panelW: number) =>
  new Map([
    [rail?.emitterId ?? '', emitterForTests({ ratedW: railW })],
    [panel?.emitterId ?? '', emitterForTests({ ratedW: panelW })],
  ])
const roomOf = (of: Job, roomId: string, items = catalogue(480, 980)) => {
  const room = roomHeatNow(of, roomId, items)
  if (room === null) throw new Error(`${roomId} is not known`)
  return room
}

describe('a room at other flow temperatures', () => {
  it('crosses its need where the hand checks of the sample have it', () => {
    // By hand, EN 442 with the logarithmic mean, drop 10 K: 270.207 W from 480 W, n 1.3, in 22 °C: 59.29 °C.
    expect(warmFrom(roomOf(job, 'bathroom'), 80)).toBe(59.3)
    // 445.18 W from 980 W, n 1.3, in 18 °C: 50.47 °C.
    expect(warmFrom(roomOf(job, 'back-bedroom'), 80)).toBe(50.5)
  })
  it('gives 510.7 W of 1000 W at 55/45 in 20 °C: 1000 (29.72 / 49.83) ^ 1.3, by hand', () => {
    const at20 = { ...job, rooms: job.rooms.map((room) => ({ ...room, roomC: 20 })) }
    const { watts, why } = outputAt(roomOf(at20, 'bathroom', catalogue(1000, 1000)), 55)
    expect(watts).toBeCloseTo(510.7, 1)
    expect(why?.from).toHaveLength(1)
  })
  it('gives nothing where the return is no warmer than the room', () => {
    expect(outputAt(roomOf(job, 'bathroom'), 32)).toEqual({ watts: 0, why: null })
    expect(outputAt(roomOf(job, 'bathroom'), 33).watts).toBeGreaterThan(0)
  })
  it('counts what stays, as surveyed at the job’s own temperatures', () => {
    const rooms = job.rooms.map((room) => ({ ...room, otherEmittersW: 200 }))
    const alone = outputAt(roomOf(job, 'bathroom'), 60).watts
    expect(outputAt(roomOf({ ...job, rooms }, 'bathroom'), 60).watts).toBeCloseTo(alone + 200, 6)
  })
  it('has no crossing for a guess, nor where it stays short', () => {
    const rooms = job.rooms.map((room) => ({ ...room, heat: { volumeM3: 20, roughWPerM3: 30 } }))
    const rough = roomOf({ ...job, rooms }, 'bathroom')
    expect(rough.rough).toBe(true)
    expect(warmFrom(rough, 80)).toBeNull()
    expect(warmFrom(roomOf(job, 'bathroom', catalogue(100, 100)), 80)).toBeNull()
  })
  it('is not known while a figure is no figure or the emitter is not found', () => {
    expect(roomHeatNow(job, 'bathroom', new Map())).toBeNull()
    expect(roomHeatNow(job, 'nowhere', catalogue(480, 980))).toBeNull()
    const half = { ...job, rooms: job.rooms.map((room) => ({ ...room, roomC: 'warm' })) } as unknown as Job
    expect(roomHeatNow(half, 'bathroom', catalogue(480, 980))).toBeNull()
    const { system } = job.survey
    const level = { ...job, survey: { ...job.survey, system: { ...system, returnC: system.flowC } } }
    expect(roomHeatNow(level, 'bathroom', catalogue(480, 980))).toBeNull()
  })
})

describe('taking a temperature over', () => {
  const stays = { ...job, rooms: job.rooms.map((room) => ({ ...room, roomC: 20, otherEmittersW: 1000 })) }
  const rated = {
    ...stays,
    survey: { ...stays.survey, system: { ...stays.survey.system, flowC: 75, returnC: 65 } },
  }
  it('sets flow and return, keeps the drop and leaves the old job as it was', () => {
    const next = withFlow(job, 52.5, 10)
    expect(next.survey.system).toMatchObject({ flowC: 52.5, returnC: 42.5 })
    expect(job.survey.system).toMatchObject({ flowC: 60, returnC: 50 })
    expect(next.rooms).toEqual(job.rooms)
  })
  it('reckons what stays anew: 1000 W at 75/65 are 511 W at 55/45 in 20 °C, by hand', () => {
    expect(withFlow(rated, 55, 10).rooms.map(({ otherEmittersW }) => otherEmittersW)).toEqual([511, 511])
    expect(staysSays(staysAt(rated, 55, 10))).toBe(
      'What stays gives another heat then, and is set with it: Bathroom from 1,000 W to 511 W; Back bedroom from 1,000 W to 511 W.',
    )
    expect(staysSays(staysAt(rated, 75, 10))).toBeNull()
  })
  it('leaves nothing to what stays where the return falls to the room', () => {
    expect(withFlow(rated, 30, 10).rooms[0]?.otherEmittersW).toBe(0)
  })
})

describe('the plot', () => {
  const plot: Plot = {
    width: 300,
    height: 200,
    left: 50,
    right: 50,
    top: 20,
    bottom: 30,
    fromC: 30,
    toC: 80,
    mostW: 1000,
  }
  it('puts both scales from end to end', () => {
    expect([xAt(plot, 30), xAt(plot, 55), xAt(plot, 80)]).toEqual([50, 150, 250])
    expect([yAt(plot, 0), yAt(plot, 500), yAt(plot, 1000)]).toEqual([170, 95, 20])
  })
  it('steps by 1, 2 or 5 and a power of ten, five steps at most', () => {
    expect([1, 5, 6, 480, 1000, 1500, 2600].map(stepOf)).toEqual([0.2, 1, 2, 100, 200, 500, 1000])
    expect(topOf(480)).toBe(500)
    expect(topOf(500)).toBe(500)
    expect(ticksOf(1500)).toEqual([0, 500, 1000, 1500])
    expect(stepOf(0)).toBe(1)
  })
  it('names the tens between its ends', () => {
    expect(tensBetween(29, 80)).toEqual([30, 40, 50, 60, 70, 80])
    expect(tensBetween(30, 39)).toEqual([30])
  })
  it('draws a line through every whole degree and both ends', () => {
    const points = curve(30.5, 33, (flowC) => flowC * 10)
    expect(points.map(({ flowC }) => flowC)).toEqual([30.5, 31, 32, 33])
    expect(
      pathOf(
        plot,
        [points[0], points[3]].filter((one) => one !== undefined),
      ),
    ).toBe('M52 124.3L62 120.5')
  })
  it('tries no flow whose return would not warm the room, and holds the job’s own', () => {
    expect(flowSpan({ roomC: 22, spreadK: 10, flowC: 60 })).toEqual({ fromC: 33, toC: 80 })
    expect(flowSpan({ roomC: 22, spreadK: 10, flowC: 85 })).toEqual({ fromC: 33, toC: 85 })
    expect(flowSpan({ roomC: 22, spreadK: 20, flowC: 30.5 })).toEqual({ fromC: 30, toC: 80 })
  })
  it('moves by whole kelvins and stops at the ends', () => {
    const span = { fromC: 33, toC: 80 }
    expect([moved(50, 1, span), moved(50.5, -5, span), moved(79, 5, span), moved(34, -5, span)]).toEqual([
      51, 45.5, 80, 33,
    ])
  })
})

describe('the plot in words', () => {
  const room = { name: 'Bathroom', flowC: 50, spreadK: 10, loadW: 1000, rough: false }
  it('reads out both heats in both units, and what is short or to spare', () => {
    // 1 BTU/h = 1055.05585262 J / 3600 s (exact): 1000 W are 3412 BTU/h.
    expect(readOut({ ...room, outputW: 2000 })).toEqual([
      'At 50 °C flow and 40 °C return, the emitters in Bathroom give 2,000 W (6,824 BTU/h).',
      'The room needs 1,000 W (3,412 BTU/h).',
      'That is enough, with 1,000 W (3,412 BTU/h) to spare.',
    ])
    expect(readOut({ ...room, outputW: 0 })[2]).toBe('That is 1,000 W (3,412 BTU/h) short.')
    expect(readOut({ ...room, outputW: 0, rough: true })[1]).toContain('only by a guess')
  })
  it('says where the lines cross, or why no crossing is marked', () => {
    expect(crossingSays(50.5, false, 80)).toContain('warm from 50.5 °C flow')
    expect(crossingSays(null, false, 80)).toContain('not warm at any flow up to 80 °C')
    expect(crossingSays(null, true, 80)).toContain('A guess backs no flow temperature')
  })
})
