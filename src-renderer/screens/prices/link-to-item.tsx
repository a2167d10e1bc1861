import { Button, TextInput } from '@mantine/core'
import { useState } from 'react'
import { useAsk } from '../../bridge/use-ask.ts'
import { Row, Stack } from '../../parts/card.tsx'
import { MakeItem } from './make-item.tsx'
import styles from './prices.module.css'
import { words } from './prices.words.ts'
import type { PriceRow } from './grid/use-price-rows.ts'

type Link = {
  readonly row: PriceRow
  readonly relink: (itemId: string | null) => void
  readonly busy: boolean
}

/** Which item of the catalogue a supplier's row is: shown, changed or taken off. */
export function LinkToItem({ row, relink, busy }: Link) {
  const [choosing, setChoosing] = useState(false)
  const [making, setMaking] = useState(false)
  if (row.itemId !== undefined && !choosing) {
    return (
      <Stack>
        <p>
          {words.link.itIs} <strong>{row.itemName ?? row.itemId}</strong>.
        </p>
        <Row>
          <Button variant="default" onClick={() => setChoosing(true)}>
            {words.link.another}
          </Button>
          <Button variant="default" loading={busy} onClick={() => relink(null)}>
            {words.link.noItem}
          </Button>
        </Row>
      </Stack>
    )
  }
  if (row.itemId === undefined && making) return <MakeItem row={row} close={() => setMaking(false)} />
  return (
    <>
      <ChooseItem
        start={row.name}
        busy={busy}
        choose={(itemId) => {
          setChoosing(false)
          relink(itemId)
        }}
      />
      {row.itemId === undefined ? (
        <Row>
          <Button variant="default" onClick={() => setMaking(true)}>
            {words.link.makeNew}
          </Button>
        </Row>
      ) : (
        <Row>
          <Button variant="default" onClick={() => setChoosing(false)}>
            {words.link.leave}
          </Button>
        </Row>
      )}
    </>
  )
}

type Choose = { readonly start: string; readonly busy: boolean; readonly choose: (itemId: string) => void }

function ChooseItem({ start, busy, choose }: Choose) {
  const [text, setText] = useState(start)
  const found = useAsk('catalogue.search', { text, most: 8 }, { keepOld: true })
  const items = found.data?.items ?? []
  return (
    <div>
      <TextInput
        type="search"
        label={words.link.which}
        value={text}
        onChange={({ currentTarget }) => setText(currentTarget.value)}
      />
      <ul className={styles.choices} aria-label={words.link.items}>
        {items.map(({ item }) => (
          <li key={item.itemId}>
            <span>{item.name}</span>
            <Button
              variant="default"
              loading={busy}
              onClick={() => choose(item.itemId)}
              aria-label={words.link.itIsNamed(item.name)}
            >
              {words.link.itIsThis}
            </Button>
          </li>
        ))}
      </ul>
      {found.data !== undefined && items.length === 0 ? <p>{words.link.none}</p> : null}
    </div>
  )
}
