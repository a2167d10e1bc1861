import { describe, expect, it } from 'vitest'
import { changeDraft, startDraft } from '../../../src-renderer/draft/draft.ts'
import type { Change } from '../../../src-renderer/draft/draft.ts'
import { stepsOf, valueAt, withValue } from '../../../src-renderer/draft/path.ts'
import { bedroomJob } from '../../job-for-tests.ts'

const after = (...changes: readonly Change[]) => changes.reduce(changeDraft, startDraft(bedroomJob()))
const title = (value: string): Change => ({ kind: 'set', path: 'title', value })

describe('a path into a job', () => {
  it('is read into fields and places', () => {
    expect(stepsOf('rooms[0].walls[12].widthMm')).toEqual(['rooms', 0, 'walls', 12, 'widthMm'])
  })
  it('finds a value, or nothing where there is none', () => {
    expect(valueAt(bedroomJob(), 'rooms[0].walls[0].name')).toBe('Window wall')
    expect(valueAt(bedroomJob(), 'rooms[7].name')).toBeUndefined()
    expect(valueAt(bedroomJob(), 'title.length.more')).toBeUndefined()
  })
  it('changes one value and leaves the old job and its other parts as they were', () => {
    const before = bedroomJob()
    const next = withValue(before, 'rooms[0].walls[0].widthMm', 3100)
    expect(next.rooms[0]?.walls[0]?.widthMm).toBe(3100)
    expect(before.rooms[0]?.walls[0]?.widthMm).toBe(3200)
    expect(next.swaps).toBe(before.swaps)
  })
  it('takes a field away when nothing is put there', () => {
    expect(withValue(bedroomJob(), 'survey.builtYear', undefined).survey).not.toHaveProperty('builtYear')
  })
  it('takes an entry out of a list when nothing is put there', () => {
    expect(
      withValue(bedroomJob(), 'swaps[0].pipes[0]', undefined).swaps[0]?.pipes.map(({ side }) => side),
    ).toEqual(['right'])
  })
})

describe('a draft of a job', () => {
  it('goes back and forth again over what was done', () => {
    const done = after(title('First'), { kind: 'settle' }, title('Second'))
    const back = changeDraft(done, { kind: 'undo' })
    expect(back.now.title).toBe('First')
    expect(changeDraft(back, { kind: 'undo' }).now).toEqual(bedroomJob())
    expect(changeDraft(back, { kind: 'redo' }).now.title).toBe('Second')
  })
  it('counts typing in one field as one step', () => {
    const done = after(title('B'), title('Ba'), title('Bat'))
    expect(done.past).toHaveLength(1)
    expect(changeDraft(done, { kind: 'undo' }).now).toEqual(bedroomJob())
  })
  it('begins a new step when another field is typed in', () => {
    const done = after(title('B'), { kind: 'set', path: 'customer.name', value: 'R' }, title('Ba'))
    expect(done.past).toHaveLength(3)
  })
  it('forgets what was undone when something new is done', () => {
    const done = after(title('First'), { kind: 'undo' }, title('Other'))
    expect(done.future).toEqual([])
    expect(changeDraft(done, { kind: 'redo' }).now.title).toBe('Other')
  })
  it('takes no step for a value that is there already', () => {
    expect(after(title('Back bedroom radiator')).past).toEqual([])
  })
  it('adds to a list that is not there yet', () => {
    const waiver = { gapKey: 'valve', reason: 'The customer has one.' }
    expect(after({ kind: 'add', path: 'waivers', value: waiver }).now.waivers).toEqual([waiver])
  })
  it('stays as it is when there is nothing to undo or redo', () => {
    const start = startDraft(bedroomJob())
    expect(changeDraft(start, { kind: 'undo' })).toBe(start)
    expect(changeDraft(start, { kind: 'redo' })).toBe(start)
  })
})
