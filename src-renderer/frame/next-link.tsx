import { useHotkeys } from '@mantine/hooks'
import type { HotkeyItem } from '@mantine/hooks'
import { useMemo, useRef } from 'react'
import { useLocation } from 'wouter'
import { focusWhenThere } from '../draft/go-to-field.ts'
import type { OpenJob } from '../draft/use-draft.ts'
import styles from './frame.module.css'
import { words } from './frame.words.ts'
import { nextThing } from './next-thing.ts'

const inBoxesToo: string[] = []

/** The way on: what is to be done next in this job, by a press or by its keys. */
export function NextLink({ open }: { readonly open: OpenJob }) {
  const [here, navigate] = useLocation()
  const next = nextThing(open, here)
  const go = () => {
    if (next === null) return
    open.change({ kind: 'settle' })
    navigate(next.href)
    focusWhenThere(next.field)
  }
  const goes = useRef(go)
  goes.current = go
  // Made once: a listener is not taken off and put on at each stroke of a key.
  const keys = useMemo<HotkeyItem[]>(
    () => [['mod+Enter', ({ target }) => finishForm(target) || goes.current()]],
    [],
  )
  useHotkeys(keys, inBoxesToo)
  if (next === null) return null
  return (
    <button type="button" className={styles.next} aria-keyshortcuts="Control+Enter" onClick={go}>
      <span>
        <span className={styles.under}>{words.next.first}</span> {next.says}
      </span>
      <kbd className={styles.key} aria-hidden>
        {words.next.key}
      </kbd>
    </button>
  )
}

/** Sends the form that the keys were pressed in. What is open on top of the page keeps the keys to itself. */
function finishForm(target: EventTarget | null): boolean {
  if (!(target instanceof Element)) return false
  if (target.closest('[role="dialog"]') !== null) return true
  const form = target.closest('form')
  form?.requestSubmit()
  return form !== null
}
