import { describe, expect, it } from 'vitest'
import { requests } from '../../../src-main/contract/requests.ts'
import type { AnswerOf, InputOf } from '../../../src-main/contract/requests.ts'
import { catalogueOf } from '../../../src-main/desk/catalogue-of.ts'
import type { Desk } from '../../../src-main/desk/desk.ts'
import { answer } from '../../../src-main/desk/router.ts'
import type { Job, Swap } from '../../../src-main/domain/job.ts'
import type { Outcome } from '../../../src-main/domain/outcome.ts'
import sample from '../../../resources/sample/two-rooms.job.json' with { type: 'json' }
import { job as jobShape } from '../../../src-main/domain/job.ts'
import { answered, leavesOf, refused } from '../../answered.ts'

const desk: Desk = {
  today: '2026-11-25',
  now: () => '2026-11-25T19:00:00Z',
  store: null,
  dataFolder: null,
  papersFolder: '/nowhere',
  mayChoosePath: false,
}
const job = jobShape.parse(sample)

async function flow(input: InputOf<'job.flow'>): Promise<AnswerOf<'job.flow'>> {
  const value = answered((await answer('job.flow', input, desk)) as Outcome<AnswerOf<'job.flow'>>)
  expect(requests['job.flow'].output.safeParse(value).error).toBeUndefined()
  return value
}

/** Flow at which an emitter gives a load with a drop of 10 K, in closed form: LMTD = 49.8329 (load / rated)^(1/n). */
function closedFlowC(
  roomC: number,
  loadW: number,
  { ratedW, exponent }: { ratedW: number; exponent: number },
) {
  const excessK = (10 / Math.log(55 / 45)) * (loadW / ratedW) ** (1 / exponent)
  const ratio = Math.exp(10 / excessK)
  return roomC + (10 * ratio) / (ratio - 1)
}
const nextTenth = (flowC: number) => Math.ceil(flowC * 10) / 10

/**
 * By hand, outside -3 °C. Bathroom, 22 °C: wall 3.6 x 0.55 x 25 = 49.5; window 0.7 x 2.05 x 25 = 35.875; ceiling
 * 4.32 x 0.21 x 0.9 x 25 = 20.412; landing 4.3 x 1.85 x 4 = 31.82; air 0.34 x 1.5 x 10.4 x 25 = 132.6: 270.207 W.
 * Bedroom, 18 °C: 83.16 + 61.992 + 88.704 + 45.723 - 31.82 + 197.421 = 445.18 W.
 */
const bathW = 270.207
const bedroomW = 445.18

const changed = (change: (swap: Swap) => Partial<Swap>): Job => ({
  ...job,
  swaps: job.swaps.map((swap) => ({ ...swap, ...change(swap) })),
})

describe('the flow temperature of a job', () => {
  it('lists the sample’s rooms by the flow that each needs, before and after', async () => {
    const told = await flow({ job })
    expect(told).toMatchObject({ spreadK: 10, maxFlowC: 75 })
    // By hand: bathroom 480 W, n 1.3: 59.29 °C; bedroom 980 W: 50.47 °C.
    expect(told.before.rooms.map(({ roomId, flowC }) => [roomId, flowC])).toEqual([
      ['bathroom', 59.3],
      ['back-bedroom', 50.5],
    ])
    expect(told.before).toMatchObject({ backed: true, reachable: true, houseFlowC: 59.3, houseReturnC: 49.3 })
    expect(told.before.rooms[0]?.loadW).toBeCloseTo(bathW, 2)
    expect(told.before.rooms[1]?.loadW).toBeCloseTo(bedroomW, 2)
    const { items } = await catalogueOf(desk)
    const up = (index: number) => {
      const item = items.find(({ itemId }) => itemId === job.swaps[index]?.emitterId)
      if (item?.kind !== 'emitter') throw new Error('The sample names no emitter here')
      return item
    }
    const after = {
      bathroom: nextTenth(closedFlowC(22, bathW, up(0))),
      'back-bedroom': nextTenth(closedFlowC(18, bedroomW, up(1))),
    }
    expect(Object.fromEntries(told.after.rooms.map(({ roomId, flowC }) => [roomId, flowC]))).toEqual(after)
    expect(told.after.houseFlowC).toBe(Math.max(...Object.values(after)))
    expect(told.lowersK).toBeCloseTo(59.3 - Math.max(...Object.values(after)), 9)
  })

  it('ranks each swap done alone, and says what it does for its room', async () => {
    const { swaps, notJudged } = await flow({ job })
    expect(notJudged).toEqual([])
    expect(swaps.map(({ swapId }) => swapId)).toEqual(['bathroom-rail', 'bedroom-panel'])
    expect(swaps[0]).toMatchObject({ rank: 1, roomId: 'bathroom', roomBeforeC: 59.3 })
    expect(swaps[0]?.lowersK).toBeGreaterThan(0)
    // The bathroom holds the house whatever is done in the bedroom.
    expect(swaps[1]).toMatchObject({ rank: 2, lowersK: 0, after: { flowC: 59.3, worstRoom: 'Bathroom' } })
    expect(swaps[0]?.name).toMatch(/^Bathroom: /)
    expect(swaps[1]?.says).toContain('leaves the house at 59.3 °C')
  })

  it('adds up what the house needs, and says what it assumed', async () => {
    const { heat, assumed } = await flow({ job })
    expect(heat.watts).toBeCloseTo(bathW + bedroomW, 2)
    // The source warms the air once: half of 132.6 + 197.421 W is left out.
    expect(heat.sourceW).toBeCloseTo(bathW + bedroomW - (132.6 + 197.421) / 2, 2)
    expect(heat).toMatchObject({ rough: false, roughW: 0 })
    expect(assumed).toEqual([
      'The exponent of emitters that come down is taken as 1.3 (EN 15316, default table: radiator).',
      'The rated output of emitters that come down is taken as at 75/65/20 °C.',
      'No other emitter stays in Bathroom: the survey says nothing of one.',
      'No other emitter stays in Back bedroom: the survey says nothing of one.',
    ])
  })

  it('takes another drop and another highest flow', async () => {
    const told = await flow({ job, spreadK: 5, maxFlowC: 55 })
    expect(told).toMatchObject({ spreadK: 5, maxFlowC: 55 })
    expect(told.before.rooms[0]).toMatchObject({ roomId: 'bathroom', state: 'short' })
    expect(told.before).toMatchObject({ reachable: false, roomsShort: 1, worstRoom: 'Bathroom' })
    expect(told.before).not.toHaveProperty('houseFlowC')
    expect(told).not.toHaveProperty('lowersK')
    expect(told.before.says).toBe(
      'the house is not warm at the highest flow: one room is short, the worst is Bathroom.',
    )
    expect(leavesOf(told.why)).toEqual(expect.arrayContaining([5, 55]))
  })

  it('lets a rough room back nothing: it is there with the reason, and its swap is not judged', async () => {
    const rooms = job.rooms.map((room) =>
      room.roomId === 'bathroom' ? { ...room, heat: { volumeM3: 10.4, roughWPerM3: 45 } } : room,
    )
    const told = await flow({ job: { ...job, rooms } })
    for (const house of [told.before, told.after]) {
      expect(house.backed).toBe(false)
      expect(house).not.toHaveProperty('houseFlowC')
      expect(house.worstRoom).toBe('Back bedroom')
      expect(house.rooms.at(-1)).toMatchObject({ roomId: 'bathroom', state: 'rough' })
      expect(house.rooms.at(-1)).not.toHaveProperty('flowC')
      expect(house.rooms.at(-1)?.says).toContain('only by a guess')
      expect(house.says).toContain('That is not the whole house: Bathroom cannot be judged.')
    }
    expect(told.before.flowC).toBe(50.5)
    expect(told).not.toHaveProperty('lowersK')
    expect(told.notJudged.map(({ swapId, roomId }) => [swapId, roomId])).toEqual([
      ['bathroom-rail', 'bathroom'],
    ])
    expect(told.swaps.map(({ swapId }) => swapId)).toEqual(['bedroom-panel'])
    expect(told.swaps[0]?.says).toContain('the measured rooms')
    expect(told.heat).toMatchObject({ rough: true, roughW: 468 })
  })

  it('does not judge a room as it is while nobody knows what comes down', async () => {
    const unknown = changed(({ swapId, existing }) => {
      if (swapId !== 'bathroom-rail' || existing === undefined) return {}
      const { ratedW: _, ...rest } = existing
      return { existing: rest }
    })
    const told = await flow({ job: unknown })
    expect(told.before.rooms.at(-1)).toMatchObject({ roomId: 'bathroom', state: 'notSurveyed' })
    expect(told.before.rooms.at(-1)?.says).toMatch(
      /^Bathroom is not judged as it is: nobody surveyed the output of what Bathroom: .* takes the place of\.$/,
    )
    expect(told.before.backed).toBe(false)
    expect(told.after.backed).toBe(true)
    expect(told.after.houseFlowC).toBe((await flow({ job })).after.houseFlowC)
    expect(told.notJudged[0]?.says).toContain('is not judged: Bathroom is not judged as it is')
  })

  it('does not judge a room of whose emitters nobody said anything, before or after', async () => {
    const told = await flow({ job: { ...job, swaps: job.swaps.slice(1) } })
    for (const house of [told.before, told.after]) {
      expect(house.rooms.at(-1)).toMatchObject({ roomId: 'bathroom', state: 'notSurveyed' })
      expect(house.rooms.at(-1)?.says).toBe(
        'Bathroom is not judged: nobody surveyed its emitters. Give the heat of those that stay.',
      )
    }
    expect(told.swaps[0]?.says).toContain('the measured rooms')
  })

  it('counts emitters that stay, at the flow and return at which they were surveyed', async () => {
    // All that the bathroom needs, from one that stays, at 60/50: that is the flow it asks for with a drop of 10 K.
    const stays = (watts: number): Job => ({
      ...job,
      rooms: job.rooms.map((room) =>
        room.roomId === 'bathroom' ? { ...room, otherEmittersW: watts } : room,
      ),
      swaps: job.swaps.slice(1),
    })
    const told = await flow({ job: stays(Math.ceil(bathW)) })
    expect(told.after.rooms.find(({ roomId }) => roomId === 'bathroom')?.flowC).toBe(60)
    expect(told.assumed[0]).toBe(
      'The exponent of emitters that come down and emitters that stay is taken as 1.3 (EN 15316, default table: radiator).',
    )
    expect((await flow({ job: stays(0) })).after.rooms[0]).toMatchObject({ state: 'noEmitters' })
  })

  it('lowers what an emitter gives by the swap’s factors', async () => {
    const plain = (await flow({ job })).after.rooms.find(({ roomId }) => roomId === 'bathroom')?.flowC ?? 0
    const covered = changed(({ swapId }) =>
      swapId === 'bathroom-rail' ? { factors: [{ name: 'Towels', value: 0.8 }] } : {},
    )
    const told = await flow({ job: covered })
    const item = (await catalogueOf(desk)).items.find(({ itemId }) => itemId === job.swaps[0]?.emitterId)
    if (item?.kind !== 'emitter') throw new Error('The sample names no emitter here')
    const less = { ratedW: 0.8 * item.ratedW, exponent: item.exponent }
    const flowC = told.after.rooms.find(({ roomId }) => roomId === 'bathroom')?.flowC
    expect(flowC).toBe(nextTenth(closedFlowC(22, bathW, less)))
    expect(flowC).toBeGreaterThan(plain)
  })

  it('says so where the new emitter takes the place of nothing', async () => {
    const told = await flow({ job: changed(() => ({ existing: undefined })) })
    expect(told.before.rooms.map(({ state }) => state)).toEqual(['noEmitters', 'noEmitters'])
    expect(told.before.says).toContain('2 rooms are short')
    expect(told.after.backed).toBe(true)
    expect(told.assumed).not.toContain(
      'The rated output of emitters that come down is taken as at 75/65/20 °C.',
    )
  })
})

describe('a job whose flow temperature cannot be worked out', () => {
  const system = (more: Partial<Job['survey']['system']>): Job => ({
    ...job,
    survey: { ...job.survey, system: { ...job.survey.system, ...more } },
  })
  const asked = async (input: InputOf<'job.flow'>) => refused(await answer('job.flow', input, desk))

  it('wants a flow above its return, or a drop', async () => {
    expect(await asked({ job: system({ returnC: 60 }) })).toEqual({
      code: 'invalid',
      message: "The survey's flow of 60 °C must be above its return of 60 °C; or give spreadK.",
      path: 'job.survey.system.returnC',
    })
    expect((await flow({ job: system({ returnC: 60 }), spreadK: 10 })).before.houseFlowC).toBe(59.3)
  })

  it('wants emitters that stay to be warmer than their room', async () => {
    const cold = system({ flowC: 30, returnC: 20 })
    const rooms = cold.rooms.map((room) => ({ ...room, otherEmittersW: 100 }))
    expect(await asked({ job: { ...cold, rooms } })).toEqual({
      code: 'invalid',
      message:
        "Emitters that stay in Bathroom give 100 W at the survey's flow and return, so these must be above the room's 22 °C; they were 30 and 20 °C.",
      path: 'job.survey.system.returnC',
    })
  })

  it('names the element of the job that is at fault', async () => {
    const window = { name: 'Window', areaM2: 90, uWPerM2K: 2 }
    const rooms = job.rooms.map((room) => {
      if (!('elements' in room.heat)) throw new Error('The sample is measured')
      const elements = room.heat.elements.map((element) =>
        element.name === 'Outside wall, back' ? { ...element, openings: [window] } : element,
      )
      return { ...room, heat: { ...room.heat, elements } }
    })
    expect((await asked({ job: { ...job, rooms } })).path).toBe('job.rooms[1].heat.elements[0].openings')
  })

  it('wants rooms, an emitter of the catalogue, and a data folder for a saved job', async () => {
    expect(await asked({ job: { ...job, rooms: [], swaps: [] } })).toMatchObject({
      message: 'The job has no rooms; give at least one.',
      path: 'job.rooms',
    })
    expect((await asked({ job: changed(() => ({ emitterId: 'no-such' })) })).path).toBe(
      'job.swaps[0].emitterId',
    )
    expect(await asked({ jobId: 'sample-two-rooms' })).toEqual({
      code: 'refused',
      message: 'No data folder is open, so there are no saved jobs; give the job itself.',
      path: 'jobId',
    })
  })
})
