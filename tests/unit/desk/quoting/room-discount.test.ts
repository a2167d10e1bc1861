import { describe, expect, it } from 'vitest'
import sample from '../../../../resources/sample/two-rooms.job.json' with { type: 'json' }
import type { Desk } from '../../../../src-main/desk/desk.ts'
import { quoteBuild } from '../../../../src-main/desk/quoting/quote-build.ts'
import { job as jobSchema } from '../../../../src-main/domain/job.ts'
import type { Discount } from '../../../../src-main/domain/pricing.ts'
import { answered, refused } from '../../../answered.ts'

const desk: Desk = {
  today: '2026-11-25',
  now: () => '2026-11-25T19:00:00Z',
  store: null,
  dataFolder: null,
  papersFolder: '/nowhere',
  mayChoosePath: false,
}
const job = jobSchema.parse(sample)
const ask = (discount: Discount) =>
  quoteBuild(
    { job: { ...job, pricing: { taxTreatment: 'usual', rounding: 'document', discounts: [discount] } } },
    desk,
  )
const [first] = job.swaps
const roomId = first?.roomId ?? ''

describe('a discount of a room', () => {
  it('is a share of the lines that stand for that room alone', async () => {
    const quote = answered(await ask({ kind: 'percent', name: 'First room', basisPoints: 1000, roomId }))
    const own = quote.lines.filter(
      (line) => line.netPence > 0 && line.swapIds.length === 1 && line.swapIds[0] === first?.swapId,
    )
    const base = own.reduce((sum, line) => sum + line.netPence, 0)
    const off = quote.lines.filter((line) => line.lineId.startsWith('discount'))
    expect(base).toBeGreaterThan(0)
    expect(off.map((line) => line.netPence)).toEqual([-Math.floor((base + 5) / 10)])
  })

  it('of labour takes from that room’s labour: by hand a tenth of it', async () => {
    const quote = answered(
      await ask({ kind: 'percent', name: 'Room', basisPoints: 1000, of: 'labour', roomId }),
    )
    const labour = quote.lines.find(
      (line) => line.section === 'labour' && line.swapIds.join() === first?.swapId,
    )
    const off = quote.lines.find((line) => line.lineId.startsWith('discount'))
    expect(off?.netPence).toBe(-Math.floor(((labour?.netPence ?? 0) + 5) / 10))
  })

  it('cannot be of a room without a line', async () => {
    expect(refused(await ask({ kind: 'amount', name: 'Lost', pence: 100, roomId: 'attic' }))).toMatchObject({
      path: 'job.pricing.discounts[0].roomId',
      message:
        'The discount Lost is of room attic, which has no priced line of its own; name a room that has a swap.',
    })
  })
})
