import { describe, expect, it } from 'vitest'
import type { Derivation } from '../../../src-main/domain/derivation.ts'
import { nonFiniteIn } from '../../answered.ts'
import { defaultFigures } from '../../figures-for-tests.ts'
import { heatTablesOnDisk } from '../../heat-tables-for-tests.ts'
import { faultsOf, leafReasons, nodesOf, numbersIn, numbersStated, reasonsIn } from '../../why-for-tests.ts'
import { calls } from './calls-for-tests.ts'
import type { Asked } from './calls-for-tests.ts'

const figures = defaultFigures('2026-11-25')

/** An answer's figures without its reasons. */
function withoutReasons(answer: unknown): unknown {
  if (typeof answer !== 'object' || answer === null) return answer
  const entries = Object.entries(answer).filter(([, inner]) =>
    reasonsIn(inner).every(({ path }) => path !== ''),
  )
  return entries.map(([, inner]) => withoutReasons(inner))
}

/** The one reason that stands at the top of an answer, where it has one. */
function topOf(answer: unknown): Derivation | undefined {
  return reasonsIn(answer).find(({ path }) => path === '.why')?.why
}

describe.each(Object.keys(calls))('the reasons of %s', (name) => {
  const call = calls[name] as Asked
  const every = () => reasonsIn(call.answer(call.input)).map(({ why }) => why)

  it('are put in whole words, with figures, units and sources', () => {
    const reasons = every()
    expect(reasons.length).toBeGreaterThan(0)
    expect(reasons.flatMap(nodesOf).flatMap(faultsOf)).toEqual([])
  })

  it('come to the answer’s own figure, and the answer is all numbers', () => {
    const answer = call.answer(call.input)
    expect(nonFiniteIn(answer)).toEqual([])
    if (call.figure !== undefined) expect(topOf(answer)?.value).toBe(call.figure(answer))
  })

  it('state no figure that did not go in or come out', () => {
    const strange = every().flatMap((why) =>
      nodesOf(why).flatMap((node) => {
        const known = [...numbersIn(node), ...numbersIn(call.input)]
        return numbersStated(node)
          .filter((stated) => !known.some((one) => Math.abs(Math.abs(one) - stated) <= 0.051))
          .map((stated) => `${stated} in “${node.says}”`)
      }),
    )
    expect(strange).toEqual([])
  })

  it('end at figures that were given, came from a named source, or were worked out higher up', () => {
    const answer = call.answer(call.input)
    const reasons = reasonsIn(answer).map(({ why }) => why)
    const worked = reasons.flatMap(nodesOf).filter(({ from }) => from.length > 0)
    const known = numbersIn([
      call.input,
      figures,
      heatTablesOnDisk,
      withoutReasons(answer),
      worked.map(({ value }) => value),
    ])
    const invented = reasons
      .flatMap(leafReasons)
      .filter(({ value, source }) => typeof value === 'number' && source === undefined && !known.has(value))
      .map(({ says, value }) => `${says}: ${value}`)
    expect([...new Set(invented)].filter((one) => !(call.also ?? /^$/).test(one))).toEqual([])
  })
})
