import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { jobFlow } from '../../../src-main/engine/heat/job/job-flow.ts'
import type { JobFlowInput } from '../../../src-main/engine/heat/job/job-flow.ts'
import type { JobFlowRoom, JobFlowSwap } from '../../../src-main/engine/heat/job/job-flow-rooms.ts'
import { houseFlow } from '../../../src-main/engine/heat/house-flow.ts'
import { emittersBefore } from '../../../src-main/engine/heat/job/job-flow-rooms.ts'
import { answered, nonFiniteIn } from '../../answered.ts'

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const emitter = fc.record({ ratedW: between(100, 4000), exponent: between(1.1, 1.5) })
const heat = fc.oneof(
  { weight: 5, arbitrary: between(0.2, 4).map((uWPerM2K) => ({ uWPerM2K })) },
  { weight: 1, arbitrary: fc.constant({ roughWPerM3: 40 }) },
)

function roomOf(index: number, own: { readonly uWPerM2K: number } | { readonly roughWPerM3: number }) {
  const whose = { name: `Room ${index}`, roomC: 20, outsideC: -3, volumeM3: 20 }
  if ('roughWPerM3' in own) return { ...whose, ...own }
  const wall = { name: 'Wall', areaM2: 12, boundary: { kind: 'outside' as const }, ...own }
  return { ...whose, floorAreaM2: 9, airChangesPerHour: 1, elements: [wall] }
}

const swaps = fc.array(
  fc.record({
    old: fc.oneof(emitter, fc.constant('none' as const), fc.constant('notSurveyed' as const)),
    new: emitter,
  }),
  { maxLength: 2 },
)
const rooms: fc.Arbitrary<readonly JobFlowRoom[]> = fc
  .array(fc.record({ heat, staying: fc.option(fc.array(emitter, { maxLength: 2 })), swaps }), {
    minLength: 1,
    maxLength: 4,
  })
  .map((list) =>
    list.map((one, index) => ({
      roomId: `room-${index}`,
      room: roomOf(index, one.heat),
      staying: one.staying,
      swaps: one.swaps.map((swap, at): JobFlowSwap => ({
        swapId: `swap-${index}-${at}`,
        name: `Swap ${index}.${at}`,
        ...swap,
      })),
    })),
  )
const input: fc.Arbitrary<JobFlowInput> = fc.record({
  rooms,
  spreadK: between(2, 20),
  maxFlowC: between(45, 85),
})
const runs = { numRuns: 300 }

describe('the flow temperatures of a job', () => {
  it('are finite, name every room once in each order, and every swap once', () => {
    fc.assert(
      fc.property(input, (job) => {
        const told = answered(jobFlow(job))
        expect(nonFiniteIn(told)).toEqual([])
        const ids = job.rooms.map(({ roomId }) => roomId).toSorted()
        for (const house of [told.before, told.after]) {
          expect(house.rooms.map(({ roomId }) => roomId).toSorted()).toEqual(ids)
          const flows = house.rooms.flatMap(({ state, flowC }) => (state === 'warm' ? [flowC ?? 0] : []))
          expect(flows).toEqual(flows.toSorted((a, b) => b - a))
        }
        expect([...told.swaps, ...told.notJudged].map(({ swapId }) => swapId).toSorted()).toEqual(
          job.rooms.flatMap((room) => room.swaps.map(({ swapId }) => swapId)).toSorted(),
        )
      }),
      runs,
    )
  })

  it('are said of the house only where no room is guessed or unknown', () => {
    fc.assert(
      fc.property(input, (job) => {
        const told = answered(jobFlow(job))
        for (const house of [told.before, told.after]) {
          const open = house.rooms.some(({ state }) => state === 'rough' || state === 'notSurveyed')
          expect(house.backed).toBe(!open)
          if (open) expect(house.houseFlowC).toBeUndefined()
          for (const room of house.rooms) {
            if (room.state === 'rough' || room.state === 'notSurveyed') expect(room.flowC).toBeUndefined()
          }
        }
      }),
      runs,
    )
  })

  it('agree before the swaps with house.flow for the same rooms', () => {
    fc.assert(
      fc.property(input, (job) => {
        const told = answered(jobFlow(job))
        if (!told.before.backed) return
        const { spreadK, maxFlowC } = job
        const same = job.rooms.map((room) => ({ room: room.room, emitters: emittersBefore(room) ?? [] }))
        const house = answered(houseFlow({ rooms: same, spreadK, maxFlowC }))
        expect(told.before.houseFlowC).toBe(house.flowC)
        expect(told.before.worstRoom).toBe(house.worstRoom)
        expect(told.before.rooms.map(({ roomIndex }) => roomIndex)).toEqual(
          house.rooms.map(({ roomIndex }) => roomIndex),
        )
      }),
      runs,
    )
  })

  it('do not move when each emitter is swapped for its like', () => {
    fc.assert(
      fc.property(input, (job) => {
        const like = job.rooms.map((room) => ({
          ...room,
          swaps: room.swaps.map((swap) => ({ ...swap, old: swap.new })),
        }))
        const { before, after, lowersK } = answered(jobFlow({ ...job, rooms: like }))
        expect(after.rooms.map(({ state, flowC }) => [state, flowC])).toEqual(
          before.rooms.map(({ state, flowC }) => [state, flowC]),
        )
        expect(lowersK ?? 0).toBe(0)
      }),
      runs,
    )
  })

  it('of a job with one swap are what that swap alone does', () => {
    const one = fc.record({ old: emitter, new: emitter })
    fc.assert(
      fc.property(input, one, (job, only) => {
        const first = { swapId: 'only', name: 'Only', ...only }
        const alone = job.rooms.map((room, index) => ({
          ...room,
          staying: room.staying ?? [],
          swaps: index === 0 ? [first] : [],
        }))
        const { after, swaps } = answered(jobFlow({ ...job, rooms: alone }))
        const effect = swaps[0]
        if (effect === undefined) return
        expect(effect.after.flowC).toBe(after.flowC)
        expect(effect.after.reachable).toBe(after.reachable)
        expect(effect.roomAfterC).toBe(after.rooms.find(({ roomId }) => roomId === 'room-0')?.flowC)
      }),
      runs,
    )
  })
})
