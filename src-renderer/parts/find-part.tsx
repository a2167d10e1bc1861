import { Button, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { TakeOffKind } from '../../src-main/domain/take-off.ts'
import { useAsk } from '../bridge/use-ask.ts'
import { money } from './figures-in-words.ts'
import styles from './find-part.module.css'
import { words } from './words.ts'

export type PartFound = { readonly itemId: string; readonly name: string }

type Find = {
  readonly kind: TakeOffKind | undefined
  readonly label: string
  readonly choose: (found: PartFound) => void
}

/** Looks for an item of the right kind in the catalogue. */
export function FindPart({ kind, label, choose }: Find) {
  const [text, setText] = useState('')
  const found = useAsk(
    'catalogue.search',
    { text, most: 8, ...(kind === undefined ? {} : { kind }) },
    { keepOld: true },
  )
  const items = found.data?.items ?? []
  return (
    <div className={styles.find}>
      <TextInput
        type="search"
        label={label}
        value={text}
        onChange={({ currentTarget }) => setText(currentTarget.value)}
      />
      <ul className={styles.list} aria-label={words.find.found}>
        {items.map(({ item, fromPence }) => (
          <li key={item.itemId} className={styles.found}>
            <span>
              {words.find.priced(
                item.name,
                fromPence === null ? words.noPrice : words.fromPrice(money(fromPence)),
              )}
            </span>
            <Button
              variant="default"
              onClick={() => choose(item)}
              aria-label={words.find.takeNamed(item.name)}
            >
              {words.find.take}
            </Button>
          </li>
        ))}
      </ul>
      <p role="status">{found.data === undefined || items.length > 0 ? '' : words.find.none}</p>
    </div>
  )
}
