import { useEffect, useRef } from 'react'
import { words } from './frame.words.ts'

/** Every keyboard shortcut there is, as it is pressed and what it does. */
export const shortcuts: readonly { readonly keys: readonly string[]; readonly does: string }[] = [
  { keys: ['Ctrl', 'K'], does: words.keys.find },
  { keys: ['Ctrl', 'Enter'], does: words.keys.next },
  { keys: ['Enter'], does: words.keys.enter },
  { keys: ['Ctrl', 'Z'], does: words.keys.undo },
  { keys: ['Ctrl', 'Shift', 'Z'], does: words.keys.redo },
  { keys: ['Ctrl', 'Y'], does: words.keys.redoToo },
  { keys: ['?'], does: words.keys.help },
  { keys: ['↑', '↓'], does: words.keys.choose },
  { keys: ['F2'], does: words.keys.editPrice },
  { keys: ['Esc'], does: words.keys.close },
]

type Pressed = Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'altKey' | 'shiftKey'>

/** What a key press asks of the frame. `typing` is true inside a box that takes letters. */
export function askedBy(press: Pressed, typing: boolean): 'find' | 'keys' | null {
  const mod = press.ctrlKey || press.metaKey
  if (mod && !press.altKey && !press.shiftKey && press.key.toLowerCase() === 'k') return 'find'
  return press.key === '?' && !mod && !press.altKey && !typing ? 'keys' : null
}

function takesLetters(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false
  if (target instanceof HTMLInputElement)
    return !['checkbox', 'radio', 'button', 'file'].includes(target.type)
  return target.isContentEditable || ['TEXTAREA', 'SELECT'].includes(target.tagName)
}

/** Hears the frame's own keys wherever the focus is. */
export function useFrameKeys(hear: (asked: 'find' | 'keys') => void): void {
  const hearer = useRef(hear)
  hearer.current = hear
  useEffect(() => {
    const listen = (event: KeyboardEvent) => {
      const asked = askedBy(event, takesLetters(event.target))
      if (asked === null) return
      event.preventDefault()
      hearer.current(asked)
    }
    document.addEventListener('keydown', listen)
    return () => document.removeEventListener('keydown', listen)
  }, [])
}
