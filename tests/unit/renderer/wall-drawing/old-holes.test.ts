import { describe, expect, it } from 'vitest'
import sample from '../../../../resources/sample/two-rooms.job.json' with { type: 'json' }
import { job as jobSchema } from '../../../../src-main/domain/job.ts'
import type { Swap } from '../../../../src-main/domain/job.ts'
import { oldOnWall } from '../../../../src-renderer/parts/wall-drawing/set-out-here.ts'

const swap = jobSchema.parse(sample).swaps[0]
if (swap === undefined) throw new Error('The sample has no swap')
const holes = { count: 4, diameterMm: 8, depthMm: 50 }
const at = [
  { xMm: 300, yMm: 700 },
  { xMm: 700, yMm: 650, count: 2 },
]
const existing = { name: 'Old panel', widthMm: 600, heightMm: 500 }
const placed = (old: Swap['existing'], rest: Partial<Swap> = {}) =>
  oldOnWall({ ...swap, ...rest, existing: old })

describe('the old emitter on the drawing', () => {
  it('hangs over its holes where they were measured and it was not, and shows a ring at each', () => {
    expect(placed({ ...existing, oldHoles: { ...holes, at } }, { pipes: [], bottomMm: 150 })).toEqual({
      name: 'Old one, placed by its holes',
      widthMm: 600,
      heightMm: 500,
      // The middle of 300 and 700 is 500; half of its width further left is 200.
      leftMm: 200,
      bottomMm: 150,
      holes: [
        { xMm: 300, yMm: 700 },
        { xMm: 700, yMm: 650 },
      ],
    })
  })

  it('stays where it was measured, with its rings', () => {
    const old = placed({ ...existing, leftMm: 40, bottomMm: 90, oldHoles: { ...holes, at } })
    expect(old).toMatchObject({ name: 'Old panel', leftMm: 40, bottomMm: 90 })
    expect(old?.holes).toHaveLength(2)
  })

  it('shows no ring where the holes were only counted, and then hangs between the pipes and says so', () => {
    const old = placed({ ...existing, oldHoles: holes })
    expect(old).not.toHaveProperty('holes')
    expect(old?.name).toBe('Old one, place not measured')
    expect(placed({ ...existing, oldHoles: holes }, { pipes: [] })).toBeUndefined()
    expect(placed(undefined)).toBeUndefined()
  })
})
