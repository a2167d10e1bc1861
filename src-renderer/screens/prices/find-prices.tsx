import { Button, NativeSelect, TextInput } from '@mantine/core'
import { useDebouncedValue } from '@mantine/hooks'
import { useState } from 'react'
import type { ReactNode } from 'react'
import { Link } from 'wouter'
import { call, sentencesOf } from '../../bridge/call.ts'
import type { InputOf } from '../../../src-main/contract/requests.ts'
import { Nothing, ProblemList, Waiting } from '../../parts/notice.tsx'
import { SaveExport } from '../../parts/save-export.tsx'
import type { ExportChoice } from '../../parts/save-export.tsx'
import { BulkChange } from './bulk-change.tsx'
import { PriceGrid } from './grid/price-grid.tsx'
import styles from './prices.module.css'
import { words } from './prices.words.ts'
import { RowCard } from './row-card.tsx'
import { usePriceRows } from './grid/use-price-rows.ts'
import type { PriceFilter } from './grid/use-price-rows.ts'
import { useSupplierNames } from './use-supplier-names.ts'

type Which = {
  readonly text: string
  readonly supplierId: string
  readonly only: 'all' | 'linked' | 'unlinked' | 'stale'
}

/** Search as you type over every row of every supplier's list. */
export function FindPrices() {
  const [which, setWhich] = useState<Which>({ text: '', supplierId: '', only: 'all' })
  const [settled] = useDebouncedValue(which, 120)
  const [chosen, setChosen] = useState<number | null>(null)
  const [opened, setOpened] = useState<'changing' | 'saving' | null>(null)
  const toggle = (what: 'changing' | 'saving') => setOpened(opened === what ? null : what)
  const filter = filterOf(settled)
  const rows = usePriceRows(filter)
  return (
    <>
      <Filters which={which} set={setWhich} />
      <div className={styles.foundLine}>
        <p role="status" className={styles.foundSays}>
          {foundInWords(rows)}
        </p>
        {filter.text === '' && filter.supplierId === undefined ? (
          <p className={styles.soft}>{words.find.chooseFirst}</p>
        ) : (
          <Button variant="default" onClick={() => toggle('changing')} aria-expanded={opened === 'changing'}>
            {words.bulk.title}
          </Button>
        )}
        <Button variant="default" onClick={() => toggle('saving')} aria-expanded={opened === 'saving'}>
          {words.find.saveAsFile}
        </Button>
      </div>
      {opened === 'changing' ? (
        <BulkChange which={whichOf(filter)} onDone={() => setOpened(null)} key={JSON.stringify(filter)} />
      ) : null}
      {opened === 'saving' ? (
        <Section>
          <SavePrices filter={filter} />
        </Section>
      ) : null}
      <div className={styles.listAndRow} data-open={chosen !== null}>
        <Rows rows={rows} chosen={chosen} choose={setChosen} key={JSON.stringify(filter)} />
        {chosen === null ? null : <RowCard key={chosen} rowNo={chosen} close={() => setChosen(null)} />}
      </div>
    </>
  )
}

function filterOf({ text, supplierId, only }: Which): PriceFilter {
  return {
    text: text.trim(),
    ...(supplierId === '' ? {} : { supplierId }),
    ...(only === 'linked' ? { linked: true } : {}),
    ...(only === 'unlinked' ? { linked: false } : {}),
    ...(only === 'stale' ? { stale: true } : {}),
    sort: text.trim() === '' ? 'name' : 'nearest',
  }
}

/** The rows that are found, as a change or an export takes them. */
function whichOf({ sort: _sort, ...which }: PriceFilter): InputOf<'price.export'>['which'] {
  return which
}

function Section({ children }: { readonly children: ReactNode }) {
  return <div className={styles.section}>{children}</div>
}

/** What is found, one supplier's list, or every list, as a file. Rows that are no longer listed are left out. */
function SavePrices({ filter }: { readonly filter: PriceFilter }) {
  const names = useSupplierNames()
  const choice = (value: string, label: string, which: InputOf<'price.export'>['which']): ExportChoice => ({
    value,
    label,
    write: (form) => call('price.export', { form, which }),
  })
  const found = whichOf(filter)
  const choices = [
    choice('found', words.find.save.found, found),
    ...names.map(({ value, label }) =>
      choice(`of-${value}`, words.find.save.allOf(label), { supplierId: value }),
    ),
    choice('all', words.find.save.all, {}),
  ]
  return <SaveExport title={words.find.save.title} choices={choices} of={words.find.rows} />
}

type Rows = ReturnType<typeof usePriceRows>

function foundInWords({ first, found }: Rows): string {
  if (first.data === undefined) return ''
  const many = new Intl.NumberFormat('en-GB').format(found)
  return words.find.found(many, found, first.data.atLeast)
}

function Filters({ which, set }: { readonly which: Which; readonly set: (which: Which) => void }) {
  const names = useSupplierNames()
  return (
    <div className={styles.filters}>
      <TextInput
        className={styles.search ?? ''}
        type="search"
        label={words.find.text}
        description={words.find.textSays}
        value={which.text}
        onChange={({ currentTarget }) => set({ ...which, text: currentTarget.value })}
      />
      <NativeSelect
        label={words.find.supplier}
        value={which.supplierId}
        data={[{ value: '', label: words.find.everySupplier }, ...names]}
        onChange={({ currentTarget }) => set({ ...which, supplierId: currentTarget.value })}
      />
      <NativeSelect
        label={words.find.show}
        value={which.only}
        data={[
          { value: 'all', label: words.find.all },
          { value: 'linked', label: words.find.linked },
          { value: 'unlinked', label: words.find.unlinked },
          { value: 'stale', label: words.find.stale },
        ]}
        onChange={({ currentTarget }) => set({ ...which, only: currentTarget.value as Which['only'] })}
      />
    </div>
  )
}

type Shown = {
  readonly rows: Rows
  readonly chosen: number | null
  readonly choose: (rowNo: number) => void
}

function Rows({ rows, chosen, choose }: Shown) {
  if (rows.first.isPending) return <Waiting what={words.find.waiting} />
  if (rows.first.error !== null) {
    return (
      <ProblemList title={words.find.failed} problems={sentencesOf(rows.first.error)}>
        <Button mt="md" onClick={() => void rows.first.refetch()}>
          {words.find.again}
        </Button>
      </ProblemList>
    )
  }
  if (rows.found === 0) {
    return (
      <Nothing title={words.find.none}>
        <p>{words.find.noneSays}</p>
        <Button component={Link} href="/prices/file">
          {words.bringInFile}
        </Button>
      </Nothing>
    )
  }
  return <PriceGrid rows={rows} chosen={chosen} choose={choose} />
}
