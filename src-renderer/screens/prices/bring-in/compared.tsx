import { Button, Checkbox } from '@mantine/core'
import { useState } from 'react'
import type { ReactNode } from 'react'
import { Card, Stack } from '../../../parts/card.tsx'
import { money, plain } from '../../../parts/figures-in-words.ts'
import { Breaks } from '../breaks.tsx'
import styles from '../prices.module.css'
import { words } from './bring-in.words.ts'
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
      title={nothing ? words.compared.nothing : words.compared.title}
      aside={
        <Button loading={busy} onClick={() => take(links)} disabled={nothing && links.length === 0}>
          {words.compared.take}
        </Button>
      }
    >
      <Stack>
        <Counts counts={counts} />
        <OpenWork openWork={comparison.openWork} />
        <Cautions cautions={comparison.cautions ?? []} />
        <Part title={words.compared.changed} many={counts.changed} shown={comparison.changed.length}>
          <Changes rows={comparison.changed} name={words.compared.changedRows} />
        </Part>
        <Part title={words.compared.new} many={counts.new} shown={comparison.added.length}>
          <Changes rows={comparison.added} name={words.compared.newRows} />
        </Part>
        <Part title={words.compared.missing} many={counts.missing} shown={comparison.missing.length}>
          <Changes rows={comparison.missing} name={words.compared.missingRows} />
        </Part>
        <Part title={words.compared.rejected} many={counts.rejected} shown={comparison.rejected.length}>
          <ul className={styles.plainList}>
            {comparison.rejected.map((row) => (
              <li key={row.rowNo}>
                <strong>{words.compared.row(row.rowNo)}</strong> {row.says}{' '}
                <span className={styles.soft}>{row.text}</span>
              </li>
            ))}
          </ul>
        </Part>
        <Part title={words.compared.duplicated} many={counts.duplicated} shown={comparison.duplicated.length}>
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
  const rows = (rowNos: readonly number[], many: number) =>
    words.compared.rows(rowNos.join(', '), many, many - rowNos.length)
  return (
    <Part title={words.compared.cautions} many={cautions.length} shown={cautions.length}>
      <ul className={styles.plainList}>
        {cautions.map(({ says, rows: many, rowNos }) => (
          <li key={says}>
            <strong>{rows(rowNos, many)}</strong> {says}
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
    <Part title={words.compared.suggested} many={suggested.length} shown={suggested.length}>
      <Stack>
        {suggested.map(({ code, name, itemName, because }) => (
          <Checkbox
            key={code}
            label={words.compared.is(code, name, itemName)}
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

function Counts({ counts }: Pick<Comparison, 'counts'>) {
  const many = new Intl.NumberFormat('en-GB')
  const inWords = words.compared.counts
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
  if (openWork.length === 0) return <p>{words.compared.noJob}</p>
  return (
    <div>
      <h3>{words.compared.jobs}</h3>
      <ul className={styles.plainList}>
        {openWork.map(({ jobId, title, wasPence, willPence }) => (
          <li key={jobId}>
            {words.compared.job(title, {
              was: money(wasPence),
              will: money(willPence),
              more: moneyMore(willPence - wasPence),
            })}
          </li>
        ))}
      </ul>
    </div>
  )
}

function moneyMore(pence: number): string {
  return pence < 0 ? words.compared.less(money(-pence)) : words.compared.more(money(pence))
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
          {words.compared.part(
            title,
            new Intl.NumberFormat('en-GB').format(many),
            shown < many ? shown : null,
          )}
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
            <th scope="col">{words.columns.code}</th>
            <th scope="col">{words.columns.name}</th>
            <th scope="col" className={styles.number}>
              {words.columns.now}
            </th>
            <th scope="col" className={styles.number}>
              {words.columns.will}
            </th>
            <th scope="col" className={styles.number}>
              {words.columns.change}
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
  return holds === undefined || holds === 1
    ? money(pence)
    : words.compared.forPack(money(pence), plain(holds))
}

function rise({ risesBasisPoints, wasBreaks, willBreaks }: Change): string {
  if (risesBasisPoints === 0 && (wasBreaks ?? willBreaks) !== undefined) return words.compared.breaksOnly
  if (risesBasisPoints === undefined) return ''
  const percent = plain(Math.abs(risesBasisPoints) / 100)
  return risesBasisPoints < 0 ? `−${percent} %` : `+${percent} %`
}
