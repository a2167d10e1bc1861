/// <reference types="vite/client" />
import { MantineProvider } from '@mantine/core'
import { QueryClient, QueryClientProvider } from '@tanstack/react-query'
import type { ReactNode } from 'react'
import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, it } from 'vitest'
import { houseWhy, roomWhy, swapWhy } from '../../../src-renderer/screens/house/flow-answer.ts'
import { compareSentence, houseSentence } from '../../../src-renderer/screens/house/house-sentence.ts'
import { houseStates } from '../../../src-renderer/screens/house/house.states.ts'
import { leftOut } from '../../../src-renderer/screens/house/left-out.ts'
import { axisOf, openRooms, roomRows, shareAt } from '../../../src-renderer/screens/house/room-rows.ts'
import { RoomScale } from '../../../src-renderer/screens/house/room-scale.tsx'
import type { AnswerOf } from '../../../src-main/contract/requests.ts'
import type { Desk } from '../../../src-main/desk/desk.ts'
import { answer } from '../../../src-main/desk/router.ts'
import { job as jobShape } from '../../../src-main/domain/job.ts'
import type { Outcome } from '../../../src-main/domain/outcome.ts'
import sample from '../../../resources/sample/two-rooms.job.json' with { type: 'json' }
import { answered } from '../../answered.ts'

const both = new Set(['room-0', 'room-1'])
const drawn = (what: ReactNode) =>
  renderToStaticMarkup(
    <QueryClientProvider client={new QueryClient()}>
      <MantineProvider>{what}</MantineProvider>
    </QueryClientProvider>,
  )

describe('the rooms of a house', () => {
  it('stand in the order of the flow that each needs with the swaps done, the worst on top', () => {
    const rows = roomRows(houseStates.two, both)
    expect(rows.map(({ name, before, after, decides }) => [name, before.says, after.says, decides])).toEqual([
      ['Bathroom', '59.3 °C', '52.5 °C', true],
      ['Back bedroom', '58.6 °C', '45.2 °C', false],
    ])
  })
  it('have one that stays short above all, and one that needs no heat below all', () => {
    const rows = roomRows(houseStates.short, both)
    expect(rows.map(({ name, after }) => [name, after.says])).toEqual([
      ['Lounge', 'Short at 75.0 °C'],
      ['Bathroom', '52.5 °C'],
      ['Landing', 'Needs no heat'],
    ])
    expect(rows[1]?.before).toEqual({ flowC: null, says: 'Short at 75.0 °C' })
    expect(rows.some(({ decides }) => decides)).toBe(false)
  })
  it('leave out those that back no claim, and list them with the reason in the order of the job', () => {
    expect(roomRows(houseStates.partly, both).map(({ name }) => name)).toEqual(['Bathroom'])
    expect(openRooms(houseStates.roughOnly).map(({ name, kind }) => [name, kind])).toEqual([
      ['Hall', 'rough'],
      ['Loft room', 'notSurveyed'],
    ])
    expect(openRooms(houseStates.two)).toEqual([])
  })
  it('share a scale of whole tens with room at both ends', () => {
    const axis = axisOf(roomRows(houseStates.two, both))
    expect(axis).toEqual({ fromC: 40, toC: 70, ticksC: [40, 50, 60, 70] })
    expect(shareAt(axis, 40)).toBe(0)
    expect(shareAt(axis, 55)).toBe(0.5)
    expect(shareAt(axis, 90)).toBe(1)
    expect(shareAt(axis, 10)).toBe(0)
    expect(axisOf([])).toEqual({ fromC: 30, toC: 50, ticksC: [30, 40, 50] })
    expect(axisOf(roomRows(houseStates.one, both)).ticksC).toEqual([40, 50, 60])
  })
  it('are all there when there are thirty, with the longest name whole and every number in words', () => {
    const page = drawn(<RoomScale answer={houseStates.tooLong} swappedRooms={new Set(['room-0'])} />)
    expect(page.split('<tr').length - 1).toBe(31)
    expect(page).toContain('Bedroom over the garage over the garage over the garage')
    expect(page).toContain('No swap')
    expect(page).toContain('aria-label="Why: the flow temperature of Room 30"')
    expect(drawn(<RoomScale answer={houseStates.roughOnly} swappedRooms={both} />)).toContain(
      'No room can be put in order yet',
    )
  })
})

describe('the answer in one sentence', () => {
  it('names the temperature and the room that decides it', () => {
    expect(houseSentence(houseStates.two, 2)).toBe(
      'With these swaps the house is warm at 52.5 °C flow; Bathroom decides it.',
    )
    expect(houseSentence(houseStates.one, 1)).toMatch(/^With this swap the house is warm at 48\.0 °C flow/)
    expect(houseSentence(houseStates.one, 0)).toMatch(/^As it is the house/)
  })
  it('speaks only of the measured rooms where others are guessed, and of none where all are', () => {
    expect(houseSentence(houseStates.partly, 1)).toBe(
      'With this swap the rooms that are measured are warm at 52.5 °C flow; Bathroom decides it.',
    )
    expect(houseSentence(houseStates.roughOnly, 1)).toBe(
      'With this swap nothing can be said of the house: no room is measured and surveyed yet.',
    )
  })
  it('says who stays short', () => {
    expect(houseSentence(houseStates.short, 2)).toBe(
      'With these swaps the house is not warm: Lounge stays short of heat even at 75.0 °C.',
    )
  })
  it('compares with the house as it is only where both are of the same rooms', () => {
    expect(compareSentence(houseStates.two, 2)).toBe(
      'As it is, it takes 59.3 °C (Bathroom): the swaps lower it by 6.8 K.',
    )
    expect(compareSentence(houseStates.two, 0)).toBeNull()
    expect(compareSentence(houseStates.notSurveyedBefore, 1)).toBeNull()
    expect(compareSentence(houseStates.short, 2)).toBe('As it is, Lounge stays cold even at 75.0 °C.')
    expect(compareSentence(houseStates.roughOnly, 1)).toBe('What it takes as it is, nobody has surveyed.')
  })
})

describe('a swap that is left out', () => {
  it('raises the house to what that room then needs; the one missed most comes first', () => {
    const effects = leftOut(houseStates.two, both)
    // By hand: without the bathroom 59.3 - 52.5 = 6.8 K; without the bedroom 58.6 - 52.5 = 6.1 K.
    expect(effects.map(({ name, raisesK }) => [name, raisesK])).toEqual([
      ['Bathroom', 6.8],
      ['Back bedroom', 6.1],
    ])
    expect(effects[1]?.says).toBe('Leaving out Back bedroom raises it by 6.1 K, to 58.6 °C; it then decides.')
    expect(effects[1]?.why).toMatchObject({ value: 6.1, unit: 'K' })
    expect(JSON.stringify(effects[1]?.why)).toContain('Back bedroom before')
    expect(JSON.stringify(effects[1]?.why)).toContain('Bathroom after')
  })
  it('says so where it would stay cold, where another room does, and where nobody surveyed what is there', () => {
    expect(leftOut(houseStates.short, both).map(({ name, kind }) => [name, kind])).toEqual([
      ['Lounge', 'cold'],
      ['Bathroom', 'cold'],
    ])
    const [unknown] = leftOut(houseStates.notSurveyedBefore, new Set(['room-0']))
    expect(unknown).toMatchObject({ kind: 'notKnown', raisesK: null })
  })
  it('is none where the room has no swap', () => {
    expect(leftOut(houseStates.two, new Set())).toEqual([])
  })
})

describe('the reasons of the desk’s answer', () => {
  it('are found for the house, for each room and for each swap', async () => {
    const desk: Desk = {
      today: '2026-11-25',
      now: () => '2026-11-25T19:00:00Z',
      store: null,
      dataFolder: null,
      papersFolder: '/nowhere',
      mayChoosePath: false,
    }
    const job = jobShape.parse(sample)
    const told = answered((await answer('job.flow', { job }, desk)) as Outcome<AnswerOf<'job.flow'>>)
    // Known from hand checks: the bathroom's old radiator takes 59.3 °C, the bedroom's 50.5 °C.
    expect(roomWhy(told, 'before', 0)).toMatchObject({ value: 59.3, unit: '°C' })
    expect(roomWhy(told, 'before', 1)).toMatchObject({ value: 50.5, unit: '°C' })
    expect(houseWhy(told, 'after').value).toBe(told.after.flowC)
    expect(told.swaps.map((_, place) => swapWhy(told, place).says)).toEqual(
      told.swaps.map(({ says }) => says),
    )
    expect(() => swapWhy(told, 9)).toThrow('no reasons for swap 9')
  })
})
