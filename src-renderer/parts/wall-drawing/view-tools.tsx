import { Checkbox } from '@mantine/core'
import type { Camera } from './use-camera.ts'
import styles from './wall-drawing.module.css'
import { words } from './wall-drawing.words.ts'

/** What is drawn besides wall, things and measurements. */
export type Layers = {
  readonly zones: boolean
  readonly asked: boolean
  readonly tiles: boolean
  readonly plan: boolean
}

export const firstLayers: Layers = { zones: true, asked: false, tiles: true, plan: true }

type Tools = {
  readonly camera: Camera
  readonly layers: Layers
  readonly setLayers: (layers: Layers) => void
  readonly has: { readonly tiles: boolean; readonly plan: boolean }
}

/** Larger, smaller, whole; and what is shown. */
export function ViewTools({ camera, layers, setLayers, has }: Tools) {
  const box = (layer: keyof Layers, label: string) => (
    <Checkbox
      label={label}
      checked={layers[layer]}
      onChange={({ currentTarget }) => setLayers({ ...layers, [layer]: currentTarget.checked })}
    />
  )
  return (
    <div className={styles.tools}>
      <div role="group" aria-label={words.tools.size} className={styles.zooms}>
        <button type="button" className={styles.tool} onClick={() => camera.step(1 / 1.5)}>
          {words.tools.smaller}
        </button>
        <button type="button" className={styles.tool} onClick={() => camera.step(1.5)}>
          {words.tools.larger}
        </button>
        <button type="button" className={styles.tool} onClick={camera.fit}>
          {words.tools.whole}
        </button>
        <span className={styles.times} role="status">
          {camera.zoom.times === 1
            ? words.tools.whole
            : words.tools.times(Math.round(camera.zoom.times * 10) / 10)}
        </span>
      </div>
      <div role="group" aria-label={words.tools.shown} className={styles.layers}>
        {box('zones', words.tools.zones)}
        {box('asked', words.tools.asked)}
        {has.tiles ? box('tiles', words.tools.tiles) : null}
        {has.plan ? box('plan', words.tools.plan) : null}
      </div>
    </div>
  )
}
