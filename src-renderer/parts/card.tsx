import { useId } from 'react'
import type { ReactNode } from 'react'
import styles from './parts.module.css'

type Card = {
  readonly title: string
  readonly says?: ReactNode
  readonly aside?: ReactNode
  readonly children: ReactNode
}

/** A headed part of a page. */
export function Card({ title, says, aside, children }: Card) {
  const titleId = useId()
  return (
    <section className={styles.card} aria-labelledby={titleId}>
      <div className={styles.cardHead}>
        <div>
          <h2 id={titleId}>{title}</h2>
          {says === undefined ? null : <p className={styles.says}>{says}</p>}
        </div>
        {aside}
      </div>
      {children}
    </section>
  )
}

/** Fields side by side, as many as there is room for. */
export function FieldGrid({ children }: { readonly children: ReactNode }) {
  return <div className={styles.grid}>{children}</div>
}

export function Row({ children }: { readonly children: ReactNode }) {
  return <div className={styles.row}>{children}</div>
}

export function Stack({ children }: { readonly children: ReactNode }) {
  return <div className={styles.stack}>{children}</div>
}

/** Takes the whole width of a grid of fields. */
export function Wide({ children }: { readonly children: ReactNode }) {
  return <div className={styles.wide}>{children}</div>
}
