import { Button } from '@mantine/core'
import { useEffect, useRef } from 'react'
import { Link } from 'wouter'
import type { Picking, PickingLine } from '../../../../src-main/domain/follow-up/van.ts'
import { sentencesOf } from '../../../bridge/call.ts'
import { Card, Stack } from '../../../parts/card.tsx'
import { dayInWords } from '../../../parts/figures-in-words.ts'
import { Notice, ProblemList } from '../../../parts/notice.tsx'
import { amount } from '../amount.ts'
import { words } from '../van.words.ts'
import pickStyles from './pick.module.css'
import { nameOf, stateOf } from './pick-words.ts'
import type { Pick } from './use-pick.ts'

type Props = { readonly picking: Picking; readonly pick: Pick }

/** Closes the list once each line is dealt with, and says before and after what is booked. */
export function CloseCard({ picking, pick }: Props) {
  const { lines, closedOn } = picking
  const booked = lines.filter(({ source, picked }) => source === 'van' && picked > 0)
  if (closedOn !== undefined) {
    return <Closed day={closedOn} moves={booked.length} />
  }
  const waiting = lines.filter((line) => stateOf(line) === 'waiting').length
  const problems = sentencesOf(pick.close.error)
  return (
    <Card title={words.close.title} says={waiting > 0 ? words.close.waiting(waiting) : words.close.final}>
      <Stack>
        {waiting > 0 ? null : <Booked lines={booked} />}
        {problems.length === 0 ? null : <ProblemList title={words.close.notClosed} problems={problems} />}
        <div>
          <Button
            variant={waiting > 0 ? 'default' : 'filled'}
            loading={pick.close.isPending || pick.tick.isPending}
            onClick={() => pick.close.mutate({})}
          >
            {words.close.button}
          </Button>
        </div>
      </Stack>
    </Card>
  )
}

/** Says what was booked, and takes the focus of the button that closed the list. */
function Closed({ day, moves }: { readonly day: string; readonly moves: number }) {
  const whole = useRef<HTMLDivElement>(null)
  useEffect(() => {
    if (document.activeElement === document.body) whole.current?.focus()
  }, [])
  return (
    <div ref={whole} tabIndex={-1}>
      <Notice tone="good" title={words.close.closed(dayInWords(day))}>
        <p>{words.close.moved(moves)}</p>
        <p>
          <Link href="/van/stock">{words.close.toStock}</Link>
        </p>
      </Notice>
    </div>
  )
}

function Booked({ lines }: { readonly lines: readonly PickingLine[] }) {
  return (
    <div>
      <p>{lines.length === 0 ? words.close.booksNone : words.close.books}</p>
      {lines.length === 0 ? null : (
        <ul className={pickStyles.bullets}>
          {lines.map((line) => (
            <li
              key={line.lineNo}
            >{`${line.insteadSays ?? nameOf(line)}: ${amount(line.picked, line.unit)}`}</li>
          ))}
        </ul>
      )}
      <p className={pickStyles.under}>{words.close.bought}</p>
    </div>
  )
}
