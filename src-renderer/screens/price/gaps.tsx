import { Button, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { Fill } from '../../../src-main/domain/job.ts'
import type { Gap, Quote, QuoteLine } from '../../../src-main/domain/quote.ts'
import { gapId } from '../../draft/place-ids.ts'
import { useOpenJob } from '../../draft/use-draft.ts'
import { Row } from '../../parts/card.tsx'
import { howMuchOf, money } from '../../parts/figures-in-words.ts'
import { Notice } from '../../parts/notice.tsx'
import { FillGap } from './fill-gap.tsx'
import { withFill, withWaiver } from './job-changes.ts'
import styles from './price.module.css'
import { words as all } from './price.words.ts'

const words = all.gaps

/** Parts that the catalogue cannot supply: open ones first, then those let stand, then those filled by hand. */
export function Gaps({ quote }: { readonly quote: Quote }) {
  const { job } = useOpenJob()
  const open = quote.gaps.filter(({ waived }) => waived === undefined)
  const standing = quote.gaps.filter(({ waived }) => waived !== undefined)
  const gapKeys = new Set(quote.gaps.map(({ gapKey }) => gapKey))
  const filled = (job.fills ?? []).filter(({ gapKey }) => !gapKeys.has(gapKey))
  if (open.length + standing.length + filled.length === 0) return null
  return (
    <Notice
      tone={open.length === 0 ? 'good' : 'warn'}
      title={open.length === 0 ? words.none : words.open(open.length)}
    >
      <ul className={styles.plainList} aria-label={words.list}>
        {open.map((gap) => (
          <OpenGap key={gap.gapKey} gap={gap} />
        ))}
        {standing.map((gap) => (
          <StandingGap key={gap.gapKey} gap={gap} />
        ))}
        {filled.map((fill) => (
          <FilledGap
            key={fill.gapKey}
            fill={fill}
            line={quote.lines.find(({ part }) => part?.lineKey === fill.gapKey)}
          />
        ))}
      </ul>
    </Notice>
  )
}

type Way = 'fill' | 'stand' | null

function OpenGap({ gap }: { readonly gap: Gap }) {
  const { change } = useOpenJob()
  const [way, setWay] = useState<Way>(null)
  const { gapKey, says, quantity, unit } = gap
  const fill = (what: Fill) => change({ kind: 'alter', alter: (job) => withFill(job, gapKey, what) })
  const stand = (reason: string) => change({ kind: 'alter', alter: (job) => withWaiver(job, gapKey, reason) })
  const flip = (to: Way) => setWay(way === to ? null : to)
  return (
    <li className={styles.gap}>
      <p>
        {says}
        {quantity === undefined || unit === undefined ? '' : ` ${words.needed(howMuchOf(quantity, unit))}`}
      </p>
      <Row>
        <Button
          id={gapId(gapKey)}
          variant={way === 'fill' ? 'filled' : 'default'}
          aria-expanded={way === 'fill'}
          aria-label={words.fillNamed(says)}
          onClick={() => flip('fill')}
        >
          {words.fill}
        </Button>
        <Button
          variant={way === 'stand' ? 'filled' : 'default'}
          aria-expanded={way === 'stand'}
          aria-label={words.standNamed(says)}
          onClick={() => flip('stand')}
        >
          {words.stand}
        </Button>
      </Row>
      {way === 'fill' ? <FillGap gap={gap} fill={fill} /> : null}
      {way === 'stand' ? <LetStand stand={stand} /> : null}
    </li>
  )
}

function LetStand({ stand }: { readonly stand: (reason: string) => void }) {
  const [reason, setReason] = useState('')
  const [empty, setEmpty] = useState(false)
  const keep = () => {
    setEmpty(reason.trim() === '')
    if (reason.trim() !== '') stand(reason.trim())
  }
  return (
    <form
      className={styles.find}
      onSubmit={(event) => {
        event.preventDefault()
        keep()
      }}
    >
      <TextInput
        data-autofocus
        label={words.because}
        value={reason}
        error={empty ? words.noReason : undefined}
        onChange={({ currentTarget }) => setReason(currentTarget.value)}
      />
      <Row>
        <Button type="submit">{words.keepReason}</Button>
      </Row>
    </form>
  )
}

function StandingGap({ gap }: { readonly gap: Gap }) {
  const { change } = useOpenJob()
  const takeBack = () => change({ kind: 'alter', alter: (job) => withWaiver(job, gap.gapKey, null) })
  return (
    <li className={styles.gap}>
      <p>
        {gap.says} <strong>{words.youLet(gap.waived ?? '')}</strong>
      </p>
      <Row>
        <Button variant="default" onClick={takeBack} aria-label={words.takeBackNamed(gap.says)}>
          {words.takeBack}
        </Button>
      </Row>
    </li>
  )
}

type Filled = { readonly fill: Fill; readonly line: QuoteLine | undefined }

function FilledGap({ fill, line }: Filled) {
  const { change } = useOpenJob()
  const takeOut = () => change({ kind: 'alter', alter: (job) => withFill(job, fill.gapKey, null) })
  const says = line?.part?.filled ?? words.byHand
  const oneOff = 'name' in fill ? words.oneOff(fill.name, money(fill.netCostPence)) : null
  return (
    <li className={styles.gap}>
      <p>
        {says} <strong>{words.youFilled(oneOff ?? line?.name ?? words.withOthers)}</strong>
      </p>
      <Row>
        <Button variant="default" onClick={takeOut} aria-label={words.takeOutNamed(says)}>
          {words.takeOut}
        </Button>
      </Row>
    </li>
  )
}
