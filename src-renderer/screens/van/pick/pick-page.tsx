import { useEffect, useRef } from 'react'
import { Link } from 'wouter'
import type { Picking } from '../../../../src-main/domain/follow-up/van.ts'
import { call, sentencesOf } from '../../../bridge/call.ts'
import { Stack } from '../../../parts/card.tsx'
import { dayInWords } from '../../../parts/figures-in-words.ts'
import { Nothing, ProblemList, Waiting } from '../../../parts/notice.tsx'
import { FileButtons } from '../file-buttons.tsx'
import { OrdersPart } from '../orders/orders-part.tsx'
import styles from '../van.module.css'
import { words } from '../van.words.ts'
import { Beside } from './beside.tsx'
import { CloseCard } from './close-card.tsx'
import pickStyles from './pick.module.css'
import { PickSource } from './pick-source.tsx'
import { progressOf, sourcesOf } from './pick-words.ts'
import { usePick } from './use-pick.ts'
import type { Pick } from './use-pick.ts'

type Part = 'pick' | 'orders'
type Page = { readonly pickingNo: number; readonly part: Part }

/** One pick list, to be ticked off line by line on the way round. */
export function PickPage({ pickingNo, part }: Page) {
  const pick = usePick(pickingNo)
  const problems = sentencesOf(pick.read.error)
  return (
    <>
      <p>
        <Link href="/van" className={styles.go}>
          ← {words.pick.back}
        </Link>
      </p>
      {pick.read.data === undefined ? (
        problems.length > 0 ? (
          <ProblemList title={words.pick.cannotOpen} problems={problems} />
        ) : (
          <Waiting what={words.pick.looking} />
        )
      ) : (
        <Open picking={pick.read.data.picking} pick={pick} part={part} />
      )}
    </>
  )
}

type Opened = { readonly picking: Picking; readonly pick: Pick; readonly part: Part }

function Open({ picking, pick, part }: Opened) {
  return (
    <>
      <Head picking={picking} />
      <nav className={styles.tabs} aria-label={words.pick.title(picking.pickingNo)}>
        {(['pick', 'orders'] as const).map((at) => (
          <Link
            key={at}
            href={`/van/${at}/${picking.pickingNo}`}
            className={styles.tab}
            {...(at === part ? { 'aria-current': 'page' as const } : {})}
          >
            {words.pick.parts[at]}
          </Link>
        ))}
      </nav>
      {part === 'orders' ? <OrdersPart picking={picking} /> : <TickOff picking={picking} pick={pick} />}
    </>
  )
}

function TickOff({ picking, pick }: Omit<Opened, 'part'>) {
  return (
    <div className={pickStyles.columns}>
      <div className={pickStyles.main} data-lines>
        {picking.closedOn === undefined && picking.lines.length > 0 ? (
          <p className={styles.soft}>{words.pick.keys}</p>
        ) : null}
        <Progress picking={picking} />
        <Stack>
          {picking.lines.length === 0 ? (
            <Nothing title={words.pick.nothing}>
              <p>{words.pick.nothingSays}</p>
            </Nothing>
          ) : null}
          {sourcesOf(picking).map((source) => (
            <PickSource key={source.key} source={source} picking={picking} pick={pick} />
          ))}
          <CloseCard picking={picking} pick={pick} />
        </Stack>
      </div>
      <Beside body={picking.body} />
    </div>
  )
}

/** What the list is and for whom. Who comes from the button that made it has lost the focus: it lands here. */
function Head({ picking }: { readonly picking: Picking }) {
  const { pickingNo, madeOn, closedOn, body } = picking
  const title = useRef<HTMLHeadingElement>(null)
  useEffect(() => {
    if (document.activeElement === document.body) title.current?.focus()
  }, [])
  const days = [
    words.pick.made(dayInWords(madeOn)),
    ...(closedOn === undefined ? [] : [words.pick.closed(dayInWords(closedOn))]),
  ]
  return (
    <div className={pickStyles.headRow}>
      <div className={styles.grow}>
        <h1 ref={title} tabIndex={-1}>
          {words.pick.title(pickingNo)}
        </h1>
        <p className={styles.soft}>{days.join(' · ')}</p>
        <ul className={styles.plain2} aria-label={words.pick.quotes}>
          {body.quotes.map(({ quoteId, title: job, customerName }) => (
            <li key={quoteId}>
              <span className={styles.strong}>{customerName === '' ? quoteId : customerName}</span>
              {`, ${customerName === '' ? job : `${quoteId}, ${job}`}`}
            </li>
          ))}
        </ul>
      </div>
      <div>
        <FileButtons
          choices={[{ label: words.file.pick, write: () => call('picking.pdf', { pickingNo }) }]}
        />
      </div>
    </div>
  )
}

function Progress({ picking }: { readonly picking: Picking }) {
  const { ticked, lines, short } = progressOf(picking.lines)
  if (lines === 0) return null
  return (
    <div className={pickStyles.progress}>
      <p role="status" className={pickStyles.progressSays}>
        {words.pick.progress(ticked, lines, short)}
      </p>
      <progress max={lines} value={ticked} aria-label={words.pick.progressName} />
    </div>
  )
}
