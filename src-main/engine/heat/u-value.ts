import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import { refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { acceptFinite, refuseUnlessFinite } from '../units/finite.ts'

/** A solid layer, a layer known by its resistance (an air layer), or a solid layer with timber through a share of it. */
export type Layer =
  | { readonly name: string; readonly thicknessMm: number; readonly conductivityWPerMK: number }
  | { readonly name: string; readonly resistanceM2KPerW: number }
  | {
      readonly name: string
      readonly thicknessMm: number
      readonly conductivityWPerMK: number
      readonly bridge: { readonly fraction: number; readonly conductivityWPerMK: number }
    }
export type LayersInput = { readonly rsi: number; readonly rse: number; readonly layers: readonly Layer[] }
export type LayersAnswer = {
  readonly uWPerM2K: number
  readonly resistanceM2KPerW: number
  /** Only where a layer is bridged. */
  readonly upperM2KPerW?: number
  readonly lowerM2KPerW?: number
  readonly why: Derivation
}

const mostBridged = 12
const leastM2KPerW = 1e-6

/**
 * The U-value of a construction from its layers, U = 1 / R, without corrections for air gaps and fixings.
 * R = Rsi + sum(d / lambda) + Rse. Where layers are bridged R is the mean of two limits. Upper: every path through the
 * construction in parallel, 1 / R = sum(f / R of the path); several bridged layers are taken as independent of each other,
 * so a path's share is the product of its shares. Lower: each bridged layer made one in parallel, then all in a row.
 * Refuses more than 12 bridged layers (past 4096 paths), a share outside 0 to 1, thicknesses and conductivities not above
 * 0, and a construction with no resistance to speak of (under 0.000001 m2K/W).
 *
 * @param input surface resistances 0 to 1 m2K/W; layers in mm and W/mK, or m2K/W; the bridge's share of the area 0 to 1
 * @source ISO 6946, combined method; worked in annex 6.B of the Scottish building standards
 * @example layersUValue({ rsi: 0.13, rse: 0.04, layers: [{ name: 'Brick', thicknessMm: 220, conductivityWPerMK: 0.77 }, { name: 'Plaster', thicknessMm: 13, conductivityWPerMK: 0.57 }] }).value.uWPerM2K // => 2.09
 */
export function layersUValue(input: LayersInput): Outcome<LayersAnswer> {
  const wrong = refuseUnlessFinite(input) ?? problemIn(input)
  if (wrong !== null) return wrong
  const layers = input.layers.map(resistances)
  const lowerM2KPerW = layers.reduce((sum, layer) => sum + inParallel(layer), input.rsi + input.rse)
  const bridged = layers.some((layer) => layer.bridge !== undefined)
  const upperM2KPerW = bridged ? upperLimit(layers, input.rsi + input.rse) : lowerM2KPerW
  const resistanceM2KPerW = bridged ? (upperM2KPerW + lowerM2KPerW) / 2 : lowerM2KPerW
  if (!(resistanceM2KPerW >= leastM2KPerW)) {
    return refuse(
      'impossible',
      'These layers resist next to nothing; check thicknesses and surfaces.',
      'layers',
    )
  }
  const limits = bridged ? { upperM2KPerW, lowerM2KPerW } : {}
  const why = whyOf(input, layers, { resistanceM2KPerW, ...limits })
  return acceptFinite(
    { uWPerM2K: 1 / resistanceM2KPerW, resistanceM2KPerW, ...limits, why },
    'A layer here resists without end; check its thickness and conductivity.',
  )
}

type Resistances = {
  readonly mainM2KPerW: number
  readonly bridge?: { readonly fraction: number; readonly m2KPerW: number }
  readonly why: Derivation
}

function resistances(layer: Layer): Resistances {
  if ('resistanceM2KPerW' in layer) {
    const mainM2KPerW = layer.resistanceM2KPerW
    return { mainM2KPerW, why: given(layer.name, mainM2KPerW, 'm²K/W') }
  }
  const main = solid(layer.name, layer.thicknessMm, layer.conductivityWPerMK)
  if (!('bridge' in layer)) return { mainM2KPerW: main.m2KPerW, why: main.why }
  const { fraction } = layer.bridge
  const through = solid(`Bridge through ${layer.name}`, layer.thicknessMm, layer.bridge.conductivityWPerMK)
  const bridge = { fraction, m2KPerW: through.m2KPerW }
  const made = { mainM2KPerW: main.m2KPerW, bridge }
  const why = because(`${layer.name} with its bridge, in parallel`, inParallel(made), {
    unit: 'm²K/W',
    from: [main.why, through.why, given("The bridge's share of the area", fraction)],
  })
  return { ...made, why }
}

function solid(name: string, thicknessMm: number, conductivityWPerMK: number) {
  const m2KPerW = thicknessMm / 1000 / conductivityWPerMK
  const why = because(`${name}: thickness / conductivity`, m2KPerW, {
    unit: 'm²K/W',
    from: [given('Thickness', thicknessMm, 'mm'), given('Conductivity', conductivityWPerMK, 'W/mK')],
  })
  return { m2KPerW, why }
}

type Path = { readonly share: number; readonly m2KPerW: number }

/** The ways through one layer, less those that have no share of the area. */
function waysThrough({ mainM2KPerW, bridge }: Omit<Resistances, 'why'>): readonly Path[] {
  if (bridge === undefined) return [{ share: 1, m2KPerW: mainM2KPerW }]
  const ways = [
    { share: 1 - bridge.fraction, m2KPerW: mainM2KPerW },
    { share: bridge.fraction, m2KPerW: bridge.m2KPerW },
  ]
  return ways.filter((way) => way.share > 0)
}

function parallel(paths: readonly Path[]): number {
  return 1 / paths.reduce((sum, path) => sum + path.share / path.m2KPerW, 0)
}

function inParallel(layer: Omit<Resistances, 'why'>): number {
  return layer.bridge === undefined ? layer.mainM2KPerW : parallel(waysThrough(layer))
}

function upperLimit(layers: readonly Resistances[], surfacesM2KPerW: number): number {
  const start: readonly Path[] = [{ share: 1, m2KPerW: surfacesM2KPerW }]
  const paths = layers.reduce((so, layer) => {
    const ways = waysThrough(layer)
    return so.flatMap((path) =>
      ways.map((way) => ({ share: path.share * way.share, m2KPerW: path.m2KPerW + way.m2KPerW })),
    )
  }, start)
  return parallel(paths)
}

type Found = {
  readonly resistanceM2KPerW: number
  readonly upperM2KPerW?: number
  readonly lowerM2KPerW?: number
}

function whyOf({ rsi, rse }: LayersInput, layers: readonly Resistances[], found: Found): Derivation {
  const { resistanceM2KPerW, upperM2KPerW, lowerM2KPerW } = found
  const parts = [
    given('Inside surface', rsi, 'm²K/W'),
    ...layers.map((layer) => layer.why),
    given('Outside surface', rse, 'm²K/W'),
  ]
  const unit = 'm²K/W'
  const resistance =
    upperM2KPerW === undefined || lowerM2KPerW === undefined
      ? because('Surfaces and layers, added', resistanceM2KPerW, { unit, from: parts })
      : because('Mean of the upper and the lower limit', resistanceM2KPerW, {
          unit,
          from: [
            because('Upper limit: every path side by side', upperM2KPerW, { unit, from: parts }),
            because('Lower limit: each bridged layer made one, then added', lowerM2KPerW, {
              unit,
              from: parts,
            }),
          ],
        })
  const uWPerM2K = 1 / resistanceM2KPerW
  return because('U-value: 1 / resistance', uWPerM2K, {
    unit: 'W/m²K',
    source: 'ISO 6946',
    from: [resistance],
  })
}

function problemIn({ rsi, rse, layers }: LayersInput): Outcome<never> | null {
  if (rsi < 0)
    return refuse('invalid', `The inside surface resistance must be 0 or more; it was ${rsi}.`, 'rsi')
  if (rse < 0)
    return refuse('invalid', `The outside surface resistance must be 0 or more; it was ${rse}.`, 'rse')
  const index = layers.findIndex((layer) => !isSound(layer))
  if (index !== -1) {
    const message =
      `The layer “${layers[index]?.name}” must have a thickness and conductivities, or a resistance, of more than 0, ` +
      "and a bridge's share of 0 to 1."
    return refuse('invalid', message, `layers[${index}]`)
  }
  const bridged = layers.filter((layer) => 'bridge' in layer).length
  if (bridged <= mostBridged) return null
  const message = `At most ${mostBridged} layers may be bridged; there are ${bridged}. Make some of them one layer.`
  return refuse('impossible', message, 'layers')
}

function isSound(layer: Layer): boolean {
  if ('resistanceM2KPerW' in layer) return layer.resistanceM2KPerW > 0
  if (!(layer.thicknessMm > 0 && layer.conductivityWPerMK > 0)) return false
  if (!('bridge' in layer)) return true
  const { fraction, conductivityWPerMK } = layer.bridge
  return fraction >= 0 && fraction <= 1 && conductivityWPerMK > 0
}
