import { describe, expect, it } from 'vitest'
import { centreLine } from '../../../../src-main/engine/wall/centre-line.ts'
import { floorPipe } from './walls-for-tests.ts'

const left = floorPipe('left', 420, 100)
const right = floorPipe('right', 980, 100)
const wall = { pipeCentresMm: 450, wallWidthMm: 1800 }

function centreOf(input: Parameters<typeof centreLine>[0]): number {
  const line = centreLine(input)
  if (!line.ok) throw new Error(line.problems[0]?.message)
  return line.value.centreMm
}

describe('the centre line', () => {
  it('lies midway between the pipes', () => {
    expect(centreOf({ centre: { kind: 'betweenPipes' }, pipes: [left, right], ...wall })).toBe(700)
  })

  it('lies half the pipe centres to the right of a left pipe, and to the left of a right one', () => {
    expect(centreOf({ centre: { kind: 'fromPipe', side: 'left' }, pipes: [left], ...wall })).toBe(645)
    expect(centreOf({ centre: { kind: 'fromPipe', side: 'right' }, pipes: [right], ...wall })).toBe(755)
  })

  it('lies in the middle of the wall, or where it was put', () => {
    expect(centreOf({ centre: { kind: 'middleOfWall' }, pipes: [], ...wall })).toBe(900)
    expect(centreOf({ centre: { kind: 'at', xMm: 612.5 }, pipes: [], ...wall })).toBe(612.5)
  })

  it('is refused between the pipes when there is one pipe, or both are on one side', () => {
    for (const pipes of [[], [left], [left, { ...left, xMm: 500 }]]) {
      const line = centreLine({ centre: { kind: 'betweenPipes' }, pipes, ...wall })
      expect(line).toMatchObject({ ok: false, problems: [{ code: 'invalid', path: 'pipes' }] })
    }
  })

  it('is refused from a pipe that is not there, with a sentence that says which sides there are', () => {
    const line = centreLine({ centre: { kind: 'fromPipe', side: 'right' }, pipes: [left], ...wall })
    if (line.ok) throw new Error('It should have been refused')
    expect(line.problems[0]).toMatchObject({ code: 'invalid', path: 'centre.side' })
    expect(line.problems[0]?.message).toContain('on the left only')
  })
})
