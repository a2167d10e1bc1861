import { Button, TextInput } from '@mantine/core'
import { useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import { sentencesOf } from '../../bridge/call.ts'
import { useAsk, useCommand } from '../../bridge/use-ask.ts'
import { typedNumber } from '../../draft/typed-number.ts'
import { FieldGrid, Row } from '../../parts/card.tsx'
import { dayInWords, plain } from '../../parts/figures-in-words.ts'
import { ProblemList } from '../../parts/notice.tsx'
import styles from './prices.module.css'
import { words } from './prices.words.ts'
import type { SupplierRow } from './suppliers.tsx'
import { askPricesAgain } from './bring-in/use-bring-in.ts'

/** What a supplier takes off each group of goods. */
export function GroupDiscounts({ row }: { readonly row: SupplierRow }) {
  const [adding, setAdding] = useState(false)
  const { supplier, groups } = row
  return (
    <div>
      {groups.length === 0 ? null : (
        <ul className={styles.plainList} aria-label={words.groups.name(supplier.name)}>
          {groups.map(({ group, name, basisPoints, validFrom }) => (
            <li key={`${group}/${validFrom}`}>
              {words.groups.one({
                group,
                name,
                percent: plain(basisPoints / 100),
                day: dayInWords(validFrom),
              })}
            </li>
          ))}
        </ul>
      )}
      {adding ? (
        <GroupForm supplierId={supplier.supplierId} close={() => setAdding(false)} />
      ) : (
        <Button
          variant="subtle"
          onClick={() => setAdding(true)}
          aria-label={words.groups.setOf(supplier.name)}
        >
          {words.groups.set}
        </Button>
      )}
    </div>
  )
}

function GroupForm({ supplierId, close }: { readonly supplierId: string; readonly close: () => void }) {
  const [group, setGroup] = useState('')
  const [name, setName] = useState('')
  const [percent, setPercent] = useState('')
  const about = useAsk('app.about', {})
  const queries = useQueryClient()
  const save = useCommand('discountGroup.save', () => askPricesAgain(queries))
  const typed = typedNumber(percent)
  const keep = () =>
    save.mutate(
      {
        group: {
          supplierId,
          group,
          name,
          basisPoints: typeof typed === 'number' ? Math.round(typed * 100) : (typed as unknown as number),
          validFrom: about.data?.today ?? '',
        },
      },
      { onSuccess: close },
    )
  return (
    <div>
      <FieldGrid>
        <TextInput
          label={words.groups.group}
          value={group}
          onChange={(e) => setGroup(e.currentTarget.value)}
        />
        <TextInput label={words.groups.holds} value={name} onChange={(e) => setName(e.currentTarget.value)} />
        <TextInput
          label={words.groups.percent}
          inputMode="decimal"
          value={percent}
          onChange={(e) => setPercent(e.currentTarget.value)}
        />
      </FieldGrid>
      {save.error === null ? null : <ProblemList title={words.notSaved} problems={sentencesOf(save.error)} />}
      <Row>
        <Button mt="sm" loading={save.isPending} onClick={keep}>
          {words.groups.save}
        </Button>
        <Button mt="sm" variant="default" onClick={close}>
          {words.cancel}
        </Button>
      </Row>
    </div>
  )
}
