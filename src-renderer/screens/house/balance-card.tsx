import { useOpenJob } from '../../draft/use-draft.ts'
import { useGoToField } from '../../draft/go-to-field.ts'
import { Card, Stack } from '../../parts/card.tsx'
import { plain } from '../../parts/figures-in-words.ts'
import { useHeatInWords } from '../../parts/heat-in-words.ts'
import { Notice, ProblemList, Verdict, Waiting } from '../../parts/notice.tsx'
import { WhyButton, WhyTree, Why, useWhy } from '../../parts/why.tsx'
import { called, calledWhy } from './circuits.ts'
import type { Circuit } from './circuits.ts'
import styles from './house.module.css'
import { words as all } from './house.words.ts'
import { PipeRuns } from './pipe-runs.tsx'
import { useBalance } from './use-balance.ts'

const words = all.balance
type Balance = ReturnType<typeof useBalance>
type Set = NonNullable<Balance['balance']>['circuits'][number]

/** The water that each emitter takes, and what each lockshield must let through. */
export function BalanceCard() {
  const { settled } = useOpenJob()
  const found = useBalance()
  const { flowC, returnC } = settled.survey.system
  if (found.circuits.length === 0 && found.without.length === 0 && !found.finding) return null
  return (
    <Card title={words.title} says={words.says(plain(flowC), plain(returnC))}>
      <Stack>
        {found.finding ? <Waiting what={words.finding} /> : <Flows found={found} />}
        <Untold found={found} />
        <Outcome found={found} />
        <PipeRuns circuits={found.circuits} />
      </Stack>
    </Card>
  )
}

function Flows({ found }: { readonly found: Balance }) {
  const { balance, circuits } = found
  const set = new Map(balance?.circuits.map((one) => [one.id, one]))
  const total = circuits.reduce((sum, one) => sum + one.litresPerMinute, 0)
  const hasTable = balance?.circuits.some(({ opening }) => opening !== null) ?? false
  return (
    <div className={styles.scroll}>
      <table className={styles.rooms} aria-label={words.title}>
        <thead>
          <tr>
            <th scope="col">{words.columns.room}</th>
            <th scope="col">{words.columns.emitter}</th>
            <th scope="col" className={styles.number}>
              {words.columns.heat}
            </th>
            <th scope="col" className={styles.number}>
              {words.columns.water}
            </th>
            {balance === null ? null : <th scope="col">{words.columns.kv}</th>}
            {hasTable ? <th scope="col">{words.columns.opening}</th> : null}
            <th scope="col">
              <span className={styles.unseen}>{all.columns.why}</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {circuits.map((one) => (
            <CircuitLine
              key={one.id}
              circuit={one}
              set={set.get(one.id) ?? null}
              columns={{ balanced: balance !== null, hasTable }}
              names={found.names}
            />
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row" colSpan={3}>
              {words.total}
            </th>
            <td className={styles.number}>{litres(total)}</td>
            <td colSpan={(balance === null ? 0 : 1) + (hasTable ? 1 : 0) + 1} />
          </tr>
        </tfoot>
      </table>
    </div>
  )
}

const litres = (litresPerMinute: number) => words.litres(litresPerMinute.toFixed(2))

type Line = {
  readonly circuit: Circuit
  readonly set: Set | null
  readonly columns: { readonly balanced: boolean; readonly hasTable: boolean }
  readonly names: ReadonlyMap<string, string>
}

function CircuitLine({ circuit, set, columns, names }: Line) {
  const { name, roomName, watts, litresPerMinute } = circuit
  const heat = useHeatInWords()
  const why = useWhy(words.why(name, roomName))
  return (
    <>
      <tr>
        <th scope="row" className={styles.room}>
          {roomName}
        </th>
        <td>{name}</td>
        <td className={styles.number}>{heat(watts)}</td>
        <td className={`${styles.number} ${styles.after}`}>{litres(litresPerMinute)}</td>
        {columns.balanced ? <td>{set === null ? words.onNoRun : kvSays(set)}</td> : null}
        {columns.hasTable ? <td>{openingSays(set)}</td> : null}
        <td>
          <WhyButton {...why} />
        </td>
      </tr>
      {why.open ? (
        <tr>
          <td colSpan={7} id={why.regionId}>
            <WhyTree why={circuit.why} />
            {set === null ? null : <WhyTree why={calledWhy(set.why, names)} />}
          </td>
        </tr>
      ) : null}
    </>
  )
}

/** The index circuit's lockshield is left open; the others are turned down to their Kv. */
function kvSays({ index, kvM3PerH }: Set): string {
  if (index) return words.index
  return kvM3PerH === null ? words.open : words.kvOf(plain(Number(kvM3PerH.toPrecision(2))))
}

function openingSays(set: Set | null): string {
  if (set === null) return words.onNoRun
  if (set.opening === null) return set.kvM3PerH === null ? words.open : words.notInTable
  return words.openedBy(plain(Math.round(set.opening.at * 100) / 100), set.opening.unit)
}

/** What is not in the figures, and why. */
function Untold({ found }: { readonly found: Balance }) {
  const { notCounted, without, finding } = found
  if (finding || (notCounted.length === 0 && without.length === 0)) return null
  return (
    <ul className={styles.assumed}>
      {notCounted.length === 0 ? null : <li>{words.notCounted(notCounted.join(', '))}</li>}
      {without.map((room) => (
        <li key={room}>{words.without(room)}</li>
      ))}
    </ul>
  )
}

/** What the pipes come to, or what is still wanted of them. */
function Outcome({ found }: { readonly found: Balance }) {
  const { job } = useOpenJob()
  const goTo = useGoToField(job)
  const { balance, problems, wanted, loose, names } = found
  if ((job.house?.legs.length ?? 0) === 0) return <p>{words.noPipes}</p>
  if (wanted.length > 0) {
    return (
      <Notice tone="warn" title={words.wanted}>
        <ul>
          {wanted.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      </Notice>
    )
  }
  if (problems.length > 0) {
    const ours = problems.map(({ path, ...rest }) => ({
      ...rest,
      message: called(rest.message, names),
      ...(path?.startsWith('legs') ? { path: `house.${path}` } : {}),
    }))
    return <ProblemList title={words.refused} problems={ours} goTo={goTo} />
  }
  if (balance === null) return <Waiting what={words.asking} />
  return (
    <div>
      <p>
        {words.head(
          names.get(balance.indexCircuitId) ?? '',
          balance.headM.toFixed(2),
          (balance.headPa / 1000).toFixed(1),
        )}
      </p>
      <Why of={words.whyHead} why={calledWhy(balance.why, names)} />
      <ul className={styles.warnings}>
        {loose.map(({ id, roomName, name }) => (
          <li key={id}>{words.loose(words.emitterIn(roomName, name))}</li>
        ))}
        {balance.warnings.map(({ message }) => (
          <li key={message}>
            <Verdict tone="warn">{called(message, names)}</Verdict>
          </li>
        ))}
      </ul>
      <p className={styles.soft}>{words.smooth}</p>
    </div>
  )
}
