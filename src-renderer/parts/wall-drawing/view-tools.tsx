import { Checkbox } from '@mantine/core'
import type { Camera } from './use-camera.ts'
import styles from './wall-drawing.module.css'

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
      <div role="group" aria-label="Size of the drawing" className={styles.zooms}>
        <button type="button" className={styles.tool} onClick={() => camera.step(1 / 1.5)}>
          Smaller
        </button>
        <button type="button" className={styles.tool} onClick={() => camera.step(1.5)}>
          Larger
        </button>
        <button type="button" className={styles.tool} onClick={camera.fit}>
          Whole wall
        </button>
        <span className={styles.times} role="status">
          {camera.zoom.times === 1 ? 'Whole wall' : `${Math.round(camera.zoom.times * 10) / 10} times`}
        </span>
      </div>
      <div role="group" aria-label="Shown on the drawing" className={styles.layers}>
        {box('zones', 'Cable zones')}
        {box('asked', 'Clear space needed')}
        {has.tiles ? box('tiles', 'Tile joints') : null}
        {has.plan ? box('plan', 'From above') : null}
      </div>
    </div>
  )
}
