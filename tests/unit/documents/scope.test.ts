import { describe, expect, it } from 'vitest'
import { customerQuoteView } from '../../../src-main/documents/customer-quote-view.ts'
import type { Emitter } from '../../../src-main/domain/item.ts'
import type { Job, Room, Swap } from '../../../src-main/domain/job.ts'
import { testEmitter, testMaterial, testSetOut } from '../../documents/material-for-tests.ts'
import { bedroomJob } from '../../job-for-tests.ts'

type Changes = {
  readonly swap?: Partial<Swap>
  readonly room?: Partial<Room>
  readonly emitter?: Partial<Emitter>
  readonly system?: Partial<Job['survey']['system']>
}

function workOf({ swap = {}, room = {}, emitter = {}, system = {} }: Changes): readonly string[] {
  const job = bedroomJob()
  const changed: Job = {
    ...job,
    survey: { ...job.survey, system: { ...job.survey.system, ...system } },
    rooms: job.rooms.map((one) => ({ ...one, ...room })),
    swaps: job.swaps.map((one) => ({ ...one, ...swap })),
  }
  const emitters = { 'swap-1': { ...testEmitter, ...emitter } }
  const { rooms, wholeJob } = customerQuoteView(testMaterial({ job: changed, emitters }))
  return [...rooms.flatMap((one) => one.work), ...wholeJob].map((text) => text.replaceAll('\u00a0', ' '))
}

const tiled = (wall: Room['walls'][number]) => ({ ...wall, finish: 'tile' as const })
const [bedroom] = bedroomJob().rooms

describe('what the quote says will be done', () => {
  it('makes good old holes in plaster and seals them in tile', () => {
    const existing = {
      name: 'Single panel radiator, 600 high x 500 wide',
      widthMm: 500,
      heightMm: 600,
      oldHoles: { count: 4, diameterMm: 8, depthMm: 50 },
    }
    expect(workOf({ swap: { existing } })).toContain(
      'Take down the single panel radiator, 600 high × 500 wide, on the window wall and make good its 4 fixing holes.',
    )
    expect(workOf({ swap: { existing }, room: { walls: (bedroom?.walls ?? []).map(tiled) } })).toContain(
      'Take down the single panel radiator, 600 high × 500 wide, on the window wall and seal its 4 fixing holes in the tile.',
    )
  })

  it('names the wall where nothing hangs yet', () => {
    const swap = { existing: undefined } as unknown as Partial<Swap>
    expect(workOf({ swap }).join(' ')).toContain(
      'Fit a double panel radiator with two rows of fins on the window wall, 1000 mm wide',
    )
  })

  it('says what kind of emitter goes up, and its centre from what can be measured', () => {
    const rail = {
      form: { kind: 'towelRail', curve: 'curved', rungs: 20 },
      finish: 'chrome',
      widthMm: 500,
      heightMm: 1200,
    } as const
    const swap = { centre: { kind: 'fromPipe', side: 'left' } } as const
    // Centre 1550 mm, left pipe at 1020 mm.
    expect(workOf({ emitter: rail, swap })).toContain(
      'Fit a curved chrome towel rail, 500 mm wide and 1200 mm high, its centre 530 mm from the left pipe and its bottom edge 150 mm above the floor.',
    )
    const column = { form: { kind: 'column', columns: 8, sections: 12 } } as const
    expect(workOf({ emitter: column, swap: { centre: { kind: 'at', xMm: 1550 } } }).join(' ')).toMatch(
      /Fit an 8-column radiator of 12 sections, .*its centre 1550 mm from the left end of the wall/,
    )
  })

  it('fits manual valves in the room with the thermostat, and keeps what the survey keeps', () => {
    expect(workOf({ room: { holdsThermostat: true } }).join(' ')).toContain(
      'Fit two new manual valves, white: the room holds',
    )
    expect(workOf({ swap: { valves: { kind: 'keep', finish: 'white' } } })).toContain(
      'Keep the valves that are there.',
    )
  })

  it('leaves the wiring of an element to an electrician, outside the price', () => {
    const said = workOf({ swap: { elementW: 300 } }).join(' ')
    expect(said).toContain(
      'Fit a 300 W electric heating element. A qualified electrician connects it; that is not in this price.',
    )
  })

  it('tells draining, isolating and freezing apart', () => {
    expect(workOf({ system: { drain: 'wholeSystem' } }).join(' ')).toContain('drain the whole system')
    expect(workOf({ system: { drain: 'isolatedPart' } }).join(' ')).toContain('isolate and drain the part')
    expect(workOf({ system: { drain: 'freeze' } }).join(' ')).toContain('freeze the pipes')
    expect(workOf({ system: { flush: true } }).join(' ')).toContain('flush it with cleaner')
  })

  it('says once what both pipes need', () => {
    const [left] = testSetOut.pipeOffsets
    if (left === undefined) throw new Error('The test set-out has pipes')
    const both = { ...testSetOut, pipeOffsets: [left, { ...left, side: 'right' as const }] }
    const { rooms } = customerQuoteView(testMaterial({ setOuts: { 'swap-1': both } }))
    expect(rooms[0]?.work).toContain('Ease both pipes across to their valves.')
  })
})
