import { Button } from '@mantine/core'
import type { Override } from '../../../src-main/domain/job.ts'
import { useOpenJob } from '../../draft/use-draft.ts'
import { money } from '../../parts/figures-in-words.ts'
import { Notice } from '../../parts/notice.tsx'
import { withOverride } from './job-changes.ts'
import styles from './price.module.css'

/** Changes by hand that no line carries: their part is no longer on the list. Each can be taken off. */
export function LostChanges({ overrides }: { readonly overrides: readonly Override[] }) {
  const { change } = useOpenJob()
  if (overrides.length === 0) return null
  return (
    <Notice tone="warn" title="Changed by hand, on lines that are not priced now">
      <ul className={styles.plainList}>
        {overrides.map((one) => (
          <li key={one.lineKey} className={styles.found}>
            <span>
              {one.lineKey}: {inWords(one)} {one.reason}
            </span>
            <Button
              variant="default"
              aria-label={`Take the change off: ${one.lineKey}`}
              onClick={() => change({ kind: 'alter', alter: (job) => withOverride(job, one.lineKey, null) })}
            >
              Take the change off
            </Button>
          </li>
        ))}
      </ul>
    </Notice>
  )
}

function inWords({ quantity, itemId, netPence }: Override): string {
  return [
    ...(quantity === undefined ? [] : [`${quantity} needed;`]),
    ...(itemId === undefined ? [] : ['another item;']),
    ...(netPence === undefined ? [] : [`${money(netPence)};`]),
  ].join(' ')
}
