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
import type { SupplierRow } from './suppliers.tsx'
import { askPricesAgain } from './bring-in/use-bring-in.ts'

/** What a supplier takes off each group of goods. */
export function GroupDiscounts({ row }: { readonly row: SupplierRow }) {
  const [adding, setAdding] = useState(false)
  const { supplier, groups } = row
  return (
    <div>
      {groups.length === 0 ? null : (
        <ul className={styles.plainList} aria-label={`Discounts of ${supplier.name}`}>
          {groups.map(({ group, name, basisPoints, validFrom }) => (
            <li key={`${group}/${validFrom}`}>
              Group {group}
              {name === '' ? '' : `, ${name}`}: {plain(basisPoints / 100)} % off from {dayInWords(validFrom)}
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
          aria-label={`Set a group discount of ${supplier.name}`}
        >
          Set a group discount
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
          label="Group, as the file writes it"
          value={group}
          onChange={(e) => setGroup(e.currentTarget.value)}
        />
        <TextInput label="What is in it" value={name} onChange={(e) => setName(e.currentTarget.value)} />
        <TextInput
          label="Percent off"
          inputMode="decimal"
          value={percent}
          onChange={(e) => setPercent(e.currentTarget.value)}
        />
      </FieldGrid>
      {save.error === null ? null : <ProblemList title="Not saved" problems={sentencesOf(save.error)} />}
      <Row>
        <Button mt="sm" loading={save.isPending} onClick={keep}>
          Save the discount
        </Button>
        <Button mt="sm" variant="default" onClick={close}>
          Cancel
        </Button>
      </Row>
    </div>
  )
}
