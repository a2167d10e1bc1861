import { useDocumentTitle } from '@mantine/hooks'
import { Link, useParams } from 'wouter'
import { PickPage } from './pick/pick-page.tsx'
import { PicksPart } from './picks/picks-part.tsx'
import { StockPart } from './stock/stock-part.tsx'
import styles from './van.module.css'
import { words } from './van.words.ts'

const parts = [
  { at: '', href: '/van', name: words.parts.picks },
  { at: 'stock', href: '/van/stock', name: words.parts.stock },
] as const

/** The van: pick lists for accepted quotes, and what is in it. */
export function VanScreen() {
  const { part = '', id } = useParams<{ part?: string; id?: string }>()
  useDocumentTitle(`${words.title}: Tailpiece`)
  if (part === 'pick' || part === 'orders') return <PickPage pickingNo={Number(id)} part={part} />
  return (
    <>
      <div className={styles.head}>
        <h1>{words.title}</h1>
        <p>{words.says}</p>
      </div>
      <nav className={styles.tabs} aria-label={words.title}>
        {parts.map(({ at, href, name }) => (
          <Link
            key={at}
            href={href}
            className={styles.tab}
            {...(at === part ? { 'aria-current': 'page' } : {})}
          >
            {name}
          </Link>
        ))}
      </nav>
      {part === 'stock' ? <StockPart itemId={id} /> : <PicksPart />}
    </>
  )
}
