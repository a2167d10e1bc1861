import { describe, expect, it } from 'vitest'
import type { Setting } from '../../../../src-main/domain/figures.ts'
import { figureProblems } from '../../../../src-main/desk/jobs/figure-problems.ts'
import { deliveredSettings } from '../../../../src-main/desk/figures-in-force.ts'

const setting = (id: string, unit: string, range: readonly [number, number]): Setting => ({
  id,
  says: `The ${id}`,
  unit,
  least: range[0],
  most: range[1],
  values: [{ from: '2026-01-01', value: range[0], source: 'made up for this test' }],
})
const settings = [
  setting('rate', 'PencePerHour', [100, 10_000]),
  setting('deposit', 'BasisPoints', [0, 5000]),
  setting('days', 'Count', [1, 365]),
  setting('sheets', 'Count', [0, 10]),
  setting('gap', 'Mm', [0, 500]),
]
const said = (figures: Readonly<Record<string, number | null>>) =>
  figureProblems(figures, settings).map(({ message }) => message)

describe("a firm's own figures", () => {
  it('may be anything within their range, ends and all, or nothing', () => {
    expect(said({ rate: 100, deposit: 5000, days: 365, sheets: 0.5, gap: 12.5 })).toEqual([])
    expect(said({ rate: 10_000, deposit: 0, days: 1, gap: 0 })).toEqual([])
    expect(said({ rate: null })).toEqual([])
  })

  it('are refused beyond it, in the units that a person types', () => {
    expect(said({ rate: 99 })).toEqual(['The rate must be between £1.00 and £100.00; it was £0.99.'])
    expect(said({ deposit: 5001 })).toEqual(['The deposit must be between 0 % and 50 %; it was 50.01 %.'])
    expect(said({ gap: 501 })).toEqual(['The gap must be between 0 and 500; it was 501.'])
  })

  it('are refused where only whole ones can be counted with', () => {
    expect(said({ rate: 100.5 })).toEqual(['The rate must be in whole pence; it was £1.005.'])
    expect(said({ deposit: 12.5 })).toEqual([
      'The deposit must be in whole hundredths of a percent; it was 0.125 %.',
    ])
    expect(said({ days: 2.5 })).toEqual(['The days must be a whole number; it was 2.5.'])
  })

  it('are refused under a name that nobody knows, each at its own path', () => {
    expect(figureProblems({ other: 1, gap: -1 }, settings)).toEqual([
      {
        code: 'invalid',
        message: 'There is no figure called other; figures.own names them all.',
        path: 'figures.other',
      },
      { code: 'invalid', message: 'The gap must be between 0 and 500; it was -1.', path: 'figures.gap' },
    ])
  })

  it('may be the delivered ones, all of them', () => {
    const delivered = Object.fromEntries(
      deliveredSettings.map(({ id, values }) => [id, values.at(-1)?.value ?? null]),
    )
    expect(figureProblems(delivered, deliveredSettings)).toEqual([])
  })
})
