import { Button, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { Gap } from '../../../src-main/domain/quote.ts'
import { useOpenJob } from '../../draft/use-draft.ts'
import { Row } from '../../parts/card.tsx'
import { Notice } from '../../parts/notice.tsx'
import styles from './price.module.css'

/** Parts that the catalogue cannot supply. Each stops the quote until it is filled or let stand in writing. */
export function Gaps({ gaps }: { readonly gaps: readonly Gap[] }) {
  if (gaps.length === 0) return null
  const open = gaps.filter((gap) => gap.waived === undefined)
  const title = open.length === 0 ? 'Gaps that you let stand' : 'Gaps: parts that the catalogue cannot supply'
  return (
    <Notice tone="warn" title={title}>
      {gaps.map((gap) => (
        <GapEntry key={gap.gapKey} gap={gap} />
      ))}
    </Notice>
  )
}

function GapEntry({ gap }: { readonly gap: Gap }) {
  const { job, change } = useOpenJob()
  const [reason, setReason] = useState('')
  const [empty, setEmpty] = useState(false)
  const keep = () => {
    setEmpty(reason.trim() === '')
    if (reason.trim() === '') return
    change({ kind: 'add', path: 'waivers', value: { gapKey: gap.gapKey, reason } })
  }
  const takeBack = () => {
    const waivers = (job.waivers ?? []).filter((waiver) => waiver.gapKey !== gap.gapKey)
    change({ kind: 'set', path: 'waivers', value: waivers })
  }
  if (gap.waived !== undefined) {
    return (
      <div className={styles.gap}>
        <p>
          {gap.says} <strong>You let it stand: {gap.waived}</strong>
        </p>
        <Row>
          <Button variant="default" onClick={takeBack} aria-label={`Take this back: ${gap.says}`}>
            Take this back
          </Button>
        </Row>
      </div>
    )
  }
  return (
    <div className={styles.gap}>
      <p>{gap.says}</p>
      <TextInput
        label="Let it stand, because"
        value={reason}
        error={empty ? 'Say in a few words why the quote may go out without it.' : undefined}
        onChange={({ currentTarget }) => setReason(currentTarget.value)}
      />
      <Row>
        <Button variant="default" onClick={keep} aria-label={`Let it stand: ${gap.says}`}>
          Let it stand
        </Button>
      </Row>
    </div>
  )
}
