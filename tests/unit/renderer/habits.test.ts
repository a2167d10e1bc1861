import { describe, expect, it } from 'vitest'
import { inGroups, matchingCommands } from '../../../src-renderer/frame/commands/command.ts'
import type { Command } from '../../../src-renderer/frame/commands/command.ts'
import { moved } from '../../../src-renderer/frame/commands/command-dialog.tsx'
import { fromFile, oncePerId } from '../../../src-renderer/frame/commands/use-commands.ts'
import { askedBy, shortcuts } from '../../../src-renderer/frame/keys.ts'
import { oneOf, textSizes } from '../../../src-renderer/frame/looks.ts'
import { heatInWords } from '../../../src-renderer/parts/heat-in-words.ts'
import { cookieIn } from '../../../src-renderer/parts/kept-here.ts'

const command = (id: string, name: string, more: Partial<Command> = {}): Command => ({
  id,
  group: 'do',
  name,
  run: () => undefined,
  ...more,
})
const ids = (commands: readonly Command[]) => commands.map(({ id }) => id)

describe('the search over everything', () => {
  const commands = [
    command('pick', 'Make the pick list PDF'),
    command('quote', 'Make the quote PDF'),
    command('room', 'Bathroom', { group: 'room', says: 'in Mill Lane' }),
    command('job', 'Rail for the bathroom', { group: 'job', says: 'Sam Example' }),
  ]
  it('finds by every word in any order, in the name or in what is said of it', () => {
    expect(ids(matchingCommands(commands, 'pdf QUOTE'))).toEqual(['quote'])
    expect(ids(matchingCommands(commands, 'lane bath'))).toEqual(['room'])
    expect(ids(matchingCommands(commands, 'quote list'))).toEqual([])
    expect(ids(matchingCommands(commands, ' '))).toEqual(['pick', 'quote', 'room', 'job'])
  })
  it('puts a name with a word that begins so before one that only has the letters', () => {
    const two = [command('inside', 'Unmake it'), command('begins', 'Do make it')]
    expect(ids(matchingCommands(two, 'make'))).toEqual(['begins', 'inside'])
  })
  it('shows what to do first, then pages, jobs, rooms and swaps', () => {
    expect(inGroups(commands.toReversed()).map(({ group, commands: all }) => [group, all.length])).toEqual([
      ['do', 2],
      ['job', 1],
      ['room', 1],
    ])
  })
  it('shows a place once, as the open page has it', () => {
    const kept = oncePerId([command('a', 'Open page'), command('a', 'Data file'), command('b', 'Other')])
    expect(kept.map(({ name }) => name)).toEqual(['Open page', 'Other'])
  })
  it('leads to the very job, room and swap', () => {
    const went: string[] = []
    const row = {
      jobId: 'j',
      title: 'Rail',
      customerName: 'Sam Example',
      place: '',
      createdOn: '2026-11-23',
      savedAt: '2026-11-23T19:04:00.000Z',
      rooms: 1,
      swaps: 1,
      stage: 'surveying',
      archived: false,
    } as const
    const found = fromFile(
      {
        jobs: [row],
        rooms: [{ jobId: 'j', roomId: 'r', name: 'Hall', jobTitle: 'Rail', customerName: 'Sam Example' }],
        swaps: [{ jobId: 'j', swapId: 's', roomName: 'Hall', emitterName: '', jobTitle: 'Rail' }],
      },
      (path) => went.push(path),
    )
    for (const one of found) one.run()
    expect(went).toEqual(['/job/j/survey', '/job/j/survey/room/r', '/job/j/survey/swap/s'])
    expect(found.map(({ name, says }) => [name, says])).toEqual([
      ['Rail', 'Sam Example'],
      ['Hall', 'in Rail'],
      ['Swap in Hall', 'in Rail'],
    ])
  })
})

describe('the keys in its list', () => {
  const key = (name: string, ctrlKey = false) => ({ key: name, ctrlKey })
  it('go round at both ends', () => {
    expect(moved(key('ArrowDown'), 0, 3)).toBe(1)
    expect(moved(key('ArrowDown'), 2, 3)).toBe(0)
    expect(moved(key('ArrowUp'), 0, 3)).toBe(2)
    expect(moved(key('Home', true), 2, 3)).toBe(0)
    expect(moved(key('End', true), 0, 3)).toBe(2)
  })
  it('are for the letters in the box where they mean nothing to the list', () => {
    expect(moved(key('Home'), 2, 3)).toBeNull()
    expect(moved(key('a'), 0, 3)).toBeNull()
    expect(moved(key('ArrowDown'), 0, 0)).toBeNull()
  })
})

describe('the keys of the window', () => {
  const press = (key: string, more: object = {}) => ({
    key,
    ctrlKey: false,
    metaKey: false,
    altKey: false,
    shiftKey: false,
    ...more,
  })
  it('open the search with Ctrl or Cmd, also while typing', () => {
    expect(askedBy(press('k', { ctrlKey: true }), true)).toBe('find')
    expect(askedBy(press('K', { metaKey: true }), false)).toBe('find')
    expect(askedBy(press('k'), false)).toBeNull()
    expect(askedBy(press('k', { ctrlKey: true, shiftKey: true }), false)).toBeNull()
  })
  it('open the list of keys with a question mark that is not being typed', () => {
    expect(askedBy(press('?', { shiftKey: true }), false)).toBe('keys')
    expect(askedBy(press('?', { shiftKey: true }), true)).toBeNull()
    expect(askedBy(press('?', { ctrlKey: true }), false)).toBeNull()
  })
  it('are all in the list, each once', () => {
    const pressed = shortcuts.map(({ keys }) => keys.join('+'))
    expect(new Set(pressed).size).toBe(pressed.length)
    expect(pressed).toEqual(expect.arrayContaining(['Ctrl+K', 'Ctrl+Enter', 'Ctrl+Z', 'Ctrl+Shift+Z', '?']))
  })
})

describe('what a machine remembers', () => {
  it('is read out of the page’s cookies by its whole name', () => {
    const cookies = 'tailpiece-text=no; tailpiece-text-size=largest; other=a%20b'
    expect(cookieIn(cookies, 'tailpiece-text-size')).toBe('largest')
    expect(cookieIn(cookies, 'other')).toBe('a b')
    expect(cookieIn(cookies, 'text-size')).toBeNull()
  })
  it('counts only when it is one of the words that are known', () => {
    expect(oneOf(textSizes, 'larger', 'usual')).toBe('larger')
    expect(oneOf(textSizes, 'huge', 'usual')).toBe('usual')
    expect(oneOf(textSizes, null, 'usual')).toBe('usual')
  })
})

describe('heat in words', () => {
  // 1 Btu (International Table) = 1055.05585262 J by definition: 1000 W x 3600 / 1055.05585262 = 3412.14 Btu/h.
  it('is in watts, or in BTU an hour with the watts behind', () => {
    expect(heatInWords(1000.4, 'W')).toBe('1,000 W')
    expect(heatInWords(1000, 'BtuPerHour')).toBe('3,412 BTU/h (1,000 W)')
  })
})
