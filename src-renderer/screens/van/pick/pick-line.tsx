import { Button } from '@mantine/core'
import { useEffect, useRef, useState } from 'react'
import type { KeyboardEvent } from 'react'
import type { PickingLine } from '../../../../src-main/domain/follow-up/van.ts'
import { sentencesOf } from '../../../bridge/call.ts'
import { plain } from '../../../parts/figures-in-words.ts'
import { ProblemList, Verdict } from '../../../parts/notice.tsx'
import { amount } from '../amount.ts'
import styles from '../van.module.css'
import { words } from '../van.words.ts'
import { Otherwise } from './otherwise.tsx'
import pickStyles from './pick.module.css'
import { nameOf, needInWords, stateOf } from './pick-words.ts'
import type { Pick } from './use-pick.ts'

type Props = {
  readonly line: PickingLine
  readonly heavy: boolean
  readonly closed: boolean
  readonly pick: Pick
}

/** One thing to pick: a box to tick, how much, what, and what became of it. */
export function PickLine({ line, heavy, closed, pick }: Props) {
  const [open, setOpen] = useState(false)
  const item = useRef<HTMLLIElement>(null)
  const close = () => {
    setOpen(false)
    item.current?.querySelector<HTMLElement>('input[data-tick]')?.focus()
  }
  const { lineNo } = line
  const refused = pick.tick.variables?.line.lineNo === lineNo ? sentencesOf(pick.tick.error) : []
  return (
    <li ref={item} className={pickStyles.line} data-state={stateOf(line)}>
      <div className={pickStyles.lineRow}>
        {closed ? (
          <div className={pickStyles.doneRow}>
            <Done line={line} />
            <Listed line={line} heavy={heavy} />
          </div>
        ) : (
          <label className={styles.tickRow}>
            <TickBox line={line} pick={pick} />
            <Listed line={line} heavy={heavy} />
          </label>
        )}
        {closed ? null : (
          <Button
            variant="default"
            aria-expanded={open}
            aria-label={words.pick.otherwiseOf(nameOf(line))}
            onClick={() => setOpen(!open)}
          >
            {words.pick.otherwise}
          </Button>
        )}
      </div>
      {refused.length === 0 || open ? null : <ProblemList title={words.pick.notKept} problems={refused} />}
      {open ? <Otherwise line={line} pick={pick} close={close} /> : null}
    </li>
  )
}

function TickBox({ line, pick }: { readonly line: PickingLine; readonly pick: Pick }) {
  const box = useRef<HTMLInputElement>(null)
  const state = stateOf(line)
  useEffect(() => {
    if (box.current !== null) box.current.indeterminate = state === 'short'
  }, [state])
  const { lineNo } = line
  const flip = () => pick.tick.mutate({ line, tick: state === 'ticked' ? { lineNo, picked: 0 } : { lineNo } })
  return (
    <input
      ref={box}
      type="checkbox"
      data-tick
      className={styles.box}
      checked={state === 'ticked'}
      onChange={flip}
      onKeyDown={goOn}
    />
  )
}

/** Up and down go from box to box, over all sources. */
function goOn(event: KeyboardEvent<HTMLInputElement>) {
  const step = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0
  if (step === 0) return
  const boxes = [
    ...(event.currentTarget.closest('[data-lines]')?.querySelectorAll<HTMLElement>('input[data-tick]') ?? []),
  ]
  boxes[boxes.indexOf(event.currentTarget) + step]?.focus()
  event.preventDefault()
}

/** On a closed list there is nothing to press. */
function Done({ line }: { readonly line: PickingLine }) {
  const short = stateOf(line) === 'short'
  return (
    <span className={pickStyles.done} data-tone={short ? 'warn' : 'good'}>
      {short ? '–' : '✓'}
    </span>
  )
}

function Listed({ line, heavy }: { readonly line: PickingLine; readonly heavy: boolean }) {
  return (
    <>
      <span className={pickStyles.need}>{needInWords(line)}</span>
      <What line={line} heavy={heavy} />
    </>
  )
}

function What({ line, heavy }: { readonly line: PickingLine; readonly heavy: boolean }) {
  const { code, picked, need, unit, insteadSays, shortSays } = line
  return (
    <span className={styles.grow}>
      <span className={pickStyles.name}>{nameOf(line)}</span>
      {code === undefined ? null : <span className={styles.soft}>{words.pick.code(code)}</span>}
      {heavy ? <Verdict tone="warn">{words.beside.liftMark}</Verdict> : null}
      {insteadSays === undefined ? null : (
        <span className={styles.strong}>{words.pick.instead(insteadSays)}</span>
      )}
      {shortSays === undefined ? null : (
        <Verdict tone="bad">
          {picked === 0 ? words.pick.none : words.pick.short(plain(picked), amount(need, unit))}
          {`. ${shortSays}`}
        </Verdict>
      )}
    </span>
  )
}
