import { Link, useLocation } from 'wouter'
import styles from '../app.module.css'
import { words } from './frame.words.ts'

const places = [
  { name: words.bar.jobs, href: '/', also: ['new-job'] },
  { name: words.bar.van, href: '/van', also: [] },
  { name: words.bar.catalogue, href: '/catalogue', also: [] },
  { name: words.bar.prices, href: '/prices', also: [] },
  { name: words.bar.firm, href: '/firm', also: ['start'] },
] as const

type Bar = { readonly onFind: () => void; readonly onScreen: () => void }

/** The bar on top: where one can go, the search over everything, and how the screen looks. */
export function TopBar({ onFind, onScreen }: Bar) {
  const [path] = useLocation()
  const here = path.split('/')[1] ?? ''
  return (
    <header className={styles.bar}>
      <div className={styles.barInner}>
        <Link href="/" className={styles.name}>
          <Emblem />
          {words.name}
        </Link>
        <nav className={styles.links} aria-label={words.name}>
          {places.map(({ name, href, also }) => {
            const current = href === `/${here}` || also.some((one) => one === here)
            return (
              <Link
                key={href}
                href={href}
                className={styles.link}
                {...(current ? { 'aria-current': 'page' } : {})}
              >
                {name}
              </Link>
            )
          })}
        </nav>
        <div className={styles.links}>
          <button type="button" className={`${styles.link} ${styles.find}`} onClick={onFind}>
            {words.find}
            <kbd className={styles.kbd} aria-hidden>
              {words.findKeys}
            </kbd>
          </button>
          <button type="button" className={styles.link} onClick={onScreen}>
            {words.screen}
          </button>
        </div>
      </div>
    </header>
  )
}

/** A tail with its nut, seen from the side. */
function Emblem() {
  return (
    <svg width="30" height="24" viewBox="0 0 30 24" aria-hidden>
      <path d="M2 7h9v10H2z" fill="none" stroke="#e3a674" strokeWidth="2" />
      <path d="M11 3h8v18h-8z" fill="#d2874e" />
      <path d="M14 3v18M17 3v18" stroke="#55290d" strokeWidth="1.2" />
      <path d="M19 8h9v8h-9z" fill="none" stroke="#e3a674" strokeWidth="2" />
    </svg>
  )
}
