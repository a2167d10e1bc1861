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
import { words } from './prices.words.ts'

export type SupplierRow = AnswerOf<'supplier.list'>['suppliers'][number]

/** Who sells to the firm, on what terms. */
export function Suppliers() {
  const asked = useAsk('supplier.list', {})
  const [editing, setEditing] = useState<string | null>(null)
  if (asked.isPending) return <Waiting what={words.suppliers.waiting} />
  if (asked.error !== null) {
    return <ProblemList title={words.suppliers.failed} problems={sentencesOf(asked.error)} />
  }
  const { suppliers } = asked.data
  return (
    <Stack>
      <Row>
        <Button onClick={() => setEditing('')}>{words.suppliers.add}</Button>
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
  return (
    <Card
      title={supplier.name}
      says={
        newest === null ? words.suppliers.prices(rows) : words.suppliers.pricesTo(rows, dayInWords(newest))
      }
      aside={
        <Button variant="default" onClick={edit} aria-label={words.suppliers.changeNamed(supplier.name)}>
          {words.change}
        </Button>
      }
    >
      <p>
        {words.suppliers.carriage(money(supplier.carriagePence))}
        {supplier.carriageFreeFromPence === undefined
          ? ''
          : words.suppliers.freeFrom(money(supplier.carriageFreeFromPence))}
        {supplier.minimumOrderPence === undefined
          ? ''
          : words.suppliers.smallest(money(supplier.minimumOrderPence))}
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
      <Card title={old === null ? words.suppliers.newTitle : words.suppliers.changeNamed(old.name)}>
        <FieldGrid>
          <TextInput {...box('name', words.suppliers.name, 'name')} />
          <TextInput
            {...box('carriage', words.suppliers.carriageField, 'carriagePence')}
            inputMode="decimal"
          />
          <TextInput
            {...box('freeFrom', words.suppliers.freeFromField, 'carriageFreeFromPence')}
            inputMode="decimal"
          />
          <TextInput
            {...box('minimum', words.suppliers.minimumField, 'minimumOrderPence')}
            inputMode="decimal"
          />
          <TextInput {...box('note', words.suppliers.note, 'note')} />
        </FieldGrid>
        {problems.length === 0 ? null : (
          <ProblemList title={words.notSaved} problems={sentencesOf(save.error)} />
        )}
        <Row>
          <Button mt="md" type="submit" loading={save.isPending}>
            {words.suppliers.save}
          </Button>
          <Button mt="md" variant="default" onClick={close}>
            {words.cancel}
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
