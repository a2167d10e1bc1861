import { describe, expect, it } from 'vitest'
import { because } from '../../../../../src-main/domain/derivation.ts'
import type { QuoteLine } from '../../../../../src-main/domain/quote.ts'
import { compareQuotes } from '../../../../../src-main/engine/quote/life/compare-quotes.ts'

function line(changes: Partial<QuoteLine> & { readonly name: string; readonly netPence: number }): QuoteLine {
  const rest = { section: 'parts', quantity: 1, unit: 'each', rateKey: 'standard', shared: false } as const
  return { lineId: 'l', ...rest, swapIds: [], generic: false, why: because('for a test', 0), ...changes }
}
const part = (lineKey: string) => ({ lineKey, itemKind: 'valve' as const })
const totals = (netPence: number, taxPence: number) => ({
  netPence,
  taxes: [],
  grossPence: netPence + taxPence,
  depositPence: 0,
})

describe('two quotes side by side', () => {
  const valve = line({ name: 'Valve A', netPence: 1000, part: part('valve 15') })
  const pipe = line({ name: 'Pipe', netPence: 600, quantity: 3, unit: 'm', part: part('pipe 15') })
  const labour = line({
    name: 'Labour in the Hall',
    netPence: 5000,
    section: 'labour',
    swapIds: ['a'],
    quantity: 60,
    unit: 'min',
  })
  const was = { lines: [valve, pipe, labour], totals: totals(6600, 1320) }

  it('differ in nothing when they are the same', () => {
    const same = compareQuotes(was, was)
    expect(same).toMatchObject({ lines: [], changeNetPence: 0, changeGrossPence: 0, wasGrossPence: 7920 })
  })

  it('tell what is new, gone, other, more and dearer, the biggest change first', () => {
    const is = {
      lines: [
        { ...valve, name: 'Valve B', netPence: 1250 },
        { ...labour, name: 'Labour in the back hall', quantity: 45, netPence: 3750 },
        line({ name: 'Elbow', netPence: 90, part: part('elbow') }),
      ],
      totals: totals(5090, 1018),
    }
    const { lines, ...sums } = compareQuotes(was, is)
    // By hand: 1250 - 1000; 3750 - 5000; 90 - 0; 0 - 600. Net 5090 - 6600, gross 6108 - 7920.
    expect(lines.map(({ name, changePence, says }) => [name, changePence, says])).toEqual([
      [
        'Labour in the back hall',
        -1250,
        'Labour in the back hall in place of Labour in the Hall, 45 min in place of 60 min, cheaper.',
      ],
      ['Pipe', -600, 'No longer in the later quote.'],
      ['Valve B', 250, 'Valve B in place of Valve A, dearer.'],
      ['Elbow', 90, 'New in the later quote.'],
    ])
    expect(lines[1]).toMatchObject({ was: { name: 'Pipe', quantity: 3, unit: 'm', netPence: 600 }, is: null })
    expect(sums).toMatchObject({
      wasNetPence: 6600,
      isNetPence: 5090,
      changeNetPence: -1510,
      wasGrossPence: 7920,
      isGrossPence: 6108,
      changeGrossPence: -1812,
      why: {
        says: 'What the later quote comes to, less what the earlier did, both with tax',
        value: -1812,
        unit: 'pence',
        from: [
          { says: 'The later quote', value: 6108, unit: 'pence' },
          { says: 'The earlier quote', value: 7920, unit: 'pence' },
        ],
      },
    })
  })

  it('keep apart lines that ask for the same thing twice', () => {
    const twice = { lines: [valve, { ...valve, netPence: 1100 }], totals: totals(2100, 420) }
    const { lines } = compareQuotes({ lines: [valve], totals: totals(1000, 200) }, twice)
    expect(lines.map(({ changePence, says }) => [changePence, says])).toEqual([
      [1100, 'New in the later quote.'],
    ])
  })

  it('match labour by its swaps and other lines by their name', () => {
    const sum = (name: string, netPence: number) => line({ name, netPence, section: 'other' })
    const { lines } = compareQuotes(
      { lines: [labour, sum('Discount', -100)], totals: totals(4900, 980) },
      { lines: [{ ...labour, swapIds: ['b'] }, sum('Discount', -200)], totals: totals(4800, 960) },
    )
    expect(lines.map(({ says }) => says)).toEqual([
      'New in the later quote.',
      'No longer in the later quote.',
      'Cheaper.',
    ])
  })
})
