import { expect, it } from 'vitest'
import { takeOff } from '../../../../src-main/engine/takeoff/take-off.ts'
import { timesInWords } from '../../../../src-main/engine/takeoff/times-in-words.ts'
import { defaultFigures } from '../../../figures-for-tests.ts'
import { factsOf, swapOf } from './facts-for-tests.ts'

it('says how often in words: once, twice, then in figures', () => {
  expect([1, 2, 3, 10].map(timesInWords)).toEqual(['once', 'twice', '3 times', '10 times'])
})

it('a take-off says of how many swaps it asked, one or more', () => {
  const shelf = { emitters: new Map(), parts: new Map(), prices: new Map(), suppliers: new Map() }
  const saysFor = (many: number) => {
    const swaps = Array.from({ length: many }, (_, at) => swapOf(`swap-${at}`, 'bedroom'))
    return takeOff(factsOf(swaps), shelf, defaultFigures('2026-03-02')).takeOff.why.says
  }
  expect(saysFor(1)).toMatch(/^\d+ rules were asked about 1 swap\.$/)
  expect(saysFor(2)).toMatch(/^\d+ rules were asked about 2 swaps\.$/)
})
