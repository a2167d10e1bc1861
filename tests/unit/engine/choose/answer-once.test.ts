import { describe, expect, it } from 'vitest'
import { answerOnce } from '../../../../src-main/engine/choose/answer-once.ts'
import type { Question } from '../../../../src-main/engine/takeoff/ask-rules.ts'
import type { JobFacts } from '../../../../src-main/engine/takeoff/job-facts.ts'
import { typical } from '../../../typical-asks.ts'
import { factsOf, swapOf } from '../takeoff/facts-for-tests.ts'
import { roundFigures } from './trial-for-tests.ts'

/** What each rule was asked, and in which order the answers came. */
function counting() {
  const asked: string[] = []
  const say = (per: string, ...said: readonly string[]) => {
    asked.push(per)
    return said
  }
  const answer = answerOnce(
    [
      { per: 'hole', uses: [], gives: ({ holeId, fixing }) => say('hole', `${holeId} ${fixing.name}`) },
      { per: 'swap', uses: [], gives: ({ emitterName }) => say('swap', emitterName) },
      {
        per: 'job',
        uses: ['lift.onePersonKg'],
        gives: ({ swaps }, use) => say('job', `${swaps} swaps, ${use.value('lift.onePersonKg')} kg`),
      },
      { per: 'side', uses: [], gives: ({ side }) => say('side', side, `${side} again`) },
      { per: 'room', uses: [], gives: ({ roomName }) => say('room', roomName) },
      { per: 'joint', uses: [], gives: () => [] },
    ],
    roundFigures,
    (given: string, { swapIds, shared }: Question) => `${given} (${shared ? 'shared' : swapIds.join()})`,
  )
  return { asked, answer }
}

const plug = { name: 'plug', source: 'made up' }
const hole = (holeId: string, fixing = plug) => ({ ...typical.hole, holeId, fixing })
const swap = (emitterName: string, more: Parameters<typeof swapOf>[2] = {}) =>
  swapOf('a', 'room', { ask: { ...typical.swap, emitterName }, ...more })
const facts = (...more: Parameters<typeof swap>): JobFacts => factsOf([swap(...more)])

describe('rules that answer a question once', () => {
  it('answer in the order of the rules, each with whom it belongs to, and read their settings', () => {
    const { answer } = counting()
    const holes = [hole('1'), hole('2')]
    const sides = [{ ...typical.side, side: 'left' as const }]
    expect(answer(facts('Panel', { holes, sides }))).toEqual([
      '1 plug (a)',
      '2 plug (a)',
      'Panel (a)',
      '1 swaps, 25 kg (shared)',
      'left (a)',
      'left again (a)',
      `${typical.room.roomName} (a)`,
    ])
  })

  it('are asked once about what was said before in the same words', () => {
    const { asked, answer } = counting()
    const first = answer(facts('Panel', { holes: [hole('1'), hole('2')] }))
    expect(asked).toEqual(['job', 'room', 'swap', 'hole', 'hole'])
    asked.length = 0
    expect(answer(facts('Panel', { holes: [hole('1'), hole('2')] }))).toEqual(first)
    expect(asked).toEqual(['swap'])
  })

  it('are asked anew about a swap, which names its emitter, but not about the very same one', () => {
    const { asked, answer } = counting()
    const same = facts('Panel')
    answer(same)
    asked.length = 0
    expect(answer(facts('Rail'))).toContain('Rail (a)')
    expect(asked).toEqual(['swap'])
    asked.length = 0
    expect(answer(same)).toContain('Panel (a)')
    expect(asked).toEqual([])
  })

  it('tell fixings apart by which they are, and swaps by their ids', () => {
    const { asked, answer } = counting()
    const other = { ...plug, name: 'anchor' }
    expect(answer(facts('Panel', { holes: [hole('1'), hole('1', other), hole('1')] }))).toEqual(
      expect.arrayContaining(['1 plug (a)', '1 anchor (a)']),
    )
    expect(asked.filter((what) => what === 'hole')).toHaveLength(2)
    const two = factsOf([
      swapOf('a', 'room', { holes: [hole('1')] }),
      swapOf('b', 'room', { holes: [hole('1')] }),
    ])
    expect(answer(two)).toEqual(
      expect.arrayContaining(['1 plug (a)', '1 plug (b)', '2 swaps, 25 kg (shared)']),
    )
    expect(asked.filter((what) => what === 'hole')).toHaveLength(3)
  })

  it('answer nothing where nothing is asked of their kind', () => {
    const { answer } = counting()
    expect(answer({ ...factsOf([]), rooms: [] })).toEqual(['0 swaps, 25 kg (shared)'])
  })
})
