import { describe, expect, it } from 'vitest'
import { coverWithBreaks } from '../../../../../src-main/engine/buying/split/supplier-split-packs.ts'
import type { OfferedPack } from '../../../../../src-main/engine/buying/split/supplier-split-packs.ts'

function bought(need: number, packs: readonly OfferedPack[]) {
  const answer = coverWithBreaks(need, packs)
  if (!answer.ok) throw new Error(answer.problems[0]?.message)
  return answer.value
}
const clip = (breaks: OfferedPack['breaks']): OfferedPack => ({ code: 'CLIP', holds: 1, pence: 60, breaks })

describe('price breaks, by hand', () => {
  it('takes one more when ten at 50 (500) cost less than nine at 60 (540)', () => {
    const { pence, leftover, packs } = bought(9, [clip([{ fromPacks: 10, packPence: 50 }])])
    expect([pence, leftover]).toEqual([500, 1])
    expect(packs).toEqual([{ code: 'CLIP', holds: 1, count: 10, packPence: 50 }])
  })

  it('does not when eight at 60 (480) cost less than ten at 50 (500)', () => {
    expect(bought(8, [clip([{ fromPacks: 10, packPence: 50 }])]).pence).toBe(480)
  })

  it('goes by the lowest price that the number reaches, in whatever order the breaks are printed', () => {
    const breaks = [
      { fromPacks: 20, packPence: 40 },
      { fromPacks: 10, packPence: 50 },
      { fromPacks: 15, packPence: 55 },
    ]
    expect(bought(16, [clip(breaks)]).pence).toBe(800)
    expect(bought(20, [clip(breaks)]).pence).toBe(800)
    // Of equal cost for a need of 16 (16 x 50 = 20 x 40) the one with less left over.
    expect(bought(16, [clip(breaks)]).leftover).toBe(0)
  })

  it('mixes a bag at its break with singles', () => {
    // 23 clips: three bags at the break price are 1050; two bags and three singles are 880.
    const packs = [
      { code: 'BAG', holds: 10, pence: 400, breaks: [{ fromPacks: 2, packPence: 350 }] },
      { code: 'ONE', holds: 1, pence: 60 },
    ]
    expect(bought(23, packs).pence).toBe(2 * 350 + 3 * 60)
    expect(bought(23, packs).packs.map(({ code, count }) => [code, count])).toEqual([
      ['BAG', 2],
      ['ONE', 3],
    ])
  })

  it('counts fractions of a unit exactly', () => {
    expect(bought(0.3, [{ code: 'A', holds: 0.1, pence: 5 }])).toMatchObject({ pence: 15, leftover: 0 })
  })
})

describe('packs that are refused', () => {
  it('a break that is no whole number of packs, or no whole pence', () => {
    for (const step of [
      { fromPacks: 1, packPence: 10 },
      { fromPacks: 2.5, packPence: 10 },
      { fromPacks: 3, packPence: -1 },
      { fromPacks: 3, packPence: 1.5 },
    ]) {
      const answer = coverWithBreaks(5, [clip([step])])
      expect(answer.ok ? null : answer.problems[0]).toMatchObject({
        code: 'invalid',
        path: 'packs[0].breaks[0]',
      })
    }
  })

  it('no packs at all, and so many breaks that not every way can be tried', () => {
    const none = coverWithBreaks(5, [])
    expect(none.ok ? null : none.problems[0]?.code).toBe('invalid')
    const breaks = Array.from({ length: 15 }, (_, index) => ({ fromPacks: index + 2, packPence: 50 - index }))
    const many = coverWithBreaks(
      5,
      ['A', 'B', 'C', 'D'].map((code) => ({ ...clip(breaks), code })),
    )
    expect(many.ok ? null : many.problems[0]?.code).toBe('impossible')
  })
})
