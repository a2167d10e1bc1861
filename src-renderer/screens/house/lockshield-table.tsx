import { Button, TextInput } from '@mantine/core'
import { useState } from 'react'
import { typedNumber } from '../../draft/typed-number.ts'
import { useOpenJob } from '../../draft/use-draft.ts'
import { Row } from '../../parts/card.tsx'
import { plain } from '../../parts/figures-in-words.ts'
import styles from './house.module.css'
import { words as all } from './house.words.ts'

const words = all.lockshield
type ValveRow = { readonly turns: number; readonly kvM3PerH: number }

/** The table of the lockshield valve, from closed to open, as its maker's sheet gives it. Without it no opening is named. */
export function LockshieldTable() {
  const { job, change } = useOpenJob()
  const rows = job.house?.lockshield?.table ?? []
  const keep = (table: readonly ValveRow[]) => {
    change({ kind: 'set', path: 'house.lockshield', value: table.length === 0 ? undefined : { table } })
    change({ kind: 'settle' })
  }
  return (
    <div className={styles.lockshield} id="house.lockshield" tabIndex={-1}>
      <h3 className={styles.runsTitle}>{words.title}</h3>
      <p className={styles.soft}>{words.says}</p>
      <ul className={styles.valveRows} aria-label={words.title}>
        {rows.map((row) => (
          <li key={row.turns}>
            <span>{words.row(plain(row.turns), plain(row.kvM3PerH))}</span>
            <Button
              variant="subtle"
              color="gray"
              aria-label={words.removeRow(plain(row.turns))}
              onClick={() => keep(rows.filter((one) => one !== row))}
            >
              {words.remove}
            </Button>
          </li>
        ))}
      </ul>
      <AddRow rows={rows} keep={keep} />
    </div>
  )
}

type Add = { readonly rows: readonly ValveRow[]; readonly keep: (table: readonly ValveRow[]) => void }

function AddRow({ rows, keep }: Add) {
  const [turns, setTurns] = useState('')
  const [kv, setKv] = useState('')
  const [wrong, setWrong] = useState(false)
  const add = () => {
    const row = readRow(turns, kv)
    setWrong(row === null)
    if (row === null) return
    keep(withRow(rows, row))
    setTurns('')
    setKv('')
  }
  return (
    <Row>
      <TextInput
        label={words.turns}
        inputMode="decimal"
        value={turns}
        error={wrong ? words.noRow : undefined}
        onChange={({ currentTarget }) => setTurns(currentTarget.value)}
      />
      <TextInput
        label={words.kv}
        inputMode="decimal"
        value={kv}
        onChange={({ currentTarget }) => setKv(currentTarget.value)}
      />
      <Button variant="default" onClick={add}>
        {words.add}
      </Button>
    </Row>
  )
}

/** A row as it was typed; null where one of the two is no number of 0 or more. */
export function readRow(turns: string, kv: string): ValveRow | null {
  const row = [typedNumber(turns), typedNumber(kv)]
  const [opening, kvM3PerH] = row
  if (typeof opening !== 'number' || typeof kvM3PerH !== 'number') return null
  return opening >= 0 && opening <= 1000 && kvM3PerH >= 0 && kvM3PerH <= 10_000
    ? { turns: opening, kvM3PerH }
    : null
}

/** The table from closed to open; a row for the same opening takes the place of the old one. */
export function withRow(rows: readonly ValveRow[], row: ValveRow): readonly ValveRow[] {
  return [...rows.filter(({ turns }) => turns !== row.turns), row].toSorted((a, b) => a.turns - b.turns)
}
