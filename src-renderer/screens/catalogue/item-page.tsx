import { Button, TextInput } from '@mantine/core'
import { useState } from 'react'
import { Link, useLocation } from 'wouter'
import type { AnswerOf } from '../../../src-main/contract/requests.ts'
import { problemsOf, sentencesOf } from '../../bridge/call.ts'
import { useAsk } from '../../bridge/use-ask.ts'
import { Card, Row, Stack } from '../../parts/card.tsx'
import { dayInWords, money } from '../../parts/figures-in-words.ts'
import { ItemForm } from '../../parts/item/item-form.tsx'
import { GenericMark, ProblemList, Waiting } from '../../parts/notice.tsx'
import styles from './catalogue.module.css'
import { useItem } from './use-item.ts'

type Whole = AnswerOf<'catalogue.item'>

/** One item: its figures, who sells it for what, and what can be done with it. */
export function ItemPage({ itemId, close }: { readonly itemId: string; readonly close: () => void }) {
  const asked = useAsk('catalogue.item', { itemId })
  const [editing, setEditing] = useState(false)
  const { save, retire, favourite } = useItem()
  if (asked.isPending) return <Waiting what="Looking at this item" />
  if (asked.error !== null) return <ProblemList title="Not shown" problems={sentencesOf(asked.error)} />
  const whole = asked.data
  const { item } = whole
  const retired = item.retired === true
  const problems = [...sentencesOf(retire.error), ...sentencesOf(favourite.error)]
  return (
    <Card
      title={item.name}
      says={item.generic ? <GenericMark /> : whole.own === true ? 'Your own' : undefined}
      aside={
        <Button variant="default" onClick={close}>
          Close
        </Button>
      }
    >
      <Stack>
        <Row>
          <Button
            variant={whole.favourite === true ? 'filled' : 'default'}
            aria-pressed={whole.favourite === true}
            onClick={() => favourite.mutate({ itemId, favourite: whole.favourite !== true })}
          >
            {whole.favourite === true ? 'We usually fit this' : 'Make it the usual one'}
          </Button>
          <Button variant="default" onClick={() => setEditing(!editing)} aria-expanded={editing}>
            Change its figures
          </Button>
          <Button variant="default" onClick={() => retire.mutate({ itemId, retired: !retired })}>
            {retired ? 'Put it back on the shelf' : 'Retire it'}
          </Button>
        </Row>
        {problems.length === 0 ? null : <ProblemList title="That did not work" problems={problems} />}
        {editing ? (
          <ItemForm
            start={item}
            problems={problemsOf(save.error)}
            busy={save.isPending}
            onSave={(changed) => save.mutate({ item: changed }, { onSuccess: () => setEditing(false) })}
            button="Save the figures"
          />
        ) : null}
        <CopyIt item={item} />
        <Prices whole={whole} />
        <UsedBy whole={whole} />
      </Stack>
    </Card>
  )
}

function CopyIt({ item }: Pick<Whole, 'item'>) {
  const [name, setName] = useState<string | null>(null)
  const [, navigate] = useLocation()
  const { copy } = useItem()
  if (name === null) {
    return (
      <Row>
        <Button variant="default" onClick={() => setName(`${item.name}, ours`)}>
          Copy it as one of our own
        </Button>
      </Row>
    )
  }
  const make = () =>
    copy.mutate(
      { itemId: item.itemId, name },
      { onSuccess: (made) => navigate(`/catalogue/${made.item.itemId}`) },
    )
  return (
    <div>
      <TextInput
        label="Name of the copy"
        value={name}
        onChange={({ currentTarget }) => setName(currentTarget.value)}
      />
      {copy.error === null ? null : <ProblemList title="Not copied" problems={sentencesOf(copy.error)} />}
      <Row>
        <Button mt="sm" loading={copy.isPending} onClick={make}>
          Make the copy
        </Button>
        <Button mt="sm" variant="default" onClick={() => setName(null)}>
          Cancel
        </Button>
      </Row>
    </div>
  )
}

function Prices({ whole }: { readonly whole: Whole }) {
  if (whole.prices.length === 0) {
    return (
      <p>
        No supplier has a price for it. <Link href="/prices">Find its price</Link> and say that it is this
        item.
      </p>
    )
  }
  return (
    <div>
      <h3>Prices today, before tax</h3>
      <ul className={styles.prices} aria-label="Prices today">
        {whole.prices.map(({ supplier, price, staleSays }) => (
          <li key={`${supplier.supplierId}/${price.code}`}>
            <span>
              {supplier.name}, code {price.code}
              {staleSays === undefined ? null : <span className={styles.stale}>{staleSays}</span>}
            </span>
            <span className={styles.price}>
              {money(price.packPence)}
              {price.packHolds === 1 ? '' : ` for ${price.packHolds}`}
            </span>
          </li>
        ))}
      </ul>
      <Earlier whole={whole} />
    </div>
  )
}

function Earlier({ whole }: { readonly whole: Whole }) {
  const longer = (whole.history ?? []).filter(({ prices }) => prices.length > 1)
  if (longer.length === 0) return null
  return (
    <details>
      <summary>Prices before and to come</summary>
      {longer.map(({ supplierId, supplierName, code, prices }) => (
        <div key={`${supplierId}/${code}`}>
          <h4>
            {supplierName}, code {code}
          </h4>
          <ul className={styles.prices}>
            {prices.map((price) => (
              <li key={price.validFrom}>
                <span>from {dayInWords(price.validFrom)}</span>
                <span className={styles.price}>
                  {money(price.packPence)}
                  {price.packHolds === 1 ? '' : ` for ${price.packHolds}`}
                </span>
              </li>
            ))}
          </ul>
        </div>
      ))}
    </details>
  )
}

function UsedBy({ whole }: { readonly whole: Whole }) {
  const jobs = whole.usedBy ?? []
  if (jobs.length === 0) return null
  return (
    <div>
      <h3>Jobs that use it</h3>
      <ul>
        {jobs.map(({ jobId, title }) => (
          <li key={jobId}>
            <Link href={`/job/${jobId}/price`}>{title}</Link>
          </li>
        ))}
      </ul>
    </div>
  )
}
