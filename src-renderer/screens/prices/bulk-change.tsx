import { Button, NativeSelect, TextInput } from '@mantine/core'
import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import type { InputOf } from '../../../src-main/contract/requests.ts'
import { call, sentencesOf } from '../../bridge/call.ts'
import { typedNumber, typedPence } from '../../draft/typed-number.ts'
import { Card, FieldGrid, Row } from '../../parts/card.tsx'
import { ProblemList } from '../../parts/notice.tsx'
import { Changes } from './bring-in/compared.tsx'
import styles from './prices.module.css'
import { words } from './prices.words.ts'
import { askPricesAgain } from './bring-in/use-bring-in.ts'

type Bulk = InputOf<'price.bulkApply'>
type Typed = {
  readonly kind: 'percent' | 'amount'
  readonly by: string
  readonly toPence: string
  readonly rule: Bulk['rounding']['rule']
}

/** Many prices at once, by a percentage or an amount: first what it would do, then the button that does it. */
export function BulkChange({
  which,
  onDone,
}: {
  readonly which: Bulk['which']
  readonly onDone: () => void
}) {
  const [typed, setTyped] = useState<Typed>({ kind: 'percent', by: '', toPence: '1', rule: 'nearest' })
  const queries = useQueryClient()
  const compare = useMutation({ mutationFn: () => call('price.bulkCompare', bulkOf(which, typed)) })
  const apply = useMutation({
    mutationFn: () => call('price.bulkApply', bulkOf(which, typed)),
    onSuccess: async () => {
      await askPricesAgain(queries)
      onDone()
    },
  })
  const set = (changed: Partial<Typed>) => {
    compare.reset()
    setTyped({ ...typed, ...changed })
  }
  const problems = [...sentencesOf(compare.error), ...sentencesOf(apply.error)]
  return (
    <div className={styles.section}>
      <Card title={words.bulk.title} says={words.bulk.says}>
        <BulkFields typed={typed} set={set} />
        <Row>
          <Button mt="md" variant="default" loading={compare.isPending} onClick={() => compare.mutate()}>
            {words.bulk.show}
          </Button>
          {compare.data === undefined ? null : (
            <Button mt="md" loading={apply.isPending} onClick={() => apply.mutate()}>
              {words.bulk.change(compare.data.counts.changed)}
            </Button>
          )}
        </Row>
        {problems.length === 0 ? null : <ProblemList title={words.bulk.failed} problems={problems} />}
        {compare.data === undefined ? null : <Changes rows={compare.data.changed} name={words.bulk.rows} />}
      </Card>
    </div>
  )
}

type Fields = { readonly typed: Typed; readonly set: (changed: Partial<Typed>) => void }

function BulkFields({ typed, set }: Fields) {
  return (
    <FieldGrid>
      <NativeSelect
        label={words.bulk.by}
        value={typed.kind}
        data={[
          { value: 'percent', label: words.bulk.percentage },
          { value: 'amount', label: words.bulk.amount },
        ]}
        onChange={({ currentTarget }) =>
          set({ kind: currentTarget.value === 'amount' ? 'amount' : 'percent' })
        }
      />
      <TextInput
        label={typed.kind === 'percent' ? words.bulk.percent : words.bulk.pounds}
        inputMode="decimal"
        value={typed.by}
        onChange={({ currentTarget }) => set({ by: currentTarget.value })}
      />
      <NativeSelect
        label={words.bulk.roundTo}
        value={typed.toPence}
        data={[
          { value: '1', label: words.bulk.penny },
          { value: '5', label: words.bulk.pence(5) },
          { value: '10', label: words.bulk.pence(10) },
          { value: '50', label: words.bulk.pence(50) },
          { value: '100', label: words.bulk.pound },
        ]}
        onChange={({ currentTarget }) => set({ toPence: currentTarget.value })}
      />
      <NativeSelect
        label={words.bulk.rounding}
        value={typed.rule}
        data={[
          { value: 'nearest', label: words.bulk.nearest },
          { value: 'up', label: words.bulk.up },
          { value: 'down', label: words.bulk.down },
        ]}
        onChange={({ currentTarget }) => set({ rule: currentTarget.value as Typed['rule'] })}
      />
    </FieldGrid>
  )
}

/** What was typed, as the request takes it; what is no number is for the desk to judge. */
function bulkOf(which: Bulk['which'], { kind, by, toPence, rule }: Typed): Bulk {
  const rounding = { toPence: Number(toPence), rule } as Bulk['rounding']
  if (kind === 'amount') return { which, rounding, change: { kind, pence: typedPence(by) as number } }
  const percent = typedNumber(by)
  const basisPoints = typeof percent === 'number' ? Math.round(percent * 100) : (percent as unknown as number)
  return { which, rounding, change: { kind, basisPoints } }
}
