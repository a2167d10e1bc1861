import { Button, NativeSelect, TextInput } from '@mantine/core'
import { useDebouncedValue, useDocumentTitle } from '@mantine/hooks'
import { useState } from 'react'
import { Link, useLocation, useParams } from 'wouter'
import type { AnswerOf, InputOf } from '../../../src-main/contract/requests.ts'
import { sentencesOf } from '../../bridge/call.ts'
import { useAsk } from '../../bridge/use-ask.ts'
import { money } from '../../parts/figures-in-words.ts'
import { GenericMark, Nothing, ProblemList, Waiting } from '../../parts/notice.tsx'
import styles from './catalogue.module.css'
import { kindChoices } from './item-fields.ts'
import type { Kind } from './item-fields.ts'
import { ItemPage } from './item-page.tsx'
import { NewItem } from './new-item.tsx'

type Which = {
  readonly text: string
  readonly kind: Kind | ''
  readonly only: 'all' | 'favourites' | 'retired'
}
type Found = AnswerOf<'catalogue.search'>

/** How many items are shown before one asks for more. */
const firstShown = 60

/** Every emitter, fitting and fixing: to find, to add to, to change, to retire. */
export function CatalogueScreen() {
  const { itemId } = useParams<{ itemId?: string }>()
  const [which, setWhich] = useState<Which>({ text: '', kind: '', only: 'all' })
  const [most, setMost] = useState(firstShown)
  const [settled] = useDebouncedValue(which, 120)
  const found = useAsk('catalogue.search', searchOf(settled, most), { keepOld: true })
  useDocumentTitle('Catalogue: Tailpiece')
  const set = (changed: Partial<Which>) => {
    setMost(firstShown)
    setWhich({ ...which, ...changed })
  }
  return (
    <>
      <div className={styles.head}>
        <div>
          <h1>Catalogue</h1>
          <p>
            What you put up and what you put it up with. Figures marked generic are nobody’s in particular.
          </p>
        </div>
        <Button component={Link} href="/catalogue/new">
          Add an item
        </Button>
      </div>
      <Filters which={which} set={set} />
      <div className={styles.halves} data-open={itemId !== undefined}>
        <Listed asked={found} chosen={itemId} more={() => setMost(most + 200)} />
        {itemId === undefined ? null : <Opened itemId={itemId} />}
      </div>
    </>
  )
}

function Opened({ itemId }: { readonly itemId: string }) {
  const [, navigate] = useLocation()
  const close = () => navigate('/catalogue')
  if (itemId === 'new') return <NewItem close={close} />
  return <ItemPage key={itemId} itemId={itemId} close={close} />
}

function searchOf({ text, kind, only }: Which, most: number): InputOf<'catalogue.search'> {
  return {
    text: text.trim(),
    most,
    ...(kind === '' ? {} : { kind }),
    ...(only === 'favourites' ? { favourite: true } : {}),
    ...(only === 'retired' ? { retired: true } : {}),
  }
}

type FilterProps = { readonly which: Which; readonly set: (changed: Partial<Which>) => void }

function Filters({ which, set }: FilterProps) {
  return (
    <div className={styles.filters}>
      <TextInput
        type="search"
        label="Name, size, code or what you call it"
        value={which.text}
        onChange={({ currentTarget }) => set({ text: currentTarget.value })}
      />
      <NativeSelect
        label="Kind"
        value={which.kind}
        data={[{ value: '', label: 'Every kind' }, ...kindChoices]}
        onChange={({ currentTarget }) => set({ kind: currentTarget.value as Which['kind'] })}
      />
      <NativeSelect
        label="Show"
        value={which.only}
        data={[
          { value: 'all', label: 'All on the shelf' },
          { value: 'favourites', label: 'What we usually fit' },
          { value: 'retired', label: 'Retired' },
        ]}
        onChange={({ currentTarget }) => set({ only: currentTarget.value as Which['only'] })}
      />
    </div>
  )
}

type ListedProps = {
  readonly asked: ReturnType<typeof useAsk<'catalogue.search'>>
  readonly chosen: string | undefined
  readonly more: () => void
}

function Listed({ asked, chosen, more }: ListedProps) {
  if (asked.isPending) return <Waiting what="Looking through the catalogue" />
  if (asked.error !== null) {
    return <ProblemList title="The catalogue can't be shown" problems={sentencesOf(asked.error)} />
  }
  const { items, found } = asked.data
  if (found === 0) {
    return (
      <Nothing title="Nothing in the catalogue has these words">
        <p>Use fewer words, or add the item.</p>
        <Button component={Link} href="/catalogue/new">
          Add an item
        </Button>
      </Nothing>
    )
  }
  return (
    <div>
      <p role="status" className={styles.soft}>
        {found === 1 ? '1 item' : `${new Intl.NumberFormat('en-GB').format(found)} items`}
      </p>
      <ul className={styles.list} aria-label="Items">
        {items.map((one) => (
          <OneItem key={one.item.itemId} one={one} chosen={one.item.itemId === chosen} />
        ))}
      </ul>
      {items.length < found ? (
        <Button variant="default" mt="md" onClick={more}>
          Show more
        </Button>
      ) : null}
    </div>
  )
}

function OneItem({ one, chosen }: { readonly one: Found['items'][number]; readonly chosen: boolean }) {
  const { item, fromPence, favourite } = one
  return (
    <li className={styles.item} data-chosen={chosen}>
      <Link
        href={`/catalogue/${item.itemId}`}
        className={styles.name}
        {...(chosen ? { 'aria-current': 'true' } : {})}
      >
        {item.name}
      </Link>
      <span className={styles.marks}>
        {favourite === true ? <span className={styles.usual}>usual</span> : null}
        {item.generic ? <GenericMark /> : null}
        {item.retired === true ? <span>retired</span> : null}
      </span>
      <span className={styles.price}>{fromPence === null ? 'no price' : `from ${money(fromPence)}`}</span>
    </li>
  )
}
