import { useMantineColorScheme, useComputedColorScheme } from '@mantine/core'
import { Link, Route, Switch, useLocation, useParams, useRoute } from 'wouter'
import styles from './app.module.css'
import { JobFrame } from './frame/job-frame.tsx'
import { ErrorBoundary } from './parts/error-boundary.tsx'
import { Nothing } from './parts/notice.tsx'
import { FirmScreen } from './screens/firm/firm.tsx'
import { JobScreen } from './screens/job/job.tsx'
import { JobsScreen } from './screens/jobs/jobs.tsx'
import { PapersScreen } from './screens/papers/papers.tsx'
import { PriceScreen } from './screens/price/price.tsx'

/** The whole window: the bar on top and the screen that the address names. */
export function App() {
  const [path] = useLocation()
  const here = path.split('/').slice(0, 3).join('/')
  return (
    <>
      <a
        className={styles.skip}
        href="#main"
        onClick={(event) => {
          event.preventDefault()
          document.getElementById('main')?.focus()
        }}
      >
        To the page itself
      </a>
      <TopBar />
      <main id="main" tabIndex={-1} className={styles.page}>
        <ErrorBoundary key={here}>
          <Switch>
            <Route path="/" component={JobsScreen} />
            <Route path="/firm/:jobId?">
              <FirmScreen />
            </Route>
            <Route path="/job/:jobId/:tab?/:part?/:id?">
              <JobRoute />
            </Route>
            <Route>
              <Nothing title="There is no such page">
                <Link href="/">All jobs</Link>
              </Nothing>
            </Route>
          </Switch>
        </ErrorBoundary>
      </main>
    </>
  )
}

function JobRoute() {
  const { jobId, tab } = useParams<{ jobId: string; tab?: string }>()
  return (
    <JobFrame key={jobId} jobId={jobId} tab={tab ?? 'survey'}>
      <JobTab tab={tab} />
    </JobFrame>
  )
}

function JobTab({ tab }: { readonly tab: string | undefined }) {
  if (tab === 'price') return <PriceScreen />
  if (tab === 'papers') return <PapersScreen />
  return <JobScreen />
}

function TopBar() {
  const [atJobs] = useRoute('/')
  const [atFirm] = useRoute('/firm/:jobId?')
  return (
    <header className={styles.bar}>
      <div className={styles.barInner}>
        <Link href="/" className={styles.name}>
          <Emblem />
          Tailpiece
        </Link>
        <nav className={styles.links} aria-label="Tailpiece">
          <Link href="/" className={styles.link} {...(atJobs ? { 'aria-current': 'page' } : {})}>
            Jobs
          </Link>
          <Link href="/firm" className={styles.link} {...(atFirm ? { 'aria-current': 'page' } : {})}>
            Your firm
          </Link>
          <SchemeSwitch />
        </nav>
      </div>
    </header>
  )
}

function SchemeSwitch() {
  const { setColorScheme } = useMantineColorScheme()
  const other = useComputedColorScheme('light') === 'light' ? 'dark' : 'light'
  return (
    <button type="button" className={styles.link} onClick={() => setColorScheme(other)}>
      {other === 'dark' ? 'Dark screen' : 'Light screen'}
    </button>
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
