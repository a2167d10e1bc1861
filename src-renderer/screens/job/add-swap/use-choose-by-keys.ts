import { useEffect, useRef, useState } from 'react'
import type { KeyboardEvent } from 'react'

/** The box that an emitter is sought in. */
export const emitterSearchId = 'find-emitter'

/** From the search box into the list with Enter, and along the list with up and down. */
export function useChooseByKeys(current: boolean) {
  const ref = useRef<HTMLUListElement>(null)
  const [wanted, setWanted] = useState(false)
  const buttons = () => [...(ref.current?.querySelectorAll<HTMLElement>('button[aria-pressed]') ?? [])]
  useEffect(() => {
    if (!wanted || !current) return
    setWanted(false)
    reach(buttons()[0])
  }, [wanted, current])
  return {
    ref,
    /** What is still being looked for is waited for, so that nothing of an older search is chosen. */
    fromSearch: (event: KeyboardEvent) => {
      const go = event.key === 'Enter' || event.key === 'ArrowDown'
      if (go) event.preventDefault()
      setWanted(go)
    },
    along: (event: KeyboardEvent) => {
      const step = steps[event.key]
      if (step === undefined) return
      event.preventDefault()
      const all = buttons()
      const row = (event.target as Element).closest('li')
      const at = all.findIndex((button) => row?.contains(button) === true)
      const next = all[at + step]
      if (next !== undefined) reach(next)
      else if (step < 0) document.getElementById(emitterSearchId)?.focus()
    },
  }
}

/** Into the middle of the window, so that its neighbours can be read as well. */
function reach(button: HTMLElement | undefined): void {
  button?.focus({ preventScroll: true })
  button?.closest('li')?.scrollIntoView({ block: 'center' })
}

const steps: Readonly<Record<string, 1 | -1>> = { ArrowDown: 1, ArrowUp: -1 }
