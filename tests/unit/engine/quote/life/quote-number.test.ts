import { describe, expect, it } from 'vitest'
import { numberPattern } from '../../../../../src-main/domain/follow-up/quote-life.ts'
import { numberIn, revisionId, seriesOf } from '../../../../../src-main/engine/quote/life/quote-number.ts'

describe('the number of a quote', () => {
  it('has the year of its issue, and as many digits as the pattern at least', () => {
    const number = (pattern: string, nth: number) => numberIn(seriesOf(pattern, '2026-11-25'), nth)
    expect(number('Q-{year}-{nnnn}', 7)).toBe('Q-2026-0007')
    expect(number('{yy}.{nn}', 7)).toBe('26.07')
    expect(number('{yy}.{nn}', 123)).toBe('26.123')
    expect(number('Quote{n}', 41)).toBe('Quote41')
    expect(number('{nnn}-{year}', 5)).toBe('005-2026')
  })

  it('begins anew with the year only where the pattern has the year', () => {
    expect(seriesOf('Q{yy}{nn}', '2026-12-31')).toBe('Q26{nn}')
    expect(seriesOf('Q{yy}{nn}', '2027-01-01')).toBe('Q27{nn}')
    expect(seriesOf('Q{nn}', '2026-12-31')).toBe(seriesOf('Q{nn}', '2027-01-01'))
  })

  it('is followed by R and the revision, but for the first', () => {
    expect([0, 1, 12].map((revision) => revisionId('Q7', revision))).toEqual(['Q7', 'Q7-R1', 'Q7-R12'])
  })
})

describe('a pattern', () => {
  it('has exactly one place for the number, one for the year at most, and nothing that a file name lacks', () => {
    const right = ['{n}', 'Q-{year}-{nnnn}', '{yy}{nnn}', 'A.b_c-{nnnnnnnn}']
    const wrong = [
      '',
      'Q',
      'Q{}',
      '{year}',
      '{n}{n}',
      '{year}{yy}{n}',
      '-{n}',
      'Q/{n}',
      'Q {n}',
      '{nnnnnnnnn}',
      'é{n}',
    ]
    expect(right.filter((text) => !numberPattern.safeParse(text).success)).toEqual([])
    expect(wrong.filter((text) => numberPattern.safeParse(text).success)).toEqual([])
  })
})
