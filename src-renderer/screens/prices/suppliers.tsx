import { Button, TextInput } from '@mantine/core'
import { useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import type { AnswerOf } from '../../../src-main/contract/requests.ts'
import type { Supplier } from '../../../src-main/domain/price.ts'
import { problemsOf, sentencesOf } from '../../bridge/call.ts'
import { useAsk, useCommand } from '../../bridge/use-ask.ts'
import { penceText, typedPence } from '../../draft/typed-number.ts'
import { Card, FieldGrid, Row, Stack } from '../../parts/card.tsx'
import { dayInWords, money } from '../../parts/figures-in-words.ts'
import { ProblemList, Waiting } from '../../parts/notice.tsx'
import { GroupDiscounts } from './group-discounts.tsx'
import styles from './prices.module.css'

export type SupplierRow = AnswerOf<'supplier.list'>['suppliers'][number]

/** Who sells to the firm, on what terms. */
export function Suppliers() {
  const asked = useAsk('supplier.list', {})
  const [editing, setEditing] = useState<string | null>(null)
  if (asked.isPending) return <Waiting what="Looking for your suppliers" />
  if (asked.error !== null) {
    return <ProblemList title="The suppliers can't be shown" problems={sentencesOf(asked.error)} />
  }
  const { suppliers } = asked.data
  return (
    <Stack>
      <Row>
        <Button onClick={() => setEditing('')}>Add a supplier</Button>
      </Row>
      {editing === '' ? <SupplierForm old={null} close={() => setEditing(null)} /> : null}
      {suppliers.map((row) =>
        editing === row.supplier.supplierId ? (
          <SupplierForm key={editing} old={row.supplier} close={() => setEditing(null)} />
        ) : (
          <OneSupplier
            key={row.supplier.supplierId}
            row={row}
            edit={() => setEditing(row.supplier.supplierId)}
          />
        ),
      )}
    </Stack>
  )
}

function OneSupplier({ row, edit }: { readonly row: SupplierRow; readonly edit: () => void }) {
  const { supplier, rows, newest } = row
  const many = new Intl.NumberFormat('en-GB').format(rows)
  return (
    <Card
      title={supplier.name}
      says={newest === null ? `${many} prices` : `${many} prices, the newest from ${dayInWords(newest)}`}
      aside={
        <Button variant="default" onClick={edit} aria-label={`Change ${supplier.name}`}>
          Change
        </Button>
      }
    >
      <p>
        Carriage {money(supplier.carriagePence)}
        {supplier.carriageFreeFromPence === undefined
          ? ''
          : `, free from ${money(supplier.carriageFreeFromPence)}`}
        {supplier.minimumOrderPence === undefined
          ? ''
          : `; smallest order ${money(supplier.minimumOrderPence)}`}
      </p>
      {supplier.note === undefined ? null : <p className={styles.soft}>{supplier.note}</p>}
      <GroupDiscounts row={row} />
    </Card>
  )
}

type Typed = Readonly<Record<'name' | 'carriage' | 'freeFrom' | 'minimum' | 'note', string>>

function SupplierForm({ old, close }: { readonly old: Supplier | null; readonly close: () => void }) {
  const [typed, setTyped] = useState<Typed>({
    name: old?.name ?? '',
    carriage: penceText(old?.carriagePence ?? 0),
    freeFrom: penceText(old?.carriageFreeFromPence),
    minimum: penceText(old?.minimumOrderPence),
    note: old?.note ?? '',
  })
  const queries = useQueryClient()
  const save = useCommand('supplier.save', () => queries.invalidateQueries({ queryKey: ['supplier.list'] }))
  const problems = problemsOf(save.error)
  const box = (field: keyof Typed, label: string, path: string) => ({
    label,
    value: typed[field],
    error: problems.find((problem) => problem.path === `supplier.${path}`)?.message,
    onChange: ({ currentTarget }: { readonly currentTarget: HTMLInputElement }) =>
      setTyped({ ...typed, [field]: currentTarget.value }),
  })
  return (
    <form
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        save.mutate({ supplier: supplierOf(typed, old) }, { onSuccess: close })
      }}
    >
      <Card title={old === null ? 'A new supplier' : `Change ${old.name}`}>
        <FieldGrid>
          <TextInput {...box('name', 'Name', 'name')} />
          <TextInput {...box('carriage', 'Carriage (£)', 'carriagePence')} inputMode="decimal" />
          <TextInput
            {...box('freeFrom', 'Carriage free from (£)', 'carriageFreeFromPence')}
            inputMode="decimal"
          />
          <TextInput {...box('minimum', 'Smallest order (£)', 'minimumOrderPence')} inputMode="decimal" />
          <TextInput {...box('note', 'Note', 'note')} />
        </FieldGrid>
        {problems.length === 0 ? null : <ProblemList title="Not saved" problems={sentencesOf(save.error)} />}
        <Row>
          <Button mt="md" type="submit" loading={save.isPending}>
            Save the supplier
          </Button>
          <Button mt="md" variant="default" onClick={close}>
            Cancel
          </Button>
        </Row>
      </Card>
    </form>
  )
}

/** What was typed, as the request takes it; what is no money is for the desk to judge. */
function supplierOf(typed: Typed, old: Supplier | null): Supplier {
  const some = (field: string, text: string) => {
    const pence = typedPence(text)
    return pence === undefined ? {} : { [field]: pence }
  }
  return {
    supplierId: old?.supplierId ?? `supplier-${Date.now()}`,
    name: typed.name,
    carriagePence: (typedPence(typed.carriage) ?? 0) as number,
    ...some('carriageFreeFromPence', typed.freeFrom),
    ...some('minimumOrderPence', typed.minimum),
    ...(typed.note.trim() === '' ? {} : { note: typed.note }),
  }
}
