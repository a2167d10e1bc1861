import { describe, expect, it } from 'vitest'
import { moneyTotals } from '../../../../src-main/engine/money/money-totals.ts'
import { marginBasisPoints, pricedByMarginPence } from '../../../../src-main/engine/money/price.ts'
import { reverseCharged, taxRate, taxRatesOf } from '../../../../src-main/engine/money/tax-rates.ts'
import { useCases } from '../../../../src-main/desk/use-cases.ts'
import type { Desk } from '../../../../src-main/desk/desk.ts'
import { answered, refused } from '../../../answered.ts'
import { defaultFigures } from '../../../figures-for-tests.ts'

const figures = defaultFigures('2026-11-25')
const byDocument = { rounding: 'document', rule: 'half-up' } as const
const desk: Desk = {
  today: '2026-11-25',
  now: () => '2026-11-25T19:00:00Z',
  store: null,
  dataFolder: null,
  papersFolder: '/nowhere',
  mayChoosePath: false,
}

describe('a price by margin', () => {
  it('is cost / (1 - margin), which is not the same as a mark-up: 20 % margin on 8.00 is 10.00', () => {
    expect(pricedByMarginPence(800, 2000)).toBe(1000)
    expect(marginBasisPoints(800, pricedByMarginPence(800, 2000))).toBe(2000)
  })

  it('has no margin of the whole price or more', () => {
    expect(() => pricedByMarginPence(800, 10_000)).toThrow('No price has a margin')
  })
})

describe('the rates of a day', () => {
  it('energy-saving materials bear nothing on 31 March 2027 and 5 % the day after', () => {
    expect(taxRate('energySaving', defaultFigures('2027-03-31')).basisPoints).toBe(0)
    expect(taxRate('energySaving', defaultFigures('2027-04-01')).basisPoints).toBe(500)
  })

  it('come in one order, each once, whatever the order of lines', () => {
    const keys = taxRatesOf(['exempt', 'zero', 'standard', 'zero'], figures).map((rate) => rate.rateKey)
    expect(keys).toEqual(['standard', 'zero', 'exempt'])
  })

  it('are turned to reverse charge only where there is tax to turn', () => {
    const turned = (['standard', 'reduced', 'zero', 'exempt', 'energySaving'] as const).map((one) =>
      reverseCharged(one, figures),
    )
    expect(turned).toEqual(['reverseCharge', 'reverseChargeReduced', 'zero', 'exempt', 'energySaving'])
    expect(reverseCharged('energySaving', defaultFigures('2027-04-01'))).toBe('reverseChargeReduced')
    expect(reverseCharged('reverseCharge', figures)).toBe('reverseCharge')
  })
})

describe('money.totals', () => {
  it('keeps what the customer accounts for out of tax and gross, and gives the words', () => {
    const lines = [
      { netPence: 100_000, category: 'reverseCharge' as const },
      { netPence: 10_000, category: 'reverseChargeReduced' as const },
      { netPence: 5000, category: 'zero' as const },
    ]
    const totals = answered(moneyTotals({ lines, ...byDocument }, figures))
    expect(totals.taxes.map((tax) => tax.taxPence)).toEqual([0, 0, 0])
    expect([totals.netPence, totals.grossPence, totals.reverseChargePence]).toEqual([
      115_000, 115_000, 20_500,
    ])
    expect(totals.wording).toEqual(['Reverse charge: customer to pay the VAT to HMRC'])
    expect(JSON.stringify(totals.why)).toContain('HMRC VATREVCON37100')
  })

  it('asks for no words where nothing is reversed, and answers nothing for no lines', () => {
    const totals = answered(moneyTotals({ lines: [], ...byDocument }, figures))
    expect([totals.netPence, totals.taxes, totals.grossPence, totals.wording]).toEqual([0, [], 0, []])
  })

  it('refuses lines rounded down, and says what would be right', () => {
    const problem = refused(moneyTotals({ lines: [], rounding: 'line', rule: 'down' }, figures))
    expect([problem.code, problem.path]).toEqual(['invalid', 'rule'])
    expect(problem.message).toContain('round the document down once')
  })

  it('takes the rates of the day that it is asked for', async () => {
    const ask = async (on: string) =>
      answered(
        await useCases['money.totals'](
          { lines: [{ netPence: 10_000, category: 'energySaving' }], on, ...byDocument },
          desk,
        ),
      ).grossPence
    expect([await ask('2027-03-31'), await ask('2027-04-01')]).toEqual([10_000, 10_500])
  })

  it('refuses a day on which the rate is not known', async () => {
    const lines = [
      { netPence: 1, category: 'exempt' as const },
      { netPence: 1, category: 'energySaving' as const },
    ]
    const answer = await useCases['money.totals']({ lines, on: '2023-04-30', ...byDocument }, desk)
    const problem = refused(answer)
    expect(problem.path).toBe('lines[1].category')
    expect(problem.message).toContain('known from 2023-05-01 on')
  })
})
