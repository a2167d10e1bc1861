import { Button, NativeSelect, TextInput } from '@mantine/core'
import { useDebouncedValue, useDocumentTitle } from '@mantine/hooks'
import { useState } from 'react'
import { Link, useLocation, useParams } from 'wouter'
import { call } from '../../bridge/call.ts'
import { useAsk } from '../../bridge/use-ask.ts'
import { kindChoices } from '../../parts/item/item-fields.ts'
import type { Kind } from '../../parts/item/item-fields.ts'
import { SaveExport } from '../../parts/save-export.tsx'
import type { ExportChoice } from '../../parts/save-export.tsx'
import styles from './catalogue.module.css'
import { words } from './catalogue.words.ts'
import { ItemList } from './item-list.tsx'
import type { ItemFilter } from './item-list.tsx'
import { ItemPage } from './item-page.tsx'
import { NewItem } from './new-item.tsx'

type Which = {
  readonly text: string
  readonly kind: Kind | ''
  readonly only: 'all' | 'favourites' | 'retired'
}

/** Every emitter, fitting and fixing: to find, to add to, to change, to retire. */
export function CatalogueScreen() {
  const { itemId } = useParams<{ itemId?: string }>()
  const [which, setWhich] = useState<Which>({ text: '', kind: '', only: 'all' })
  const [saving, setSaving] = useState(false)
  const [settled] = useDebouncedValue(which, 120)
  const filter = searchOf(settled)
  useDocumentTitle(words.documentTitle)
  const set = (changed: Partial<Which>) => setWhich({ ...which, ...changed })
  return (
    <>
      <div className={styles.head}>
        <div>
          <h1>{words.title}</h1>
          <p>{words.says}</p>
        </div>
        <div className={styles.buttons}>
          <Button variant="default" onClick={() => setSaving(!saving)} aria-expanded={saving}>
            {words.saveAsFile}
          </Button>
          <Button component={Link} href="/catalogue/new">
            {words.add}
          </Button>
        </div>
      </div>
      {saving ? (
        <div className={styles.section}>
          <SaveCatalogue filter={filter} />
        </div>
      ) : null}
      <Filters which={which} set={set} />
      <div className={styles.halves} data-open={itemId !== undefined}>
        <ItemList filter={filter} chosen={itemId} />
        {itemId === undefined ? null : <Opened itemId={itemId} />}
      </div>
    </>
  )
}

function Opened({ itemId }: { readonly itemId: string }) {
  const [, navigate] = useLocation()
  const close = () => navigate('/catalogue')
  if (itemId === 'new') return <NewItem close={close} />
  return <ItemPage key={itemId} itemId={itemId} close={close} />
}

/** What is found, what one supplier has a price for, or everything, as a file. */
function SaveCatalogue({ filter }: { readonly filter: ItemFilter }) {
  const suppliers = useAsk('supplier.list', {}).data?.suppliers ?? []
  const choice = (value: string, label: string, which: ItemFilter): ExportChoice => ({
    value,
    label,
    write: (form) => call('catalogue.export', { form, ...which }),
  })
  const choices = [
    choice('found', words.save.found, { ...filter, retired: filter.retired === true }),
    ...suppliers.map(({ supplier: { supplierId, name } }) => ({
      ...choice(`of-${supplierId}`, words.save.ofSupplier(name), { text: '' }),
      write: (form: 'csv' | 'xlsx') => call('catalogue.export', { form, supplierId }),
    })),
    choice('all', words.save.all, { text: '' }),
  ]
  return <SaveExport title={words.save.title} choices={choices} of={words.items} />
}

function searchOf({ text, kind, only }: Which): ItemFilter {
  return {
    text: text.trim(),
    ...(kind === '' ? {} : { kind }),
    ...(only === 'favourites' ? { favourite: true } : {}),
    ...(only === 'retired' ? { retired: true } : {}),
  }
}

type FilterProps = { readonly which: Which; readonly set: (changed: Partial<Which>) => void }

function Filters({ which, set }: FilterProps) {
  return (
    <div className={styles.filters}>
      <TextInput
        type="search"
        label={words.filters.text}
        value={which.text}
        onChange={({ currentTarget }) => set({ text: currentTarget.value })}
      />
      <NativeSelect
        label={words.kind}
        value={which.kind}
        data={[{ value: '', label: words.filters.everyKind }, ...kindChoices]}
        onChange={({ currentTarget }) => set({ kind: currentTarget.value as Which['kind'] })}
      />
      <NativeSelect
        label={words.filters.show}
        value={which.only}
        data={[
          { value: 'all', label: words.filters.all },
          { value: 'favourites', label: words.filters.favourites },
          { value: 'retired', label: words.filters.retired },
        ]}
        onChange={({ currentTarget }) => set({ only: currentTarget.value as Which['only'] })}
      />
    </div>
  )
}
