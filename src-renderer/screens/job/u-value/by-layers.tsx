import { Button, NativeSelect, TextInput } from '@mantine/core'
import { useState } from 'react'
import { layer as layerShape } from '../../../../src-main/contract/heating/heat.ts'
import type { Layer } from '../../../../src-main/contract/heating/heat.ts'
import { layersUValue } from '../../../../src-main/engine/heat/u-value.ts'
import { Row, Stack } from '../../../parts/card.tsx'
import styles from '../job.module.css'
import { NumberBox } from '../quick/number-box.tsx'
import type { TakeFound } from './found-u.ts'
import { words } from './u-value.words.ts'

type Typed = {
  readonly name: string
  readonly thicknessMm: unknown
  readonly conductivityWPerMK: unknown
  readonly resistanceM2KPerW: unknown
  /** Timber through a share of the layer; null where there is none. */
  readonly bridge: { readonly percent: unknown; readonly conductivityWPerMK: unknown } | null
}
const newLayer: Typed = {
  name: '',
  thicknessMm: undefined,
  conductivityWPerMK: undefined,
  resistanceM2KPerW: undefined,
  bridge: null,
}

/** Surface resistances inside, m2K/W, by the way the heat goes (ISO 6946); outside is 0.04. */
const ways = [
  { value: '0.13', label: words.layers.ways.wall },
  { value: '0.1', label: words.layers.ways.up },
  { value: '0.17', label: words.layers.ways.down },
]

/** A U-value from the layers of a construction, from inside to outside. */
export function ByLayers({ found }: { readonly found: TakeFound }) {
  const [rsi, setRsi] = useState('0.13')
  const [layers, setLayers] = useState<readonly Typed[]>([newLayer])
  const put = (next: readonly Typed[], inside: string) => {
    setLayers(next)
    setRsi(inside)
    found(read(next, Number(inside)))
  }
  const alter = (at: number, part: Partial<Typed>) =>
    put(
      layers.map((one, nth) => (nth === at ? { ...one, ...part } : one)),
      rsi,
    )
  return (
    <Stack>
      <NativeSelect
        label={words.layers.what}
        value={rsi}
        data={ways}
        onChange={({ currentTarget }) => put(layers, currentTarget.value)}
      />
      {layers.map((one, at) => (
        <LayerBoxes
          key={at}
          nth={at + 1}
          layer={one}
          alter={(part) => alter(at, part)}
          remove={() =>
            put(
              layers.filter((_, nth) => nth !== at),
              rsi,
            )
          }
        />
      ))}
      <Row>
        <Button variant="default" onClick={() => put([...layers, newLayer], rsi)}>
          {words.layers.add}
        </Button>
      </Row>
    </Stack>
  )
}

type Boxes = {
  readonly nth: number
  readonly layer: Typed
  readonly alter: (part: Partial<Typed>) => void
  readonly remove: () => void
}

function LayerBoxes({ nth, layer, alter, remove }: Boxes) {
  return (
    <fieldset className={styles.item}>
      <legend>{words.layers.legend(nth)}</legend>
      <Row>
        <TextInput
          label={words.layers.name(nth)}
          value={layer.name}
          onChange={({ currentTarget }) => alter({ name: currentTarget.value })}
        />
        <NumberBox
          id={`layer-${nth}-mm`}
          label={words.layers.thickness(nth)}
          value={layer.thicknessMm}
          set={(thicknessMm) => alter({ thicknessMm })}
        />
        <NumberBox
          id={`layer-${nth}-lambda`}
          label={words.layers.conductivity(nth)}
          value={layer.conductivityWPerMK}
          set={(conductivityWPerMK) => alter({ conductivityWPerMK })}
        />
        <NumberBox
          id={`layer-${nth}-r`}
          label={words.layers.resistance(nth)}
          value={layer.resistanceM2KPerW}
          set={(resistanceM2KPerW) => alter({ resistanceM2KPerW })}
        />
        <Button variant="subtle" color="gray" aria-label={words.layers.removeNamed(nth)} onClick={remove}>
          {words.layers.remove}
        </Button>
      </Row>
      <BridgeBoxes nth={nth} layer={layer} alter={alter} />
    </fieldset>
  )
}

/**
 * Softwood, and studs with their noggins; both as the BR 443 conventions have them, from memory. A stud of 47 mm in every 400 mm
 * alone takes 47 / 400 = 12 %.
 */
const usualTimber = { percent: 15, conductivityWPerMK: 0.13 }

/** Studs or joists through the layer: their share of the area, and what they conduct. */
function BridgeBoxes({ nth, layer: { bridge, resistanceM2KPerW }, alter }: Omit<Boxes, 'remove'>) {
  if (resistanceM2KPerW !== undefined && bridge === null) return null
  if (bridge === null) {
    return (
      <Button mt="sm" variant="default" onClick={() => alter({ bridge: usualTimber })}>
        {words.timber.goesThrough(nth)}
      </Button>
    )
  }
  return (
    <>
      <div className={styles.bridge}>
        <NumberBox
          id={`layer-${nth}-share`}
          label={words.timber.part(nth)}
          hint={words.timber.partHint}
          value={bridge.percent}
          set={(percent) => alter({ bridge: { ...bridge, percent } })}
        />
        <NumberBox
          id={`layer-${nth}-timber-lambda`}
          label={words.timber.conducts(nth)}
          hint={words.timber.conductsHint}
          value={bridge.conductivityWPerMK}
          set={(conductivityWPerMK) => alter({ bridge: { ...bridge, conductivityWPerMK } })}
        />
        <Button
          variant="subtle"
          color="gray"
          aria-label={words.timber.noneNamed(nth)}
          onClick={() => alter({ bridge: null })}
        >
          {words.timber.none}
        </Button>
      </div>
      {resistanceM2KPerW === undefined ? null : <p className={styles.said}>{words.timber.emptyResistance}</p>}
    </>
  )
}

function read(typed: readonly Typed[], rsi: number) {
  const layers: Layer[] = []
  for (const [at, one] of typed.entries()) {
    const made = layerShape.safeParse(
      asLayer(one, one.name.trim() === '' ? words.layers.unnamed(at + 1) : one.name),
    )
    if (!made.success) return null
    layers.push(made.data)
  }
  return layers.length === 0 ? null : layersUValue({ rsi, rse: 0.04, layers })
}

/** A layer as typed, for the shape of layers to judge. */
function asLayer(
  { thicknessMm, conductivityWPerMK, resistanceM2KPerW, bridge }: Typed,
  name: string,
): unknown {
  if (bridge === null) {
    return resistanceM2KPerW === undefined
      ? { name, thicknessMm, conductivityWPerMK }
      : { name, resistanceM2KPerW }
  }
  if (resistanceM2KPerW !== undefined || typeof bridge.percent !== 'number') return null
  const through = { fraction: bridge.percent / 100, conductivityWPerMK: bridge.conductivityWPerMK }
  return { name, thicknessMm, conductivityWPerMK, bridge: through }
}
