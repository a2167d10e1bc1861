import { Link, Route, Switch, useLocation, useParams } from 'wouter'
import styles from './app.module.css'
import { CommandDialog } from './frame/commands/command-dialog.tsx'
import { OfferedContext, useOffers } from './frame/commands/offered.ts'
import { words } from './frame/frame.words.ts'
import { JobFrame } from './frame/job-frame.tsx'
import { useFrameKeys } from './frame/keys.ts'
import { LooksDialog } from './frame/looks-dialog.tsx'
import { useLooks } from './frame/looks.ts'
import { TopBar } from './frame/top-bar.tsx'
import { useTopDialog } from './frame/use-top-dialog.ts'
import { ErrorBoundary } from './parts/error-boundary.tsx'
import { Nothing } from './parts/notice.tsx'
import { AfterScreen } from './screens/after/after.tsx'
import { CatalogueScreen } from './screens/catalogue/catalogue.tsx'
import { FirmScreen } from './screens/firm/firm.tsx'
import { StartScreen } from './screens/firm/start.tsx'
import { HouseScreen } from './screens/house/house.tsx'
import { JobScreen } from './screens/job/job.tsx'
import { JobsScreen } from './screens/jobs/jobs.tsx'
import { PapersScreen } from './screens/papers/papers.tsx'
import { PriceScreen } from './screens/price/price.tsx'
import { PricesScreen } from './screens/prices/prices.tsx'
import { VanScreen } from './screens/van/van.tsx'

/** The whole window: the bar on top, the screen that the address names, and what opens from anywhere. */
export function App() {
  const offered = useOffers()
  const looks = useLooks()
  const { open, show, close } = useTopDialog()
  useFrameKeys(show)
  return (
    <OfferedContext value={offered}>
      <a
        className={styles.skip}
        href="#main"
        onClick={(event) => {
          event.preventDefault()
          document.getElementById('main')?.focus()
        }}
      >
        {words.skip}
      </a>
      <TopBar onFind={() => show('find')} onScreen={() => show('keys')} />
      <main id="main" tabIndex={-1} className={styles.page}>
        <Screens />
      </main>
      <CommandDialog
        opened={open === 'find'}
        onClose={close}
        offered={offered}
        showLooks={() => show('keys')}
      />
      <LooksDialog opened={open === 'keys'} onClose={close} looks={looks} />
    </OfferedContext>
  )
}

function Screens() {
  const [path] = useLocation()
  // The catalogue keeps what was sought while items are opened and closed beside the list.
  const depth = path.startsWith('/catalogue') ? 2 : 3
  const here = path === '/new-job' ? '/' : path.split('/').slice(0, depth).join('/')
  return (
    <ErrorBoundary key={here}>
      <Switch>
        <Route path="/">
          <JobsScreen naming={false} />
        </Route>
        <Route path="/new-job">
          <JobsScreen naming />
        </Route>
        <Route path="/start">
          <StartScreen />
        </Route>
        <Route path="/firm/:jobId?">
          <FirmScreen />
        </Route>
        <Route path="/catalogue/:itemId?">
          <CatalogueScreen />
        </Route>
        <Route path="/prices/:part?">
          <PricesScreen />
        </Route>
        <Route path="/van/:part?/:id?">
          <VanScreen />
        </Route>
        <Route path="/job/:jobId/:tab?/:part?/:id?">
          <JobRoute />
        </Route>
        <Route>
          <Nothing title={words.noPage}>
            <Link href="/">{words.allJobs}</Link>
          </Nothing>
        </Route>
      </Switch>
    </ErrorBoundary>
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
  if (tab === 'house') return <HouseScreen />
  if (tab === 'price') return <PriceScreen />
  if (tab === 'papers') return <PapersScreen />
  if (tab === 'after') return <AfterScreen />
  return <JobScreen />
}
