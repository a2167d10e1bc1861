import type { ReactNode } from 'react'
import { because } from '../../../../src-main/domain/derivation.ts'
import type { Derivation } from '../../../../src-main/domain/derivation.ts'
import type { HeatLoadAnswer } from '../../../../src-main/engine/heat/heat-load.ts'
import { Why } from '../../../parts/why.tsx'
import styles from './quick.module.css'
import { words } from './quick.words.ts'

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
      <div className={styles.load} role="status" aria-label={words.load.label}>
        <p className={styles.soft}>{says}</p>
        {children}
      </div>
    )
  }
  const whole = (value: number) => Math.round(value).toLocaleString('en-GB')
  const why =
    made === undefined
      ? load.why
      : because(words.load.why, Math.round(load.watts), {
          unit: 'W',
          from: [load.why, made],
        })
  return (
    <div className={styles.load}>
      <div className={styles.figures} role="status" aria-label={words.load.label}>
        <span className={styles.watts}>{words.load.watts(whole(load.watts))}</span>
        <span>{words.load.btuPerHour(whole(load.btuPerHour))}</span>
        <span className={styles.soft}>{says}</span>
      </div>
      <Why of={words.load.whyOf} why={why} />
      {children}
    </div>
  )
}
