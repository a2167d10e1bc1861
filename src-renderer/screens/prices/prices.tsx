import { useDocumentTitle } from '@mantine/hooks'
import { Link, useParams } from 'wouter'
import { BringIn } from './bring-in/bring-in.tsx'
import { DoneList } from './done-list.tsx'
import { FindPrices } from './find-prices.tsx'
import styles from './prices.module.css'
import { words } from './prices.words.ts'
import { Suppliers } from './suppliers.tsx'

const parts = [
  { at: '', href: '/prices', name: words.findTab },
  { at: 'file', href: '/prices/file', name: words.bringInFile },
  { at: 'done', href: '/prices/done', name: words.whatWasChanged },
  { at: 'suppliers', href: '/prices/suppliers', name: words.suppliersTab },
] as const

/** What suppliers ask, and how it is kept up to date. */
export function PricesScreen() {
  const { part = '' } = useParams<{ part?: string }>()
  useDocumentTitle(words.documentTitle)
  return (
    <>
      <div className={styles.head}>
        <h1>{words.title}</h1>
        <p>{words.says}</p>
      </div>
      <nav className={styles.tabs} aria-label={words.tabs}>
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
