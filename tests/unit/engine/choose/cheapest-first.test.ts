import { describe, expect, it } from 'vitest'
import { given } from '../../../../src-main/domain/derivation.ts'
import { accept, refuse } from '../../../../src-main/domain/outcome.ts'
import { cheapestFirst, tieInWords } from '../../../../src-main/engine/choose/cheapest-first.ts'
import type { Pricing } from '../../../../src-main/engine/choose/cheapest-first.ts'
import { emitterForTests } from '../../renderer/emitter-for-tests.ts'

type Case = {
  readonly itemId: string
  readonly leastPence: number
  readonly closerPence?: number
  readonly fittedPence: number
  readonly givesW?: number
  readonly widthMm?: number
  readonly gaps?: readonly string[]
}

function search(cases: readonly Case[], most: number, mostWorked = 100) {
  const worked: string[] = []
  const caseAt = (index: number) => {
    const one = cases[index]
    if (one === undefined) throw new Error('There is no such case')
    return one
  }
  const pricing: Pricing = {
    closer: (index) => caseAt(index).closerPence ?? caseAt(index).leastPence,
    work: (index) => {
      const { itemId, fittedPence, gaps = [], givesW = 500, widthMm = 600 } = caseAt(index)
      worked.push(itemId)
      if (fittedPence < 0) return refuse('impossible', 'It cannot be set out.')
      const pence = { fittedPence, emitterPence: 0, partsPence: 0, labourPence: fittedPence, labourMin: 0 }
      const fitted = { ...pence, gaps, warnings: [], why: given('Made up', fittedPence) }
      return accept({ emitter: emitterForTests({ itemId, name: itemId, widthMm }), givesW, fitted })
    },
  }
  const leastPence = Float64Array.from(cases, (one) => one.leastPence)
  const { left, ...answer } = cheapestFirst(leastPence, pricing, { most, mostWorked })
  const first = left.first()
  const next = first === null ? null : [cases[first]?.itemId, left.keyOf(first)]
  return { ...answer, next, worked, names: answer.ranked.map(({ emitter }) => emitter.itemId) }
}

describe('the cheapest first', () => {
  it('works up no more than it must', () => {
    const { names, worked, certain } = search(
      [
        { itemId: 'far', leastPence: 90, fittedPence: 95 },
        { itemId: 'dear', leastPence: 10, fittedPence: 80 },
        { itemId: 'cheap', leastPence: 20, fittedPence: 30 },
      ],
      1,
    )
    expect(names[0]).toBe('cheap')
    expect(worked).toEqual(['dear', 'cheap'])
    expect(certain).toBe(true)
  })
  it('passes over one whose closer least price is too much', () => {
    const { worked, next } = search(
      [
        { itemId: 'cheap', leastPence: 10, fittedPence: 30 },
        { itemId: 'dear', leastPence: 20, closerPence: 40, fittedPence: 45 },
      ],
      1,
    )
    expect(worked).toEqual(['cheap'])
    expect(next).toEqual(['dear', 40])
  })
  it('keeps the first least price when the closer one is lower', () => {
    const { next } = search(
      [
        { itemId: 'cheap', leastPence: 10, fittedPence: 15 },
        { itemId: 'dear', leastPence: 20, closerPence: 5, fittedPence: 45 },
      ],
      1,
    )
    expect(next).toEqual(['dear', 20])
  })
  it('looks at one whose least price is the last one’s price, for it may tie', () => {
    const { names } = search(
      [
        { itemId: 'first', leastPence: 10, fittedPence: 30, givesW: 500 },
        { itemId: 'warmer', leastPence: 30, fittedPence: 30, givesW: 540 },
      ],
      1,
    )
    expect(names[0]).toBe('warmer')
  })
  it('puts one with a gap in its parts after all that are whole', () => {
    const { names } = search(
      [
        { itemId: 'gapped', leastPence: 1, fittedPence: 2, gaps: ['The catalogue has no valve.'] },
        { itemId: 'whole', leastPence: 1, fittedPence: 50 },
      ],
      2,
    )
    expect(names).toEqual(['whole', 'gapped'])
  })
  it('puts apart what cannot be worked up, and goes on', () => {
    const { names, failed } = search(
      [
        { itemId: 'broken', leastPence: 1, fittedPence: -1 },
        { itemId: 'whole', leastPence: 1, fittedPence: 50 },
      ],
      2,
    )
    expect(names).toEqual(['whole'])
    expect(failed.map(({ problems }) => problems[0]?.message)).toEqual(['It cannot be set out.'])
  })
  it('says that it is not certain when it had to stop', () => {
    const many = ['a', 'b', 'c'].map((itemId) => ({ itemId, leastPence: 1, fittedPence: 50 }))
    expect(search(many, 1, 2).certain).toBe(false)
    expect(search(many, 1, 3).certain).toBe(true)
  })
})

describe('a tie', () => {
  const tie = (first: Partial<Case>, second: Partial<Case>) => {
    const same = { leastPence: 1, fittedPence: 50 }
    const { ranked } = search(
      [
        { itemId: 'a', ...same, ...first },
        { itemId: 'b', ...same, ...second },
      ],
      2,
    )
    const [one, two] = ranked
    return one === undefined || two === undefined ? null : tieInWords(one, two)
  }
  it('is told by the heat, then by the width, then by nothing', () => {
    expect(tie({ givesW: 540 }, { givesW: 500 })).toBe(
      'The same price as b; it stands before it because it gives 40 W more.',
    )
    expect(tie({ widthMm: 500 }, { widthMm: 600 })).toBe(
      'The same price as b; it stands before it because it takes 100 mm less of the wall.',
    )
    expect(tie({}, {})).toBe(
      'The same price as b; it stands before it because nothing else tells them apart but the order of their codes.',
    )
  })
  it('is none where the prices differ', () => {
    expect(tie({ fittedPence: 49 }, {})).toBe(null)
  })
})
