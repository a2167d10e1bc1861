import { Button, NativeSelect, TextInput } from '@mantine/core'
import { useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import { Link } from 'wouter'
import { unitOfKind } from '../../../src-main/domain/item.ts'
import type { Item } from '../../../src-main/domain/item.ts'
import { problemsOf } from '../../bridge/call.ts'
import { useCommand } from '../../bridge/use-ask.ts'
import { typedNumber } from '../../draft/typed-number.ts'
import { Row, Stack } from '../../parts/card.tsx'
import { kindChoices } from '../../parts/item/item-fields.ts'
import type { Kind } from '../../parts/item/item-fields.ts'
import { ItemForm } from '../../parts/item/item-form.tsx'
import { askPricesAgain } from './bring-in/use-bring-in.ts'
import type { PriceRow } from './grid/use-price-rows.ts'
import { words } from './prices.words.ts'

type Make = { readonly row: PriceRow; readonly close: () => void }

/** A supplier's row as a new item of the catalogue, linked to it: the kind is chosen, its figures are asked. */
export function MakeItem({ row, close }: Make) {
  const [kind, setKind] = useState<Kind | ''>('')
  return (
    <section aria-labelledby="make-item-title">
      <Stack>
        <h3 id="make-item-title">{words.make.title}</h3>
        <NativeSelect
          label={words.make.kind}
          value={kind}
          data={[{ value: '', label: words.make.chooseKind }, ...kindChoices]}
          onChange={({ currentTarget }) => setKind(currentTarget.value as Kind | '')}
        />
        {kind === 'emitter' ? (
          <p>
            {words.make.emitterBegins} <Link href="/catalogue">{words.make.emitterFind}</Link>{' '}
            {words.make.emitterEnds}
          </p>
        ) : null}
        {kind === '' || kind === 'emitter' ? null : <OfKind key={kind} row={row} kind={kind} />}
        <Row>
          <Button variant="default" onClick={close}>
            {words.make.leave}
          </Button>
        </Row>
      </Stack>
    </section>
  )
}

function holdsLabel(kind: Exclude<Kind, 'emitter'>): string {
  const unit: string = unitOfKind[kind]
  return (words.make.holds as Readonly<Record<string, string>>)[unit] ?? words.make.holdsOf(unit)
}

function OfKind({ row, kind }: { readonly row: PriceRow; readonly kind: Exclude<Kind, 'emitter'> }) {
  const [itemId] = useState(() => `own-${Date.now()}`)
  const [holds, setHolds] = useState(String(row.packHolds))
  const queries = useQueryClient()
  const make = useCommand('row.makeItem', () => askPricesAgain(queries))
  const problems = problemsOf(make.error)
  const start = { itemId, kind, name: row.name, generic: false, spec: {} } as unknown as Item
  return (
    <>
      <TextInput
        label={holdsLabel(kind)}
        inputMode="decimal"
        value={holds}
        error={problems.find(({ path }) => path === 'itemHolds')?.message}
        onChange={({ currentTarget }) => setHolds(currentTarget.value)}
      />
      <ItemForm
        start={start}
        problems={problems}
        busy={make.isPending}
        button={words.make.add}
        onSave={(item) => make.mutate({ rowNo: row.rowNo, item, itemHolds: typedNumber(holds) as number })}
      />
    </>
  )
}
