import { beforeAll, describe, expect, it } from 'vitest'
import sample from '../../../resources/sample/two-rooms.job.json' with { type: 'json' }
import type { Derivation } from '../../../src-main/domain/derivation.ts'
import { job as jobSchema } from '../../../src-main/domain/job.ts'
import { pickList, quote } from '../../../src-main/domain/quote.ts'
import { takeOff } from '../../../src-main/domain/take-off.ts'
import type { Desk } from '../../../src-main/desk/desk.ts'
import { workUp } from '../../../src-main/desk/quoting/work-up.ts'
import type { WorkedUp } from '../../../src-main/desk/quoting/work-up.ts'

const desk: Desk = {
  today: '2026-11-25',
  now: () => '2026-11-25T19:00:00Z',
  store: null,
  dataFolder: null,
  papersFolder: '/nowhere',
  mayChoosePath: false,
}
const job = jobSchema.parse(sample)
let worked: WorkedUp

beforeAll(async () => {
  const answer = await workUp(job, desk)
  if (!answer.ok) throw new Error(JSON.stringify(answer.problems))
  worked = answer.value
})

const lineOf = (name: string) => {
  const found = worked.takeOff.lines.filter((line) => line.name.includes(name))
  expect(found).toHaveLength(1)
  return found[0]
}
const leaves = (why: Derivation): readonly Derivation[] =>
  why.from.length === 0 ? [why] : why.from.flatMap(leaves)

describe("the sample job's parts, worked out by hand from the survey", () => {
  it('tape: 5 joints x 12 turns x pi x 20.955 mm x 1.15 = 4.5424 m (4 valve tails and the extension)', () => {
    expect(lineOf('Thread-seal tape')?.quantity).toBeCloseTo(4.5424, 3)
  })
  it('filler: 4 holes x pi/4 x 10 x 10 x 40 mm x 1.5 = 18.85 ml, for the plaster wall only', () => {
    expect(lineOf('Filler')?.quantity).toBeCloseTo(18.85, 2)
    expect(lineOf('Filler')?.swapIds).toEqual(['bedroom-panel'])
  })
  it('sealant: 4 old holes in tile x 2 ml = 8 ml', () => {
    expect(lineOf('silicone')?.quantity).toBe(8)
  })
  it('inhibitor: 18 kW x 11 L / 100 = 1.98 L, once for both swaps', () => {
    expect(lineOf('Inhibitor, 1 litre')?.quantity).toBeCloseTo(1.98, 6)
    expect(lineOf('Inhibitor, 1 litre')?.shared).toBe(true)
  })
  it('one thermostatic and one lockshield valve for each swap: straight under the rail, angled beside the panel', () => {
    const valves = worked.takeOff.lines.filter((line) => line.itemKind === 'valve')
    expect(valves.map(({ spec, quantity }) => [spec['role'], spec['body'], quantity]).toSorted()).toEqual([
      ['lockshield', 'angled', 1],
      ['lockshield', 'straight', 1],
      ['thermostatic', 'angled', 1],
      ['thermostatic', 'straight', 1],
    ])
  })
  it('a hole is a fixing: as many plugs and anchors as the set-out has holes', () => {
    const fixings = worked.takeOff.lines.filter(
      (line) => line.itemKind === 'plug' || line.itemKind === 'anchor',
    )
    const bought = fixings.reduce((sum, line) => sum + line.quantity, 0)
    const boxed = worked.takeOff.fromBox
      .filter((line) => line.itemKind === 'plug')
      .reduce((sum, line) => sum + line.quantity, 0)
    const holes = Object.values(worked.setOuts).reduce((sum, setOut) => sum + setOut.holes.length, 0)
    expect(bought + boxed).toBe(holes)
  })
  it('no part stands there twice, and nothing is missing from the catalogue', () => {
    const keys = worked.takeOff.lines.map((line) => line.lineKey)
    expect(new Set(keys).size).toBe(keys.length)
    expect(worked.quote.gaps).toEqual([])
  })
})

describe('the rail is set out from the fixed pipe', () => {
  it('its centre is half of its 550 mm pipe centres from the left pipe at 350 mm: 625 mm', () => {
    expect(worked.setOuts['bathroom-rail']?.centreMm).toBe(625)
  })
  it('the right pipe, 60 mm out of place, is cut and re-piped; the left one stays', () => {
    const offsets = worked.setOuts['bathroom-rail']?.pipeOffsets.map(({ side, offsetMm, remedy }) => [
      side,
      offsetMm,
      remedy,
    ])
    expect(offsets).toEqual([
      ['left', 0, 'longerTail'],
      ['right', -60, 'repipe'],
    ])
  })
})

describe('the money adds up', () => {
  it('lines to the net total, tax to 20 % of it, deposit to a quarter of the gross', () => {
    const { lines, totals, internal } = worked.quote
    const net = lines.reduce((sum, line) => sum + line.netPence, 0)
    expect(totals.netPence).toBe(net)
    expect(totals.taxes.map((tax) => tax.taxPence)).toEqual([Math.floor((net * 20 + 50) / 100)])
    expect(totals.grossPence).toBe(net + (totals.taxes[0]?.taxPence ?? 0))
    expect(totals.depositPence).toBe(Math.floor((totals.grossPence * 25 + 50) / 100))
    expect(internal.costPence + internal.marginPence).toBe(net)
  })
  it('each part is its packs x (1 + mark-up): 20 % on emitters, 30 % on the rest, half up', () => {
    for (const line of worked.quote.lines.filter(
      (one) => one.section === 'parts' || one.section === 'emitter',
    )) {
      const purchase = worked.quote.internal.purchases.find((one) => one.lineId === line.lineId)
      const cost = purchase?.packs.reduce((sum, pack) => sum + pack.count * pack.packPence, 0) ?? 0
      expect(purchase?.costPence).toBe(cost)
      expect(line.netPence).toBe(Math.floor((cost * (line.section === 'emitter' ? 120 : 130) + 50) / 100))
    }
  })
  it('labour lines are the expected time at 52.00 an hour', () => {
    const labour = worked.quote.lines.filter((line) => line.section === 'labour')
    const sum = labour.reduce((total, line) => total + line.netPence, 0)
    expect(sum).toBe(Math.round((worked.quote.labour.expectedMin * 5200) / 60))
  })
  it('every pack bought covers what is needed, and says what is left over', () => {
    for (const purchase of worked.quote.internal.purchases) {
      const held = purchase.packs.reduce((sum, pack) => sum + pack.count * pack.holds, 0)
      expect(held).toBeGreaterThanOrEqual(purchase.need - 1e-9)
      expect(purchase.leftover).toBeCloseTo(held - purchase.need, 5)
    }
  })
})

describe('every figure answers why', () => {
  it('each line of parts and of the quote can be walked down to the numbers that went in', () => {
    for (const line of [...worked.takeOff.lines, ...worked.quote.lines]) {
      expect(line.why.says.length).toBeGreaterThan(3)
      expect(leaves(line.why).length).toBeGreaterThan(0)
    }
  })
  it('the answers are what the contract says they are', () => {
    expect(quote.parse(worked.quote)).toEqual(worked.quote)
    expect(takeOff.parse(worked.takeOff)).toEqual(worked.takeOff)
    expect(pickList.parse(worked.pickList)).toEqual(worked.pickList)
  })
})

describe('what one person should not lift is marked alike in the caution, the labour and the pick list', () => {
  const lifts = () => worked.pickList.lifts.map(({ swapId, massKg }) => [swapId, massKg])
  it('the 26.8 kg panel is; the 12.2 kg rail, the old 9 kg and the old 19 kg one are not', () => {
    expect(lifts()).toEqual([['bedroom-panel', 26.8]])
    expect(worked.quote.cautions.map((caution) => caution.cautionId)).toContain('two-person-lift')
  })
  it('an old emitter of 22 kg is over what one carries down the stairs (25 kg x 0.8 = 20 kg)', async () => {
    const swaps = job.swaps.map((swap) =>
      swap.existing === undefined ? swap : { ...swap, existing: { ...swap.existing, dryKg: 22 } },
    )
    const heavier = await workUp({ ...job, swaps }, desk)
    if (!heavier.ok) throw new Error('refused')
    expect(heavier.value.pickList.lifts.map(({ massKg }) => massKg)).toEqual([22, 26.8, 22])
  })
})

describe('the order of things never matters', () => {
  it('the same job with its swaps turned round costs the same', async () => {
    const turned = await workUp({ ...job, swaps: job.swaps.toReversed() }, desk)
    if (!turned.ok) throw new Error('refused')
    expect(turned.value.quote.totals).toEqual(worked.quote.totals)
  })
  it('two swaps in one job cost less than each alone: drain-down, dose and travel are shared', async () => {
    const alone = await Promise.all(job.swaps.map((swap) => workUp({ ...job, swaps: [swap] }, desk)))
    const sum = alone.reduce((total, one) => total + (one.ok ? one.value.quote.totals.netPence : 0), 0)
    expect(worked.quote.totals.netPence).toBeLessThan(sum)
  })
})

describe('what cannot be supplied is a gap, never dropped', () => {
  it('an element that the catalogue does not hold', async () => {
    const swaps = job.swaps.map((swap, index) => (index === 0 ? { ...swap, elementW: 999 } : swap))
    const answer = await workUp({ ...job, swaps }, desk)
    if (!answer.ok) throw new Error('refused')
    expect(answer.value.quote.gaps).toEqual([
      {
        gapKey: 'element thread="G1/2" watts=999',
        says: 'The catalogue has no heating element (999 W, G1/2).',
        itemKind: 'element',
        quantity: 1,
        unit: 'each',
      },
    ])
    const waivers = [{ gapKey: 'element thread="G1/2" watts=999', reason: 'The electrician brings it' }]
    const waived = await workUp({ ...job, swaps, waivers }, desk)
    expect(waived.ok && waived.value.quote.gaps[0]?.waived).toBe('The electrician brings it')
  })
})

describe('a figure of the job takes the place of a delivered one', () => {
  it('the rate of pay changes the labour, and the reason says whose figure it is', async () => {
    const dearer = await workUp({ ...job, figures: { 'money.labourPencePerHour': 10400 } }, desk)
    if (!dearer.ok) throw new Error('refused')
    const sum = (lines: readonly { readonly section: string; readonly netPence: number }[]) =>
      lines.filter((line) => line.section === 'labour').reduce((total, line) => total + line.netPence, 0)
    expect(Math.abs(sum(dearer.value.quote.lines) - 2 * sum(worked.quote.lines))).toBeLessThanOrEqual(1)
  })
  it('an unknown figure, or one out of its range, is refused with its path', async () => {
    const unknown = await workUp({ ...job, figures: { 'money.luck': 1 } }, desk)
    expect(!unknown.ok && unknown.problems[0]?.path).toBe('job.figures.money.luck')
    const absurd = await workUp({ ...job, figures: { 'seal.tapeTurnsCount': 4000 } }, desk)
    expect(!absurd.ok && absurd.problems[0]?.message).toContain('between 1 and 40; it was 4000')
  })
})
