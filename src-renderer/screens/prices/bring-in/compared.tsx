import { Button, Checkbox } from '@mantine/core'
import { useState } from 'react'
import type { ReactNode } from 'react'
import { Card, Stack } from '../../../parts/card.tsx'
import { money, plain } from '../../../parts/figures-in-words.ts'
import { Breaks } from '../breaks.tsx'
import styles from '../prices.module.css'
import type { Comparison } from './use-bring-in.ts'

type Change = Comparison['changed'][number]
type Links = { readonly code: string; readonly itemId: string }[]

type Shown = {
  readonly comparison: Comparison
  readonly busy: boolean
  readonly take: (links: Links) => void
}

/** What a file would change, in money, with the button that does it. */
export function Compared({ comparison, busy, take }: Shown) {
  const [refused, setRefused] = useState<readonly string[]>([])
  const { counts, suggested } = comparison
  const links = suggested
    .filter(({ code }) => !refused.includes(code))
    .map(({ code, itemId }) => ({ code, itemId }))
  const nothing = counts.new + counts.changed + counts.missing === 0
  return (
    <Card
      title={nothing ? 'Nothing would change' : '4. This is what would change'}
      aside={
        <Button loading={busy} onClick={() => take(links)} disabled={nothing && links.length === 0}>
          Take these prices in
        </Button>
      }
    >
      <Stack>
        <Counts counts={counts} />
        <OpenWork openWork={comparison.openWork} />
        <Cautions cautions={comparison.cautions ?? []} />
        <Part
          title="Changed, the biggest rises first"
          many={counts.changed}
          shown={comparison.changed.length}
        >
          <Changes rows={comparison.changed} name="Changed rows" />
        </Part>
        <Part title="New" many={counts.new} shown={comparison.added.length}>
          <Changes rows={comparison.added} name="New rows" />
        </Part>
        <Part
          title="In your list but not in the file"
          many={counts.missing}
          shown={comparison.missing.length}
        >
          <Changes rows={comparison.missing} name="Missing rows" />
        </Part>
        <Part title="Not taken, and why" many={counts.rejected} shown={comparison.rejected.length}>
          <ul className={styles.plainList}>
            {comparison.rejected.map((row) => (
              <li key={row.rowNo}>
                <strong>Row {row.rowNo}.</strong> {row.says} <span className={styles.soft}>{row.text}</span>
              </li>
            ))}
          </ul>
        </Part>
        <Part title="The same code twice" many={counts.duplicated} shown={comparison.duplicated.length}>
          <ul className={styles.plainList}>
            {comparison.duplicated.map((row) => (
              <li key={row.code}>{row.says}</li>
            ))}
          </ul>
        </Part>
        <Suggested suggested={suggested} refused={refused} refuse={setRefused} />
      </Stack>
    </Card>
  )
}

/** What is taken in spite of a flaw: to be looked at before it is. */
function Cautions({ cautions }: { readonly cautions: NonNullable<Comparison['cautions']> }) {
  const rows = (rowNos: readonly number[], many: number) => {
    const named = rowNos.join(', ')
    return `${many === 1 ? 'Row' : 'Rows'} ${named}${many > rowNos.length ? ` and ${many - rowNos.length} more` : ''}`
  }
  return (
    <Part title="Taken, but look at these" many={cautions.length} shown={cautions.length}>
      <ul className={styles.plainList}>
        {cautions.map(({ says, rows: many, rowNos }) => (
          <li key={says}>
            <strong>{rows(rowNos, many)}.</strong> {says}
          </li>
        ))}
      </ul>
    </Part>
  )
}

type Suggest = {
  readonly suggested: Comparison['suggested']
  readonly refused: readonly string[]
  readonly refuse: (codes: readonly string[]) => void
}

/** Rows that look like items of the catalogue: each stays ticked, or is unticked. */
function Suggested({ suggested, refused, refuse }: Suggest) {
  return (
    <Part title="These look like items of your catalogue" many={suggested.length} shown={suggested.length}>
      <Stack>
        {suggested.map(({ code, name, itemName, because }) => (
          <Checkbox
            key={code}
            label={`${code} ${name} is ${itemName}`}
            description={because}
            checked={!refused.includes(code)}
            onChange={({ currentTarget }) =>
              refuse(currentTarget.checked ? refused.filter((one) => one !== code) : [...refused, code])
            }
          />
        ))}
      </Stack>
    </Part>
  )
}

const inWords = {
  new: 'new',
  changed: 'changed',
  unchanged: 'as they were',
  missing: 'missing from the file',
  rejected: 'not taken',
  duplicated: 'given twice',
} as const

function Counts({ counts }: Pick<Comparison, 'counts'>) {
  const many = new Intl.NumberFormat('en-GB')
  return (
    <dl className={styles.counts}>
      {(Object.keys(inWords) as (keyof typeof inWords)[]).map((kind) => (
        <div key={kind} data-none={counts[kind] === 0}>
          <dt>{inWords[kind]}</dt>
          <dd>{many.format(counts[kind])}</dd>
        </div>
      ))}
    </dl>
  )
}

function OpenWork({ openWork }: Pick<Comparison, 'openWork'>) {
  if (openWork.length === 0) return <p>No job of yours costs more or less by it.</p>
  return (
    <div>
      <h3>Your jobs, at cost before tax</h3>
      <ul className={styles.plainList}>
        {openWork.map(({ jobId, title, wasPence, willPence }) => (
          <li key={jobId}>
            {title}: {money(wasPence)} now, {money(willPence)} then ({moneyMore(willPence - wasPence)})
          </li>
        ))}
      </ul>
    </div>
  )
}

function moneyMore(pence: number): string {
  return pence < 0 ? `${money(-pence)} less` : `${money(pence)} more`
}

type Part = {
  readonly title: string
  readonly many: number
  readonly shown: number
  readonly children: ReactNode
}

function Part({ title, many, shown, children }: Part) {
  if (many === 0) return null
  return (
    <details className={styles.part} open>
      <summary>
        <h3>
          {title} ({new Intl.NumberFormat('en-GB').format(many)}
          {shown < many ? `, the first ${shown} shown` : ''})
        </h3>
      </summary>
      {children}
    </details>
  )
}

/** Rows with what they cost before and after. */
export function Changes({ rows, name }: { readonly rows: readonly Change[]; readonly name: string }) {
  return (
    <div className={styles.tall} tabIndex={0} role="region" aria-label={name}>
      <table className={styles.table}>
        <thead>
          <tr>
            <th scope="col">Code</th>
            <th scope="col">Name</th>
            <th scope="col" className={styles.number}>
              Now
            </th>
            <th scope="col" className={styles.number}>
              Then
            </th>
            <th scope="col" className={styles.number}>
              Change
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.code}>
              <td>{row.code}</td>
              <td>{row.name}</td>
              <td className={styles.number}>
                {amount(row.wasPence, row.wasHolds)}
                <Breaks breaks={row.wasBreaks} />
              </td>
              <td className={styles.number}>
                {amount(row.willPence, row.willHolds)}
                <Breaks breaks={row.willBreaks} />
              </td>
              <td className={styles.number}>{rise(row)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}

function amount(pence: number | null, holds: number | undefined): string {
  if (pence === null) return ''
  return holds === undefined || holds === 1 ? money(pence) : `${money(pence)} for ${plain(holds)}`
}

function rise({ risesBasisPoints, wasBreaks, willBreaks }: Change): string {
  if (risesBasisPoints === 0 && (wasBreaks ?? willBreaks) !== undefined) return 'breaks only'
  if (risesBasisPoints === undefined) return ''
  const percent = plain(Math.abs(risesBasisPoints) / 100)
  return risesBasisPoints < 0 ? `−${percent} %` : `+${percent} %`
}
