import { describe, expect, it } from 'vitest'
import { centreLine } from '../../../../../src-main/engine/wall/centre-line.ts'
import { placeEmitter, valvesUnder } from '../../../../../src-main/engine/wall/place-emitter.ts'
import type { PlaceInput } from '../../../../../src-main/engine/wall/wall-input.ts'
import { answered, refused } from '../../../../answered.ts'
import { readOut } from '../../../../why-for-tests.ts'
import { firmOf } from './firm-for-tests.ts'
import { bathroomWall, doublePanel, floorPipe, railInput, towelRail } from '../walls-for-tests.ts'

const figures = firmOf()
const bare = { ...bathroomWall, obstacles: [] }
const wall = { pipeCentresMm: 450, wallWidthMm: 1800 }
const left = floorPipe('left', 420, 100)
const right = floorPipe('right', 980, 100)
const at = (xMm: number) => ({ kind: 'at', xMm }) as const
const placed = (input: PlaceInput) => answered(placeEmitter(input, figures))

describe('the reason of a centre line', () => {
  it.each([
    [
      { centre: { kind: 'betweenPipes' }, pipes: [left, right] },
      [
        'The centre line is midway between the pipes.: 700 mm',
        '  The left pipe, from the left end of the wall: 420 mm (survey)',
        '  The right pipe, from the left end of the wall: 980 mm (survey)',
      ],
    ],
    [
      { centre: { kind: 'fromPipe', side: 'left' }, pipes: [left] },
      [
        'The centre line is half the pipe centres to the right of the left pipe.: 645 mm',
        '  The left pipe, from the left end of the wall: 420 mm (survey)',
        "  The emitter's pipe centres: 450 mm (catalogue)",
      ],
    ],
    [
      { centre: { kind: 'fromPipe', side: 'right' }, pipes: [right] },
      [
        'The centre line is half the pipe centres to the left of the right pipe.: 755 mm',
        '  The right pipe, from the left end of the wall: 980 mm (survey)',
        "  The emitter's pipe centres: 450 mm (catalogue)",
      ],
    ],
    [
      { centre: { kind: 'middleOfWall' }, pipes: [] },
      ['The centre line is the middle of the wall.: 900 mm', '  Width of the wall: 1800 mm (survey)'],
    ],
    [
      { centre: { kind: 'at', xMm: 612 }, pipes: [] },
      [
        'The centre line is where it was put.: 612 mm',
        '  Where the centre line was put, from the left end of the wall: 612 mm (survey)',
      ],
    ],
  ] as const)('%j', (input, lines) => {
    expect(readOut(answered(centreLine({ ...input, ...wall })).why)).toEqual(lines)
  })

  const missing = (found: string) =>
    `Centring between the pipes takes a pipe on the left and one on the right; ${found}. Add the missing pipe, or set the centre from one pipe, from the wall or by hand.`
  it.each([
    [{ kind: 'betweenPipes' }, [], 'pipes', missing('no pipe was surveyed')],
    [{ kind: 'betweenPipes' }, [left], 'pipes', missing('the survey has pipes on the left only')],
    [{ kind: 'betweenPipes' }, [right, right], 'pipes', missing('the survey has pipes on the right only')],
    [
      { kind: 'fromPipe', side: 'left' },
      [right],
      'centre.side',
      'There is no pipe on the left to set out from; the survey has pipes on the right only. Add it, or set the centre in another way.',
    ],
    [
      { kind: 'fromPipe', side: 'right' },
      [],
      'centre.side',
      'There is no pipe on the right to set out from; no pipe was surveyed. Add it, or set the centre in another way.',
    ],
  ] as const)('is refused for %j with %j', (centre, pipes, path, message) => {
    expect(refused(centreLine({ centre, pipes, ...wall }))).toEqual({ code: 'invalid', path, message })
  })
})

describe('the reasons of a place', () => {
  // The rail is 500 wide on centres of 450: half of 450 and half a valve of 20, less 250, is below nothing.
  it('of valves that hang under the emitter', () => {
    const { whys, dropMm, envelope } = placed(railInput({ wall: bare, centre: at(645) }))
    expect([dropMm, envelope]).toEqual([
      65,
      { leftMm: 395, rightMm: 895, bottomMm: 235, topMm: 1500, frontMm: 100 },
    ])
    const room = (side: string) => [
      `  Room for the valve on the ${side}: it hangs under the emitter.: 0 mm`,
      '    Pipe centres: 450 mm (catalogue)',
      '    Width: 500 mm (catalogue)',
      '    valveBodyHalfMm: 20 Mm (the firm)',
    ]
    expect(readOut(whys.envelope)).toEqual([
      'Width on the wall, with the valves.: 500 mm',
      '  Width: 500 mm (catalogue)',
      '  Height: 1200 mm (catalogue)',
      '  Bottom edge above the floor: 300 mm (survey)',
      ...room('left'),
      ...room('right'),
    ])
    expect(readOut(whys.drop)).toEqual(['valveDropUnderMm: 65 Mm (the firm)'])
    expect(readOut(whys.front)).toEqual([
      'How far it stands out.: 100 mm',
      '  From the wall to the back of the emitter: 60 mm (catalogue)',
      '  Depth of the emitter: 40 mm (catalogue)',
    ])
  })

  it('of valves under a narrow emitter that show beside it by the rest of their body', () => {
    // 490 / 2 + 20 - 250 = 15.
    const emitter = { ...towelRail, pipeCentresMm: 490 }
    expect(placed(railInput({ wall: bare, emitter, centre: at(645) })).envelope).toMatchObject({
      leftMm: 380,
      rightMm: 910,
    })
    // As wide as its pipe centres, they hang under it still: 250 + 20 - 250.
    const even = placed(
      railInput({ wall: bare, emitter: { ...towelRail, pipeCentresMm: 500 }, centre: at(645) }),
    )
    expect([even.envelope.leftMm, even.dropMm]).toEqual([375, 65])
    expect([
      valvesUnder({ widthMm: 500, pipeCentresMm: 500 }),
      valvesUnder({ widthMm: 499, pipeCentresMm: 500 }),
    ]).toEqual([true, false])
  })

  it('of valves that stand beside a curved one', () => {
    // The firm asks 60; 1290 / 2 + 20 - 600 = 65 is more.
    const { whys, dropMm, envelope, valves } = placed(
      railInput({ wall: { ...bare, widthMm: 4000 }, emitter: doublePanel, centre: at(2000), curved: true }),
    )
    expect([dropMm, envelope.leftMm, envelope.rightMm]).toEqual([25, 1335, 2665])
    expect(valves).toEqual([
      { side: 'left', xMm: 1355, yMm: 275 },
      { side: 'right', xMm: 2645, yMm: 275 },
    ])
    const room = (side: string) => [
      `  Room for the valve on the ${side}: it stands beside the emitter.: 65 mm`,
      '    Pipe centres: 1290 mm (catalogue)',
      '    Width: 1200 mm (catalogue)',
      '    valveBodyHalfMm: 20 Mm (the firm)',
      '    valveSideMm: 60 Mm (the firm)',
    ]
    expect(readOut(whys.envelope).slice(4)).toEqual([...room('left'), ...room('right')])
    expect(readOut(whys.envelope)[0]).toBe('Width on the wall, with the valves.: 1330 mm')
    expect(readOut(whys.drop)).toEqual(['valveDropBesideMm: 25 Mm (the firm)'])
    expect(readOut(whys.front)).toEqual([
      'How far it stands out, curved.: 141 mm',
      '  From the wall to the back of the emitter: 35 mm (catalogue)',
      '  Depth of the emitter: 100 mm (catalogue)',
      '  curvedExtraMm: 6 Mm (the firm)',
    ])
  })

  it('of room that was given, and of a side without a valve', () => {
    const given = placed(railInput({ wall: bare, centre: at(645), valves: { sideMm: 0, dropMm: 0 } }))
    expect(readOut(given.whys.envelope).slice(4)).toEqual([
      '  Room for the valve on the left: 0 mm (given)',
      '  Room for the valve on the right: 0 mm (given)',
    ])
    expect(readOut(given.whys.drop)).toEqual(['From the bottom edge down to the pipe entry: 0 mm (given)'])
    const tappings = [{ at: 'bottomRight', thread: 'G1/2', holds: 'valve' }] as const
    const one = placed(railInput({ wall: bare, centre: at(645), emitter: { ...towelRail, tappings } }))
    expect(readOut(one.whys.envelope)[4]).toBe(
      '  Room for the valve on the left: the emitter has no valve there: 0 mm',
    )
    expect(one.valves).toEqual([{ side: 'right', xMm: 870, yMm: 235 }])
  })

  it.each([
    [['bottomLeft'], ['left']],
    [['topLeft'], ['left']],
    [['topRight'], ['right']],
    [['bottomMiddle'], ['left', 'right']],
    [[], ['left', 'right']],
  ] as const)('a valve at %j stands on %j', (places, sides) => {
    const tappings = places.map((place) => ({ at: place, thread: 'G1/2' as const, holds: 'valve' as const }))
    const vent = { at: 'topRight', thread: 'G1/2', holds: 'vent' } as const
    const emitter = {
      ...towelRail,
      tappings: places.includes('topRight' as never) ? tappings : [...tappings, vent],
    }
    const { valves } = placed(railInput({ wall: bare, centre: at(645), emitter }))
    expect(valves.map(({ side }) => side)).toEqual(sides)
  })

  it('up to 20 m off, and no further', () => {
    const far = (xMm: number) => placeEmitter(railInput({ wall: bare, centre: at(xMm) }), figures)
    expect(answered(far(19_750)).envelope.rightMm).toBe(20_000)
    for (const xMm of [19_750.1, -19_750.1])
      expect(refused(far(xMm))).toEqual({
        code: 'impossible',
        path: 'centre',
        message:
          'The emitter would lie more than 20 m from the left end of the wall; give a centre and sizes that are on it.',
      })
  })
})
