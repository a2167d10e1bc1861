import { Button, NativeSelect, TextInput } from '@mantine/core'
import { useDebouncedValue } from '@mantine/hooks'
import { useState } from 'react'
import { Link } from 'wouter'
import { sentencesOf } from '../../bridge/call.ts'
import { Nothing, ProblemList, Waiting } from '../../parts/notice.tsx'
import { BulkChange } from './bulk-change.tsx'
import { PriceGrid } from './price-grid.tsx'
import styles from './prices.module.css'
import { RowCard } from './row-card.tsx'
import { usePriceRows } from './use-price-rows.ts'
import type { PriceFilter } from './use-price-rows.ts'
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
  const [changing, setChanging] = useState(false)
  const filter = filterOf(settled)
  const rows = usePriceRows(filter)
  return (
    <>
      <Filters which={which} set={setWhich} />
      <div className={styles.foundLine}>
        <p role="status">{foundInWords(rows)}</p>
        {filter.text === '' && filter.supplierId === undefined ? (
          <p className={styles.soft}>Choose a supplier, or words, to change prices together.</p>
        ) : (
          <Button variant="default" onClick={() => setChanging(!changing)} aria-expanded={changing}>
            Change these prices together
          </Button>
        )}
      </div>
      {changing ? (
        <BulkChange
          which={{
            ...(filter.supplierId === undefined ? {} : { supplierId: filter.supplierId }),
            text: filter.text,
          }}
          onDone={() => setChanging(false)}
        />
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

type Rows = ReturnType<typeof usePriceRows>

function foundInWords({ first, found }: Rows): string {
  if (first.data === undefined) return ''
  const many = new Intl.NumberFormat('en-GB').format(found)
  return `${first.data.atLeast ? 'More than ' : ''}${many} ${found === 1 ? 'row' : 'rows'}`
}

function Filters({ which, set }: { readonly which: Which; readonly set: (which: Which) => void }) {
  const names = useSupplierNames()
  return (
    <div className={styles.filters}>
      <TextInput
        className={styles.search ?? ''}
        type="search"
        label="Code, name or size"
        description="Words in any order; TRV finds thermostatic valves"
        value={which.text}
        onChange={({ currentTarget }) => set({ ...which, text: currentTarget.value })}
      />
      <NativeSelect
        label="Supplier"
        value={which.supplierId}
        data={[{ value: '', label: 'All suppliers' }, ...names]}
        onChange={({ currentTarget }) => set({ ...which, supplierId: currentTarget.value })}
      />
      <NativeSelect
        label="Show"
        value={which.only}
        data={[
          { value: 'all', label: 'Every row' },
          { value: 'linked', label: 'Rows of catalogue items' },
          { value: 'unlinked', label: 'Rows of no item yet' },
          { value: 'stale', label: 'Old prices' },
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
  if (rows.first.isPending) return <Waiting what="Looking through the price lists" />
  if (rows.first.error !== null) {
    return (
      <ProblemList title="The prices can't be shown" problems={sentencesOf(rows.first.error)}>
        <Button mt="md" onClick={() => void rows.first.refetch()}>
          Try again
        </Button>
      </ProblemList>
    )
  }
  if (rows.found === 0) {
    return (
      <Nothing title="No price has these words">
        <p>Use fewer words, or bring in the file that your supplier sent.</p>
        <Button component={Link} href="/prices/file">
          Bring in a price file
        </Button>
      </Nothing>
    )
  }
  return <PriceGrid rows={rows} chosen={chosen} choose={choose} />
}
