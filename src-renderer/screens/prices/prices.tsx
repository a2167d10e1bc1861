import { useDocumentTitle } from '@mantine/hooks'
import { Link, useParams } from 'wouter'
import { BringIn } from './bring-in/bring-in.tsx'
import { DoneList } from './done-list.tsx'
import { FindPrices } from './find-prices.tsx'
import styles from './prices.module.css'
import { Suppliers } from './suppliers.tsx'

const parts = [
  { at: '', href: '/prices', name: 'Find a price' },
  { at: 'file', href: '/prices/file', name: 'Bring in a price file' },
  { at: 'done', href: '/prices/done', name: 'What was changed' },
  { at: 'suppliers', href: '/prices/suppliers', name: 'Suppliers' },
] as const

/** What suppliers ask, and how it is kept up to date. */
export function PricesScreen() {
  const { part = '' } = useParams<{ part?: string }>()
  useDocumentTitle('Prices: Tailpiece')
  return (
    <>
      <div className={styles.head}>
        <h1>Prices</h1>
        <p>What your suppliers ask, kept up to date from the files that they send.</p>
      </div>
      <nav className={styles.tabs} aria-label="Prices">
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
      <Part part={part} />
    </>
  )
}

function Part({ part }: { readonly part: string }) {
  if (part === 'file') return <BringIn />
  if (part === 'done') return <DoneList />
  if (part === 'suppliers') return <Suppliers />
  return <FindPrices />
}
