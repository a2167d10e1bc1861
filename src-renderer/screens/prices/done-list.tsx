import { Button } from '@mantine/core'
import { useQueryClient } from '@tanstack/react-query'
import { Link } from 'wouter'
import { sentencesOf } from '../../bridge/call.ts'
import { useAsk, useCommand } from '../../bridge/use-ask.ts'
import { dayAndTime } from '../../parts/figures-in-words.ts'
import { Nothing, ProblemList, Waiting } from '../../parts/notice.tsx'
import styles from './prices.module.css'
import { words } from './prices.words.ts'
import { askPricesAgain } from './bring-in/use-bring-in.ts'

/** What was done to the prices, the newest first, each to be undone. */
export function DoneList() {
  const asked = useAsk('price.changes', {})
  const queries = useQueryClient()
  const undo = useCommand('price.undo', () => askPricesAgain(queries))
  if (asked.isPending) return <Waiting what={words.done.waiting} />
  if (asked.error !== null) {
    return <ProblemList title={words.done.failed} problems={sentencesOf(asked.error)} />
  }
  const { changes } = asked.data
  if (changes.length === 0) {
    return (
      <Nothing title={words.done.none}>
        <p>{words.done.noneSays}</p>
        <Button component={Link} href="/prices/file">
          {words.bringInFile}
        </Button>
      </Nothing>
    )
  }
  return (
    <>
      {undo.error === null ? null : (
        <ProblemList title={words.done.notUndone} problems={sentencesOf(undo.error)} />
      )}
      <ol className={styles.done} aria-label={words.whatWasChanged}>
        {changes.map((change) => (
          <li key={change.changeNo}>
            <div>
              <p>
                <strong>{change.says}</strong>
              </p>
              <p className={styles.soft}>{words.done.counts(dayAndTime(change.at), change.counts)}</p>
            </div>
            {change.undone ? (
              <p>{words.done.undone}</p>
            ) : (
              <Button
                variant="default"
                loading={undo.isPending && undo.variables.changeNo === change.changeNo}
                onClick={() => undo.mutate({ changeNo: change.changeNo })}
                aria-label={words.done.undoNamed(change.says)}
              >
                {words.done.undo}
              </Button>
            )}
          </li>
        ))}
      </ol>
    </>
  )
}
