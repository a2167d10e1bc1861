import { Button } from '@mantine/core'
import { useQueryClient } from '@tanstack/react-query'
import { Link } from 'wouter'
import { sentencesOf } from '../../bridge/call.ts'
import { useAsk, useCommand } from '../../bridge/use-ask.ts'
import { dayAndTime } from '../../parts/figures-in-words.ts'
import { Nothing, ProblemList, Waiting } from '../../parts/notice.tsx'
import styles from './prices.module.css'
import { askPricesAgain } from './bring-in/use-bring-in.ts'

/** What was done to the prices, the newest first, each to be undone. */
export function DoneList() {
  const asked = useAsk('price.changes', {})
  const queries = useQueryClient()
  const undo = useCommand('price.undo', () => askPricesAgain(queries))
  if (asked.isPending) return <Waiting what="Looking at what was changed" />
  if (asked.error !== null) {
    return <ProblemList title="What was changed can't be shown" problems={sentencesOf(asked.error)} />
  }
  const { changes } = asked.data
  if (changes.length === 0) {
    return (
      <Nothing title="Nothing was changed yet">
        <p>Files that you bring in and prices that you change are listed here, and can be undone.</p>
        <Button component={Link} href="/prices/file">
          Bring in a price file
        </Button>
      </Nothing>
    )
  }
  return (
    <>
      {undo.error === null ? null : <ProblemList title="Not undone" problems={sentencesOf(undo.error)} />}
      <ol className={styles.done} aria-label="What was changed">
        {changes.map((change) => (
          <li key={change.changeNo}>
            <div>
              <p>
                <strong>{change.says}</strong>
              </p>
              <p className={styles.soft}>
                {dayAndTime(change.at)}: {change.counts.new} new, {change.counts.changed} changed
                {change.counts.missing === 0 ? '' : `, ${change.counts.missing} no longer listed`}
              </p>
            </div>
            {change.undone ? (
              <p>Undone</p>
            ) : (
              <Button
                variant="default"
                loading={undo.isPending && undo.variables.changeNo === change.changeNo}
                onClick={() => undo.mutate({ changeNo: change.changeNo })}
                aria-label={`Undo: ${change.says}`}
              >
                Undo
              </Button>
            )}
          </li>
        ))}
      </ol>
    </>
  )
}
