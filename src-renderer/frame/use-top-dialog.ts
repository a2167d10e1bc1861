import { useRef, useState } from 'react'

export type TopDialog = 'find' | 'keys'

/** Which of the dialogs that open from anywhere is open. What was in focus before it gets the focus back. */
export function useTopDialog() {
  const [open, setOpen] = useState<TopDialog | null>(null)
  const before = useRef<Element | null>(null)
  const show = (dialog: TopDialog) => {
    if (open === null) before.current = document.activeElement
    setOpen(dialog)
  }
  const close = () => {
    setOpen(null)
    setTimeout(() => {
      if (before.current instanceof HTMLElement) before.current.focus()
    }, 0)
  }
  return { open, show, close }
}
