import { Checkbox, NativeSelect, NumberInput } from '@mantine/core'
import type { ColumnMeaning, FileReading } from '../../../../src-main/domain/price-list.ts'
import { Card, FieldGrid } from '../../../parts/card.tsx'
import { Notice } from '../../../parts/notice.tsx'
import { BreakBox, quantitySeen } from './break-box.tsx'
import { money } from '../../../parts/figures-in-words.ts'
import { Breaks } from '../breaks.tsx'
import styles from '../prices.module.css'
import type { Look } from './use-bring-in.ts'

const meanings: Readonly<Record<ColumnMeaning, string>> = {
  code: 'Code',
  name: 'Name',
  gtin: 'Bar code (GTIN)',
  packHolds: 'Pack holds',
  price: 'Price',
  pricePer: 'Price is for',
  unit: 'Unit',
  group: 'Discount group',
  breakFromPacks: 'Break quantity',
  breakPrice: 'Break price',
  validFrom: 'Holds from',
  validTo: 'Holds until',
}

type How = {
  readonly look: Look
  readonly reading: FileReading
  readonly change: (reading: FileReading) => void
}

/** How the file is read, with its first rows: every guess is shown and can be put right. */
export function HowRead({ look, reading, change }: How) {
  return (
    <Card
      title="2. Is it read rightly?"
      says={look.remembered ? 'Read as this supplier’s last file was.' : 'Put right what was guessed wrong.'}
    >
      <FieldGrid>
        {reading.form === 'text' ? <TextWays reading={reading} change={change} /> : null}
        {look.sheets === undefined || look.sheets.length < 2 ? null : (
          <NativeSelect
            label="Sheet"
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
          <Notice tone="warn" title="Look at this first">
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
        label="Columns are parted by"
        value={reading.delimiter ?? ','}
        data={[
          { value: ',', label: 'Commas' },
          { value: ';', label: 'Semicolons' },
          { value: '\t', label: 'Tabs' },
          { value: '|', label: 'Upright strokes' },
        ]}
        onChange={({ currentTarget }) =>
          change({ ...reading, delimiter: currentTarget.value as NonNullable<FileReading['delimiter']> })
        }
      />
      <NativeSelect
        label="Letters are written in"
        value={reading.encoding ?? 'utf-8'}
        data={[
          { value: 'utf-8', label: 'Unicode (UTF-8)' },
          { value: 'windows-1252', label: 'Western European (Windows)' },
          { value: 'utf-16le', label: 'Unicode (UTF-16)' },
          { value: 'utf-16be', label: 'Unicode (UTF-16, big end first)' },
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
        label="Row of the headings"
        description="0 when there are none"
        min={0}
        max={1000}
        size="md"
        value={reading.headerRow}
        onChange={(value) =>
          typeof value === 'number' ? change({ ...reading, headerRow: value }) : undefined
        }
      />
      <NativeSelect
        label="Pence come after"
        value={reading.decimal}
        data={[
          { value: 'point', label: 'a point: 1,234.50' },
          { value: 'comma', label: 'a comma: 1.234,50' },
        ]}
        onChange={({ currentTarget }) =>
          change({ ...reading, decimal: currentTarget.value as FileReading['decimal'] })
        }
      />
      <NativeSelect
        label="Dates are written"
        value={reading.dates}
        data={[
          { value: 'dayFirst', label: 'day first: 31/01/2026' },
          { value: 'monthFirst', label: 'month first: 01/31/2026' },
          { value: 'yearFirst', label: 'year first: 2026-01-31' },
        ]}
        onChange={({ currentTarget }) =>
          change({ ...reading, dates: currentTarget.value as FileReading['dates'] })
        }
      />
      <Checkbox
        label="Prices are for one, not for the pack"
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
    <div className={styles.wideTable} tabIndex={0} role="region" aria-label="The file’s first rows">
      <table className={styles.raw}>
        <thead>
          <tr>
            <th scope="col">Row</th>
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
        aria-label={`Column ${at + 1} (${heading === '' ? 'no heading' : heading}) holds`}
        value={column?.meaning ?? ''}
        data={[
          { value: '', label: 'Leave out' },
          ...Object.entries(meanings).map(([value, label]) => ({ value, label })),
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
        <h3>Understood as</h3>
        {look.understood.length === 0 ? (
          <p>No row can be understood yet. Say which column holds the code and which the price.</p>
        ) : (
          <table className={styles.table}>
            <thead>
              <tr>
                <th scope="col">Code</th>
                <th scope="col">Name</th>
                <th scope="col" className={styles.number}>
                  Pack
                </th>
                <th scope="col" className={styles.number}>
                  Price of a pack
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
          <h3>Not understood among the first rows</h3>
          <ul>
            {look.rejected.slice(0, 6).map((row) => (
              <li key={row.rowNo}>
                Row {row.rowNo}: {row.says}
              </li>
            ))}
          </ul>
        </div>
      )}
    </div>
  )
}
