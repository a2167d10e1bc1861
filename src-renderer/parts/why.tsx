import { useId, useState } from 'react'
import type { Derivation } from '../../src-main/domain/derivation.ts'
import { figureInWords } from './figures-in-words.ts'
import styles from './why.module.css'
import { words } from './words.ts'

const openLevels = 2

/** The way from a number that was given to the field of the survey where it stands; null where it has none. */
export type Leads = {
  readonly placeOf: (leaf: Derivation) => string | null
  readonly goTo: (path: string) => void
}
type Led = { readonly leads?: Leads | undefined }

/** A figure's reasons, as a list inside lists down to the numbers that were given. */
export function WhyTree({ why, leads }: { readonly why: Derivation } & Led) {
  return (
    <div className={styles.tree}>
      <ul>
        <Reason why={why} level={0} leads={leads} />
      </ul>
    </div>
  )
}

function Reason({ why, level, leads }: { readonly why: Derivation; readonly level: number } & Led) {
  if (why.from.length === 0) {
    return (
      <li>
        <span className={styles.leaf}>
          <Sentence why={why} />
          {leads === undefined ? null : <WayToField leaf={why} leads={leads} />}
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
            <Reason key={at} why={part} level={level + 1} leads={leads} />
          ))}
        </ul>
      </details>
    </li>
  )
}

function WayToField({ leaf, leads }: { readonly leaf: Derivation; readonly leads: Leads }) {
  const path = leads.placeOf(leaf)
  if (path === null) return null
  return (
    <button
      type="button"
      className={styles.way}
      aria-label={words.why.goNamed(leaf.says)}
      onClick={() => leads.goTo(path)}
    >
      {words.why.go}
    </button>
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
      aria-label={words.why.named(of)}
      onClick={flip}
    >
      {words.why.ask}
    </button>
  )
}

/** A button with its reasons under it. */
export function Why({ of, why, leads }: { readonly of: string; readonly why: Derivation } & Led) {
  const toggle = useWhy(of)
  return (
    <>
      <WhyButton {...toggle} />
      {toggle.open ? (
        <div id={toggle.regionId}>
          <WhyTree why={why} leads={leads} />
        </div>
      ) : null}
    </>
  )
}
