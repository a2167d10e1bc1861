import { problemsOf } from '../../../bridge/call.ts'
import { useAsk } from '../../../bridge/use-ask.ts'
import { money } from '../../../parts/figures-in-words.ts'
import { Notice, ProblemList, Waiting } from '../../../parts/notice.tsx'
import { ChangeTable } from './change-table.tsx'
import { words } from './life.words.ts'

/** What prices and the catalogue have done to an issued quote since, line by line. */
export function Drift({ quoteId }: { readonly quoteId: string }) {
  const drift = useAsk('quote.drift', { quoteId })
  const problems = problemsOf(drift.error)
  if (problems.length > 0) return <ProblemList title={words.drift} problems={problems} />
  if (drift.data === undefined) return <Waiting what={words.driftLooking} />
  const { says, cost, changeCostPence, price, cannot } = drift.data
  const dearer = changeCostPence > 0 || cannot.length > 0
  return (
    <Notice tone={dearer ? 'warn' : 'good'} title={words.drift}>
      <p>{says}</p>
      {changeCostPence === 0 && cost.length === 0 ? null : (
        <>
          <p>
            {words.driftFor}{' '}
            {words.driftWith(price.changeGrossPence === 0 ? words.unchanged : money(price.isGrossPence))}
          </p>
          <ChangeTable
            name={words.driftOf(quoteId)}
            words={words.costTable}
            lines={cost.map((line) => ({ ...line, was: line.wasCostPence, is: line.isCostPence }))}
          />
        </>
      )}
      {cannot.length === 0 ? null : (
        <>
          <p>{words.cannot}</p>
          <ul>
            {cannot.map((what) => (
              <li key={what}>{what}</li>
            ))}
          </ul>
        </>
      )}
    </Notice>
  )
}
