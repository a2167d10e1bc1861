import { Button } from '@mantine/core'
import type { Override } from '../../../src-main/domain/job.ts'
import { useOpenJob } from '../../draft/use-draft.ts'
import { money } from '../../parts/figures-in-words.ts'
import { Notice } from '../../parts/notice.tsx'
import { withOverride } from './job-changes.ts'
import styles from './price.module.css'
import { words as all } from './price.words.ts'

const words = all.lost

/** Changes by hand that no line carries: their part is no longer on the list. Each can be taken off. */
export function LostChanges({ overrides }: { readonly overrides: readonly Override[] }) {
  const { change } = useOpenJob()
  if (overrides.length === 0) return null
  return (
    <Notice tone="warn" title={words.title}>
      <ul className={styles.plainList}>
        {overrides.map((one) => (
          <li key={one.lineKey} className={styles.found}>
            <span>{words.one(one.lineKey, inWords(one), one.reason)}</span>
            <Button
              variant="default"
              aria-label={words.takeOffNamed(one.lineKey)}
              onClick={() => change({ kind: 'alter', alter: (job) => withOverride(job, one.lineKey, null) })}
            >
              {words.takeOff}
            </Button>
          </li>
        ))}
      </ul>
    </Notice>
  )
}

function inWords({ quantity, itemId, netPence }: Override): string {
  return [
    ...(quantity === undefined ? [] : [words.needed(quantity)]),
    ...(itemId === undefined ? [] : [words.anotherItem]),
    ...(netPence === undefined ? [] : [words.price(money(netPence))]),
  ].join(' ')
}
