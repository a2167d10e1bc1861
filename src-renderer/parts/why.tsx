import { useId, useState } from 'react'
import type { Derivation } from '../../src-main/domain/derivation.ts'
import { figureInWords } from './figures-in-words.ts'
import styles from './why.module.css'

const openLevels = 2

/** A figure's reasons, as a list inside lists down to the numbers that were given. */
export function WhyTree({ why }: { readonly why: Derivation }) {
  return (
    <div className={styles.tree}>
      <ul>
        <Reason why={why} level={0} />
      </ul>
    </div>
  )
}

function Reason({ why, level }: { readonly why: Derivation; readonly level: number }) {
  if (why.from.length === 0) {
    return (
      <li>
        <span className={styles.leaf}>
          <Sentence why={why} />
        </span>
      </li>
    )
  }
  return (
    <li>
      <details open={level < openLevels}>
        <summary>
          <Sentence why={why} />
        </summary>
        <ul>
          {why.from.map((part, at) => (
            <Reason key={at} why={part} level={level + 1} />
          ))}
        </ul>
      </details>
    </li>
  )
}

function Sentence({ why }: { readonly why: Derivation }) {
  const says = why.says.replace(/\.$/, '')
  return (
    <>
      {says}: <span className={styles.figure}>{figureInWords(why.value, why.unit)}</span>
      {why.source === undefined ? null : <span className={styles.source}> ({why.source})</span>}
    </>
  )
}

type Toggle = {
  readonly open: boolean
  readonly flip: () => void
  readonly regionId: string
  readonly of: string
}

/** The button that asks why, and the state that goes with it. */
export function useWhy(of: string): Toggle {
  const [open, setOpen] = useState(false)
  const regionId = useId()
  return { open, flip: () => setOpen(!open), regionId, of }
}

export function WhyButton({ open, flip, regionId, of }: Toggle) {
  return (
    <button
      type="button"
      className={styles.toggle}
      aria-expanded={open}
      {...(open ? { 'aria-controls': regionId } : {})}
      aria-label={`Why: ${of}`}
      onClick={flip}
    >
      Why
    </button>
  )
}

/** A button with its reasons under it. */
export function Why({ of, why }: { readonly of: string; readonly why: Derivation }) {
  const toggle = useWhy(of)
  return (
    <>
      <WhyButton {...toggle} />
      {toggle.open ? (
        <div id={toggle.regionId}>
          <WhyTree why={why} />
        </div>
      ) : null}
    </>
  )
}
