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
  useDocumentTitle('Catalogue: Tailpiece')
  const set = (changed: Partial<Which>) => setWhich({ ...which, ...changed })
  return (
    <>
      <div className={styles.head}>
        <div>
          <h1>Catalogue</h1>
          <p>
            What you put up and what you put it up with. Figures marked generic are nobody’s in particular.
          </p>
        </div>
        <div className={styles.buttons}>
          <Button variant="default" onClick={() => setSaving(!saving)} aria-expanded={saving}>
            Save as a file
          </Button>
          <Button component={Link} href="/catalogue/new">
            Add an item
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
    choice('found', 'What is found now', { ...filter, retired: filter.retired === true }),
    ...suppliers.map(({ supplier: { supplierId, name } }) => ({
      ...choice(`of-${supplierId}`, `What ${name} has a price for`, { text: '' }),
      write: (form: 'csv' | 'xlsx') => call('catalogue.export', { form, supplierId }),
    })),
    choice('all', 'Everything, retired items as well', { text: '' }),
  ]
  return <SaveExport title="Save the catalogue as a file" choices={choices} of={['item', 'items']} />
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
        label="Name, size, code or what you call it"
        value={which.text}
        onChange={({ currentTarget }) => set({ text: currentTarget.value })}
      />
      <NativeSelect
        label="Kind"
        value={which.kind}
        data={[{ value: '', label: 'Every kind' }, ...kindChoices]}
        onChange={({ currentTarget }) => set({ kind: currentTarget.value as Which['kind'] })}
      />
      <NativeSelect
        label="Show"
        value={which.only}
        data={[
          { value: 'all', label: 'All on the shelf' },
          { value: 'favourites', label: 'What we usually fit' },
          { value: 'retired', label: 'Retired' },
        ]}
        onChange={({ currentTarget }) => set({ only: currentTarget.value as Which['only'] })}
      />
    </div>
  )
}
