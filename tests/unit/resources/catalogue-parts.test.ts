import { describe, expect, it } from 'vitest'
import type { Part } from '../../../src-main/domain/item.ts'
import { boardScrew, studScrew } from '../../../src-main/engine/takeoff/board-screws.ts'
import { specMatches } from '../../../src-main/engine/takeoff/match-spec.ts'
import { fixings, ids, parts, partsOf, prices } from './catalogue-on-disk.ts'

describe('the parts of the catalogue', () => {
  it('have plugs whose screws are thinner than the hole, and a screw for every plug', () => {
    // Screws for each bit, mm: trade practice, from memory.
    const practice: Record<number, readonly [number, number]> = {
      5.5: [3, 4],
      6: [3.5, 5],
      7: [4.5, 6],
      8: [4.5, 6],
      10: [6, 8],
    }
    for (const { itemId, spec } of partsOf('plug')) {
      const { bitMm, lengthMm, screwLeastMm, screwMostMm } = spec
      expect(screwLeastMm < screwMostMm && screwMostMm < bitMm, itemId).toBe(true)
      const known = practice[bitMm]
      if (known !== undefined) expect([screwLeastMm, screwMostMm], itemId).toEqual(known)
      const screws = partsOf('screw').filter(
        (screw) =>
          screw.spec.diameterMm >= screwLeastMm &&
          screw.spec.diameterMm <= screwMostMm &&
          screw.spec.lengthMm >= lengthMm,
      )
      expect(screws.length, itemId).toBeGreaterThan(0)
    }
  })

  it('have what every way of fixing and every backing board calls for', () => {
    for (const { fixingId, plug, screw, anchor, allowedShearN, allowedPullN } of fixings) {
      const plugs = plug === undefined ? null : partsOf('plug').filter(({ spec }) => specMatches(spec, plug))
      const screws =
        screw === undefined ? null : partsOf('screw').filter(({ spec }) => specMatches(spec, screw))
      const anchors =
        anchor === undefined ? null : partsOf('anchor').filter(({ spec }) => specMatches(spec, anchor))
      expect(plugs?.length ?? 1, `${fixingId}: plug`).toBe(1)
      expect(screws?.length ?? 1, `${fixingId}: screw`).toBe(1)
      expect(anchors?.length ?? 1, `${fixingId}: anchor`).toBeGreaterThan(0)
      if (plugs !== null && screw !== undefined) {
        const [held] = plugs
        expect((held?.spec.screwLeastMm ?? 99) <= screw.diameterMm, fixingId).toBe(true)
        expect((held?.spec.screwMostMm ?? 0) >= screw.diameterMm, fixingId).toBe(true)
      }
      const weaker = (anchors ?? []).filter(
        ({ spec }) => spec.allowedShearN < allowedShearN || spec.allowedPullN < allowedPullN,
      )
      expect(ids(weaker), `${fixingId}: anchors that carry less than the fixing says`).toEqual([])
    }
    for (const wanted of [boardScrew, studScrew]) {
      expect(partsOf('screw').filter(({ spec }) => specMatches(spec, wanted)).length).toBe(1)
    }
  })

  it('have a valve for every role, body and usual pipe', () => {
    const missing: string[] = []
    const has = (wanted: Record<string, string | number>) => {
      if (!partsOf('valve').some(({ spec }) => specMatches(spec, wanted)))
        missing.push(JSON.stringify(wanted))
    }
    for (const role of ['thermostatic', 'lockshield', 'manual']) {
      for (const body of ['straight', 'angled', 'corner']) {
        for (const pipeMm of [8, 10, 15]) {
          const finishes = pipeMm === 15 ? ['chrome', 'white', 'black', 'brass'] : ['chrome', 'white']
          for (const finish of finishes) has({ role, body, pipeMm, thread: 'G1/2', finish })
        }
      }
    }
    expect(missing).toEqual([])
  })

  it('have pipe, fittings, clips, collars and insulation for every size that copper comes in', () => {
    for (const outsideMm of [8, 10, 15, 22] as const) {
      const size = { outsideMm }
      const some = (kind: Part['kind'], wanted: Record<string, string | number>) =>
        expect(
          parts.filter((one) => one.kind === kind && specMatches(one.spec, { ...size, ...wanted })).length,
          `${kind} ${outsideMm} ${JSON.stringify(wanted)}`,
        ).toBeGreaterThan(0)
      some('pipe', { material: 'copper' })
      some('clip', {})
      some('collar', { finish: 'white' })
      some('collar', { finish: 'chrome' })
      some('insulation', { wallMm: 13 })
      for (const shape of ['elbow', 'coupler', 'tee', 'stopEnd'])
        some('pipeFitting', { shape, joint: 'compression' })
      if (outsideMm === 8) continue
      some('pipe', { material: 'plastic' })
      some('pipeFitting', { shape: 'insert', joint: 'none' })
      for (const shape of ['elbow', 'coupler']) some('pipeFitting', { shape, joint: 'pushFit' })
    }
    const reducer = { shape: 'reducer', joint: 'compression', outsideMm: 22, toMm: 15 }
    expect(partsOf('pipeFitting').filter(({ spec }) => specMatches(spec, reducer)).length).toBe(1)
  })

  it('sell the vent and the blank on an O-ring cheapest, since no tape is counted for them', () => {
    for (const kind of ['vent', 'blank'] as const) {
      const cheapest = (['oRing', 'none'] as const).map((sealing) => {
        const these = ids(
          parts.filter((one) => one.kind === kind && specMatches(one.spec, { thread: 'G1/2', sealing })),
        )
        return Math.min(
          ...prices
            .filter(({ itemId }) => these.includes(itemId))
            .map((price) => price.packPence / price.packHolds),
        )
      })
      expect(cheapest[0], kind).toBeLessThan(cheapest[1] ?? 0)
    }
  })
})
