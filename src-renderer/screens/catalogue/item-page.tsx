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
import { words } from './catalogue.words.ts'
import { useItem } from './use-item.ts'

type Whole = AnswerOf<'catalogue.item'>

/** One item: its figures, who sells it for what, and what can be done with it. */
export function ItemPage({ itemId, close }: { readonly itemId: string; readonly close: () => void }) {
  const asked = useAsk('catalogue.item', { itemId })
  const [editing, setEditing] = useState(false)
  const { save, retire, favourite } = useItem()
  if (asked.isPending) return <Waiting what={words.item.waiting} />
  if (asked.error !== null)
    return <ProblemList title={words.item.failed} problems={sentencesOf(asked.error)} />
  const whole = asked.data
  const { item } = whole
  const retired = item.retired === true
  const problems = [...sentencesOf(retire.error), ...sentencesOf(favourite.error)]
  return (
    <Card
      title={item.name}
      says={item.generic ? <GenericMark /> : whole.own === true ? words.item.own : undefined}
      aside={
        <Button variant="default" onClick={close}>
          {words.close}
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
            {whole.favourite === true ? words.item.isFavourite : words.item.makeFavourite}
          </Button>
          <Button variant="default" onClick={() => setEditing(!editing)} aria-expanded={editing}>
            {words.item.change}
          </Button>
          <Button variant="default" onClick={() => retire.mutate({ itemId, retired: !retired })}>
            {retired ? words.item.putBack : words.item.retire}
          </Button>
        </Row>
        {problems.length === 0 ? null : <ProblemList title={words.item.didNotWork} problems={problems} />}
        {editing ? (
          <ItemForm
            start={item}
            problems={problemsOf(save.error)}
            busy={save.isPending}
            onSave={(changed) => save.mutate({ item: changed }, { onSuccess: () => setEditing(false) })}
            button={words.item.save}
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
        <Button variant="default" onClick={() => setName(words.copy.nameOf(item.name))}>
          {words.copy.begin}
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
        label={words.copy.name}
        value={name}
        onChange={({ currentTarget }) => setName(currentTarget.value)}
      />
      {copy.error === null ? null : (
        <ProblemList title={words.copy.failed} problems={sentencesOf(copy.error)} />
      )}
      <Row>
        <Button mt="sm" loading={copy.isPending} onClick={make}>
          {words.copy.make}
        </Button>
        <Button mt="sm" variant="default" onClick={() => setName(null)}>
          {words.cancel}
        </Button>
      </Row>
    </div>
  )
}

function Prices({ whole }: { readonly whole: Whole }) {
  if (whole.prices.length === 0) {
    return (
      <p>
        {words.prices.none} <Link href="/prices">{words.prices.find}</Link> {words.prices.noneEnds}
      </p>
    )
  }
  return (
    <div>
      <h3>{words.prices.title}</h3>
      <ul className={styles.prices} aria-label={words.prices.name}>
        {whole.prices.map(({ supplier, price, staleSays }) => (
          <li key={`${supplier.supplierId}/${price.code}`}>
            <span>
              {words.prices.codeOf(supplier.name, price.code)}
              {staleSays === undefined ? null : <span className={styles.stale}>{staleSays}</span>}
            </span>
            <span className={styles.price}>
              {words.prices.forPack(money(price.packPence), price.packHolds)}
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
      <summary>{words.prices.earlier}</summary>
      {longer.map(({ supplierId, supplierName, code, prices }) => (
        <div key={`${supplierId}/${code}`}>
          <h4>{words.prices.codeOf(supplierName, code)}</h4>
          <ul className={styles.prices}>
            {prices.map((price) => (
              <li key={price.validFrom}>
                <span>{words.prices.fromDay(dayInWords(price.validFrom))}</span>
                <span className={styles.price}>
                  {words.prices.forPack(money(price.packPence), price.packHolds)}
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
      <h3>{words.item.jobs}</h3>
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
