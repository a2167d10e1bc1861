import { Checkbox, NativeSelect, NumberInput } from '@mantine/core'
import type { ColumnMeaning, FileReading } from '../../../../src-main/domain/price-list.ts'
import { Card, FieldGrid } from '../../../parts/card.tsx'
import { Notice } from '../../../parts/notice.tsx'
import { BreakBox, quantitySeen } from './break-box.tsx'
import { words } from './bring-in.words.ts'
import { money } from '../../../parts/figures-in-words.ts'
import { Breaks } from '../breaks.tsx'
import styles from '../prices.module.css'
import type { Look } from './use-bring-in.ts'

type How = {
  readonly look: Look
  readonly reading: FileReading
  readonly change: (reading: FileReading) => void
}

/** How the file is read, with its first rows: every guess is shown and can be put right. */
export function HowRead({ look, reading, change }: How) {
  return (
    <Card title={words.read.title} says={look.remembered ? words.read.remembered : words.read.guessed}>
      <FieldGrid>
        {reading.form === 'text' ? <TextWays reading={reading} change={change} /> : null}
        {look.sheets === undefined || look.sheets.length < 2 ? null : (
          <NativeSelect
            label={words.read.sheet}
            value={reading.sheet ?? look.sheets[0] ?? ''}
            data={[...look.sheets]}
            onChange={({ currentTarget }) => change({ ...reading, sheet: currentTarget.value })}
          />
        )}
        {reading.form === 'ublCatalogue' ? null : <RowWays reading={reading} change={change} />}
      </FieldGrid>
      {reading.form === 'ublCatalogue' ? null : <Raw look={look} reading={reading} change={change} />}
      <Understood look={look} />
      {(look.notes ?? []).length === 0 ? null : (
        <div className={styles.above}>
          <Notice tone="warn" title={words.read.lookFirst}>
            <ul>
              {(look.notes ?? []).slice(0, 8).map((says) => (
                <li key={says}>{says}</li>
              ))}
            </ul>
          </Notice>
        </div>
      )}
    </Card>
  )
}

type Ways = Pick<How, 'reading' | 'change'>

function TextWays({ reading, change }: Ways) {
  return (
    <>
      <NativeSelect
        label={words.read.delimiter}
        value={reading.delimiter ?? ','}
        data={[
          { value: ',', label: words.read.commas },
          { value: ';', label: words.read.semicolons },
          { value: '\t', label: words.read.tabs },
          { value: '|', label: words.read.strokes },
        ]}
        onChange={({ currentTarget }) =>
          change({ ...reading, delimiter: currentTarget.value as NonNullable<FileReading['delimiter']> })
        }
      />
      <NativeSelect
        label={words.read.encoding}
        value={reading.encoding ?? 'utf-8'}
        data={[
          { value: 'utf-8', label: words.read.utf8 },
          { value: 'windows-1252', label: words.read.windows1252 },
          { value: 'utf-16le', label: words.read.utf16le },
          { value: 'utf-16be', label: words.read.utf16be },
        ]}
        onChange={({ currentTarget }) =>
          change({ ...reading, encoding: currentTarget.value as NonNullable<FileReading['encoding']> })
        }
      />
    </>
  )
}

function RowWays({ reading, change }: Ways) {
  return (
    <>
      <NumberInput
        label={words.read.headerRow}
        description={words.read.headerRowSays}
        min={0}
        max={1000}
        size="md"
        value={reading.headerRow}
        onChange={(value) =>
          typeof value === 'number' ? change({ ...reading, headerRow: value }) : undefined
        }
      />
      <NativeSelect
        label={words.read.decimal}
        value={reading.decimal}
        data={[
          { value: 'point', label: words.read.point },
          { value: 'comma', label: words.read.comma },
        ]}
        onChange={({ currentTarget }) =>
          change({ ...reading, decimal: currentTarget.value as FileReading['decimal'] })
        }
      />
      <NativeSelect
        label={words.read.dates}
        value={reading.dates}
        data={[
          { value: 'dayFirst', label: words.read.dayFirst },
          { value: 'monthFirst', label: words.read.monthFirst },
          { value: 'yearFirst', label: words.read.yearFirst },
        ]}
        onChange={({ currentTarget }) =>
          change({ ...reading, dates: currentTarget.value as FileReading['dates'] })
        }
      />
      <Checkbox
        label={words.read.perUnit}
        checked={reading.pricePerUnit === true}
        onChange={({ currentTarget }) => change({ ...reading, pricePerUnit: currentTarget.checked })}
      />
    </>
  )
}

type Column = FileReading['columns'][number]

/** The same reading with what one column holds put otherwise; null leaves the column out. */
function withColumn(reading: FileReading, at: number, column: Omit<Column, 'at'> | null): FileReading {
  const others = reading.columns.filter((one) => one.at !== at)
  const columns = column === null ? others : [...others, { at, ...column }]
  return { ...reading, columns: columns.toSorted((a, b) => a.at - b.at) }
}

function Raw({ look, reading, change }: How) {
  const wide = Math.max(1, ...look.raw.map((row) => row.length))
  const columns = Array.from({ length: Math.min(wide, 40) }, (_, at) => at)
  const isUsed = (at: number) => reading.columns.some((column) => column.at === at)
  return (
    <div className={styles.wideTable} tabIndex={0} role="region" aria-label={words.read.firstRows}>
      <table className={styles.raw}>
        <thead>
          <tr>
            <th scope="col">{words.read.row}</th>
            {columns.map((at) => (
              <ColumnHead
                key={at}
                at={at}
                heading={look.headings[at] ?? ''}
                column={reading.columns.find((column) => column.at === at)}
                change={(column) => change(withColumn(reading, at, column))}
              />
            ))}
          </tr>
        </thead>
        <tbody>
          {look.raw.slice(0, 12).map((row, index) => (
            <tr
              key={index}
              data-heading={index + 1 === reading.headerRow}
              data-above={index + 1 < reading.headerRow}
            >
              <th scope="row">{index + 1}</th>
              {columns.map((at) => (
                <td key={at} data-used={isUsed(at)}>
                  {row[at] ?? ''}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}

type Head = {
  readonly at: number
  readonly heading: string
  readonly column: Column | undefined
  readonly change: (column: Omit<Column, 'at'> | null) => void
}

/** What a column holds: shown, and chosen otherwise. */
function ColumnHead({ at, heading, column, change }: Head) {
  const choose = (value: string) => {
    if (value === '') return change(null)
    const meaning = value as ColumnMeaning
    const fromPacks = meaning === 'breakPrice' ? quantitySeen(heading) : undefined
    change(withQuantity(meaning, fromPacks))
  }
  return (
    <th scope="col">
      <NativeSelect
        aria-label={words.read.holds(at + 1, heading)}
        value={column?.meaning ?? ''}
        data={[
          { value: '', label: words.read.leaveOut },
          ...Object.entries(words.read.meanings).map(([value, label]) => ({ value, label })),
        ]}
        onChange={({ currentTarget }) => choose(currentTarget.value)}
      />
      {column?.meaning === 'breakPrice' ? (
        <BreakBox
          key={column.fromPacks ?? 0}
          column={at + 1}
          fromPacks={column.fromPacks}
          change={(fromPacks) => change(withQuantity('breakPrice', fromPacks))}
        />
      ) : null}
    </th>
  )
}

function withQuantity(meaning: ColumnMeaning, fromPacks: number | undefined): Omit<Column, 'at'> {
  return fromPacks === undefined ? { meaning } : { meaning, fromPacks }
}

function Understood({ look }: { readonly look: Look }) {
  return (
    <div className={styles.understood}>
      <div>
        <h3>{words.read.understood}</h3>
        {look.understood.length === 0 ? (
          <p>{words.read.noneUnderstood}</p>
        ) : (
          <table className={styles.table}>
            <thead>
              <tr>
                <th scope="col">{words.columns.code}</th>
                <th scope="col">{words.columns.name}</th>
                <th scope="col" className={styles.number}>
                  {words.columns.pack}
                </th>
                <th scope="col" className={styles.number}>
                  {words.columns.packPrice}
                </th>
              </tr>
            </thead>
            <tbody>
              {look.understood.slice(0, 6).map((row) => (
                <tr key={row.rowNo}>
                  <td>{row.code}</td>
                  <td>{row.name}</td>
                  <td className={styles.number}>{row.packHolds}</td>
                  <td className={styles.number}>
                    {money(row.packPence)}
                    <Breaks breaks={row.breaks} />
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        )}
      </div>
      {look.rejected.length === 0 ? null : (
        <div>
          <h3>{words.read.notUnderstood}</h3>
          <ul>
            {look.rejected.slice(0, 6).map((row) => (
              <li key={row.rowNo}>{words.read.rowSays(row.rowNo, row.says)}</li>
            ))}
          </ul>
        </div>
      )}
    </div>
  )
}
