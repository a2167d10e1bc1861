import { describe, expect, it } from 'vitest'
import { flowLowest } from '../../../../src-main/contract/heating/heat.ts'
import { emitterOutput } from '../../../../src-main/engine/heat/emitter-output.ts'
import { lowestFlow } from '../../../../src-main/engine/heat/lowest-flow.ts'
import { answered, leavesOf, refused } from '../../../answered.ts'

const emitter = { ratedW: 1000, exponent: 1.3 }
const emitters = [emitter]
const room = { roomC: 20, spreadK: 10, emitters }

describe('the lowest flow temperature', () => {
  it('is the rated one for the rated output', () => {
    expect(answered(lowestFlow({ ...room, loadW: 1000 }))).toMatchObject({
      reachable: true,
      flowC: 75,
      returnC: 65,
      outputAtMaxW: 1000,
    })
  })

  it('is warm at the answer and cold a tenth below', () => {
    const loadW = 600
    const { flowC = 0, returnC = 0 } = answered(lowestFlow({ ...room, loadW }))
    const gives = (flow: number, back: number) =>
      answered(emitterOutput({ ratedW: 1000, exponent: 1.3, flowC: flow, returnC: back, roomC: 20 })).watts
    expect(gives(flowC, returnC)).toBeGreaterThanOrEqual(loadW)
    expect(gives(flowC - 0.1, returnC - 0.1)).toBeLessThan(loadW)
    expect(returnC).toBe(Number((flowC - 10).toFixed(1)))
  })

  it('counts all the emitters of the room', () => {
    const one = answered(lowestFlow({ ...room, loadW: 600 })).flowC
    const two = lowestFlow({ ...room, loadW: 1200, emitters: [...emitters, ...emitters] })
    expect(answered(two).flowC).toBe(one)
  })

  it('says that it is not reachable, and what the limit gives', () => {
    const answer = answered(lowestFlow({ ...room, loadW: 1000, maxFlowC: 55 }))
    expect(answer).not.toHaveProperty('flowC')
    expect(answer).not.toHaveProperty('returnC')
    expect(answer.reachable).toBe(false)
    // n = 1.3: the arithmetic table has 0.5148 at 30 K over 50 K; logarithmic, (29.7201 / 49.8329)^1.3.
    expect(answer.outputAtMaxW).toBeCloseTo(1000 * (29.7201 / 49.8329) ** 1.3, 1)
    expect(answer.why.says).toContain('Not reachable')
  })

  it('is not reachable, with nothing given, where the return at the limit would not be above the room', () => {
    const answer = answered(lowestFlow({ ...room, loadW: 10, maxFlowC: 30 }))
    expect(answer).toMatchObject({ reachable: false, outputAtMaxW: 0 })
    expect(leavesOf(answer.why)).toContain(1000)
  })

  it('is the limit itself where only that is warm', () => {
    const loadW = answered(emitterOutput({ ...emitter, flowC: 54.97, returnC: 44.97, roomC: 20 })).watts
    expect(answered(lowestFlow({ ...room, loadW, maxFlowC: 54.97 })).flowC).toBe(54.97)
  })

  it('has every figure that was used at the leaves of its reason', () => {
    const leaves = leavesOf(answered(lowestFlow({ ...room, loadW: 612, maxFlowC: 70 })).why)
    for (const figure of [612, 20, 10, 70, 1000, 1.3, 75, 65]) expect(leaves).toContain(figure)
  })

  it('fits the answer of its request, reachable or not', () => {
    for (const loadW of [500, 5000]) {
      expect(flowLowest.output.safeParse(answered(lowestFlow({ ...room, loadW }))).error).toBeUndefined()
    }
  })

  it.each([
    [{ loadW: 0 }, 'loadW'],
    [{ loadW: -50 }, 'loadW'],
    [{ loadW: 100, spreadK: 1e-12 }, 'spreadK'],
    [{ loadW: 100, emitters: [] }, 'emitters'],
    [{ loadW: 100, emitters: [...emitters, { ratedW: 0, exponent: 1.3 }] }, 'emitters[1]'],
    [{ loadW: NaN }, 'loadW'],
    [
      { loadW: 100, emitters: [{ ratedW: 1, exponent: 1.3, rating: { flowC: 60, returnC: 20, roomC: 20 } }] },
      'emitters[0].rating.returnC',
    ],
  ])('refuses %j', (change, path) => {
    expect(refused(lowestFlow({ ...room, ...change })).path).toBe(path)
  })
})
