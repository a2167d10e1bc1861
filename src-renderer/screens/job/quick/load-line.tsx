import type { ReactNode } from 'react'
import { because } from '../../../../src-main/domain/derivation.ts'
import type { Derivation } from '../../../../src-main/domain/derivation.ts'
import type { HeatLoadAnswer } from '../../../../src-main/engine/heat/heat-load.ts'
import { Why } from '../../../parts/why.tsx'
import styles from './quick.module.css'

type LoadLine = {
  readonly load: HeatLoadAnswer | null
  readonly says: string
  /** Where the figures that went in came from. */
  readonly made?: Derivation
  readonly children?: ReactNode
}

/** The heat a room needs, in watts and BTU an hour, as it stands this moment. */
export function LoadLine({ load, says, made, children }: LoadLine) {
  if (load === null) {
    return (
      <div className={styles.load} role="status" aria-label="Heat the room needs">
        <p className={styles.soft}>{says}</p>
        {children}
      </div>
    )
  }
  const whole = (value: number) => Math.round(value).toLocaleString('en-GB')
  const why =
    made === undefined
      ? load.why
      : because('Heat the room needs, and where its figures come from', Math.round(load.watts), {
          unit: 'W',
          from: [load.why, made],
        })
  return (
    <div className={styles.load}>
      <div className={styles.figures} role="status" aria-label="Heat the room needs">
        <span className={styles.watts}>{whole(load.watts)} W</span>
        <span>{whole(load.btuPerHour)} BTU/h</span>
        <span className={styles.soft}>{says}</span>
      </div>
      <Why of="the heat the room needs" why={why} />
      {children}
    </div>
  )
}
