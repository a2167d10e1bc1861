import { describe, expect, it } from 'vitest'
import { certain } from '../../../src-main/domain/outcome.ts'
import { quick, quickWatts } from '../../quick-room-for-tests.ts'

const element = (name: string, entry: Parameters<typeof quick>[0]) =>
  certain(quick(entry)).heat.elements.find((one) => one.name === name)

describe('a room entered quickly takes its U-values from the published tables', () => {
  // RdSAP 2009 (version 9.90) table S6, England and Wales, as printed.
  it.each([
    ['cavity', 'C', 1.6],
    ['cavity', 'G', 0.6],
    ['cavityFilled', 'E', 0.5],
    ['solidBrick', 'A', 2.1],
    ['timberFrame', 'K', 0.3],
  ] as const)('an outside wall, %s of age band %s: %d', (wall, ageBand, u) => {
    expect(element('Outside walls', { wall, ageBand })?.uWPerM2K).toBe(u)
  })

  // RdSAP 2009 table S7: Scotland's walls of band H are better.
  it('an outside wall in Scotland', () => {
    expect(element('Outside walls', { ageBand: 'H', country: 'scotland' })?.uWPerM2K).toBe(0.45)
    expect(element('Outside walls', { ageBand: 'H' })?.uWPerM2K).toBe(0.6)
  })

  // RdSAP 2012 (version 9.94) table S14.
  it.each([
    ['single', 4.8],
    ['double', 2],
    ['triple', 1.8],
    ['secondary', 2.4],
  ])('glass, %s: %d', (glazing, u) => {
    expect(element('Outside walls', { glazing })?.openings).toEqual([
      { name: 'Windows', areaM2: 1.44, uWPerM2K: u },
    ])
  })

  // RdSAP 2012 (version 9.94): an outside door is 1.85 m2; table S15a: 3.0, and 2.0 in band K.
  it('outside doors', () => {
    expect(element('Outside walls', { windowCount: 0, outsideDoorCount: 2 })?.openings).toEqual([
      { name: 'Outside doors', areaM2: 3.7, uWPerM2K: 3 },
    ])
    expect(element('Outside walls', { windowCount: 0, outsideDoorCount: 1, ageBand: 'K' })?.openings).toEqual(
      [{ name: 'Outside doors', areaM2: 1.85, uWPerM2K: 2 }],
    )
  })

  // RdSAP 2009 table S9 by thickness; RdSAP 2012 table S10 by age.
  it('roofs', () => {
    expect(element('Roof', { above: 'loft', loftInsulationMm: 100 })?.uWPerM2K).toBe(0.4)
    expect(element('Roof', { above: 'loft' })?.uWPerM2K).toBe(2.3)
    expect(element('Roof', { above: 'flatRoof', ageBand: 'J' })?.uWPerM2K).toBe(0.25)
  })

  // RdSAP 2012 table S12; EN 12831-1:2017 table B.2 for a space with three outside walls or more.
  it('floors over outside air or a garage; band F, which the table leaves out, as E beside it', () => {
    expect(element('Floor', { below: 'outside', ageBand: 'I' })).toMatchObject({
      uWPerM2K: 0.51,
      boundary: { kind: 'outside' },
    })
    expect(element('Floor', { below: 'unheated', ageBand: 'F' })).toMatchObject({
      uWPerM2K: 1.2,
      boundary: { kind: 'unheated', factor: 0.8 },
    })
  })

  // ISO 13370, by hand: B' = 12 / (0.5 x 4) = 6 m; d = 0.3 + 1.5 x 0.21 = 0.615 m, less than B';
  // U = 2 x 1.5 / (pi x 6 + 0.615) x ln(pi x 6 / 0.615 + 1) = 0.1541 x 3.4547 = 0.5325.
  it('a solid ground floor by its area and outside edge', () => {
    expect(element('Ground floor', { below: 'solidGround' })).toEqual({
      name: 'Ground floor',
      areaM2: 12,
      uWPerM2K: 0.53,
      boundary: { kind: 'ground', meanOutsideC: 10 },
    })
  })

  // Floor insulation by age, RdSAP 2012 table S11 (band K: 100 mm) at 0.035 W/mK; ISO 13370 for well insulated floors:
  // R = 2.8571; d = 0.3 + 1.5 x (0.17 + 2.8571 + 0.04) = 4.9007 < B' = 6; U = 3 / (18.850 + 4.9007) x ln(18.850 / 4.9007 + 1) = 0.1994.
  it('a solid ground floor of band K with the insulation that its age assumes', () => {
    expect(element('Ground floor', { below: 'solidGround', ageBand: 'K' })?.uWPerM2K).toBe(0.2)
  })
})

describe('temperature, air and bridges of a room entered quickly', () => {
  // NHBC Standards 8.1.10 table 7 (living and dining 21, hall 18); MCS standard set (bathroom 22, all other rooms 18);
  // bedroom, kitchen, toilet, utility: Domestic Heating Design Guide, from memory.
  it.each([
    ['living', 21],
    ['dining', 21],
    ['hall', 18],
    ['bathroom', 22],
    ['bedroom', 18],
    ['kitchen', 18],
    ['toilet', 18],
    ['utility', 18],
    ['study', 18],
    ['other', 18],
  ] as const)('%s at %d degrees', (use, roomC) => {
    expect(certain(quick({}, { use })).roomC).toBe(roomC)
  })

  // CIBSE Domestic Heating Design Guide table 3.8: before 2000, 2000 or later, after 2006.
  it.each([
    ['living', 1.5, 1, 0.5],
    ['bedroom', 1, 1, 0.5],
    ['kitchen', 2, 1.5, 0.5],
    ['hall', 2, 1, 0.5],
    ['bathroom', 3, 1.5, 0.5],
    ['toilet', 3, 1.5, 1.5],
    ['utility', 3, 2, 0.5],
    ['dining', 1.5, 1, 0.5],
    ['study', 1.5, 1.5, 0.5],
    ['other', 1.5, 1, 0.5],
  ] as const)('%s: %d, %d and %d air changes an hour by age', (use, before, from2000, after) => {
    const air = (ageBand: 'H' | 'J' | 'K') => certain(quick({ ageBand }, { use })).heat.airChangesPerHour
    expect([air('H'), air('J'), air('K')]).toEqual([before, from2000, after])
  })

  it('a band across the year 2000, and old glass, take the older column', () => {
    expect(certain(quick({ ageBand: 'I' })).heat.airChangesPerHour).toBe(1.5)
    expect(certain(quick({ ageBand: 'J', glazing: 'single' })).heat.airChangesPerHour).toBe(1.5)
    expect(certain(quick({ ageBand: 'I', country: 'northernIreland' })).heat.airChangesPerHour).toBe(1)
  })

  // EN 12831-1:2017 table B.1: all others 0.10; new, normal good practice 0.05.
  it('bridges', () => {
    expect(certain(quick({ ageBand: 'K' })).heat.thermalBridgeWPerM2K).toBe(0.1)
    expect(certain(quick({ ageBand: 'L' })).heat.thermalBridgeWPerM2K).toBe(0.05)
  })
})

describe('a whole room entered quickly', () => {
  // By hand from the same tables: 4 x 3 x 2.4 m, two outside walls (7 m, 16.8 m2), window 1.44 m2, band C, loft of 100 mm, rooms
  // beside and below as warm, 21 inside and -3 outside (24 K), bridges 0.1 on all of it:
  // wall 15.36 x 1.7 x 24 = 626.688; window 1.44 x 2.1 x 24 = 72.576; roof 12 x 0.5 x 24 = 144; air 0.34 x 1.5 x 28.8 x 24 = 352.512.
  it('needs what the sums by hand give', () => {
    expect(quickWatts({ outsideWallCount: 2, above: 'loft', loftInsulationMm: 100 })).toBeCloseTo(1195.776, 6)
  })
  // Domestic Heating Design Guide: a neighbour's dwelling is taken at the year's mean outside, about 10 degrees.
  it('loses to another dwelling as to 10 degrees', () => {
    expect(quickWatts({ below: 'otherDwelling' }) - quickWatts()).toBeCloseTo(12 * 1.8 * 11, 6)
    expect(quickWatts({ above: 'otherDwelling' }) - quickWatts()).toBeCloseTo(12 * 1.8 * 11, 6)
  })
})
