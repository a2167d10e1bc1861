import { Route, Switch } from 'wouter'
import { useOpenJob } from '../../draft/use-draft.ts'
import { Nothing } from '../../parts/notice.tsx'
import { AddRoom } from './add-room.tsx'
import { AddSwap } from './add-swap.tsx'
import { CustomerPage } from './customer-page.tsx'
import styles from './job.module.css'
import { RoomPage } from './room-page.tsx'
import { SurveySide } from './survey-side.tsx'
import { SwapPage } from './swap-page.tsx'
import { SystemPage } from './system-page.tsx'
import { words } from './job.words.ts'

/** The survey: customer, system, rooms and swaps, one page each, with the way between them on the left. */
export function JobScreen() {
  const { job } = useOpenJob()
  const survey = `/job/${job.jobId}/survey`
  return (
    <div className={styles.layout}>
      <SurveySide survey={survey} />
      <div>
        <Switch>
          <Route path={`${survey}/system`}>
            <SystemPage />
          </Route>
          <Route path={`${survey}/add-room`}>
            <AddRoom survey={survey} />
          </Route>
          <Route path={`${survey}/add-swap/:id?`}>
            {({ id }) => <AddSwap key={id} survey={survey} roomId={id} />}
          </Route>
          <Route path={`${survey}/room/:id`}>{({ id }) => <RoomAt roomId={id} />}</Route>
          <Route path={`${survey}/swap/:id`}>{({ id }) => <SwapAt swapId={id} />}</Route>
          <Route>
            <CustomerPage />
          </Route>
        </Switch>
      </div>
    </div>
  )
}

function RoomAt({ roomId }: { readonly roomId: string }) {
  const { job } = useOpenJob()
  const at = job.rooms.findIndex((room) => room.roomId === roomId)
  return at < 0 ? <Gone what="room" /> : <RoomPage key={roomId} at={at} />
}

function SwapAt({ swapId }: { readonly swapId: string }) {
  const { job } = useOpenJob()
  const at = job.swaps.findIndex((swap) => swap.swapId === swapId)
  return at < 0 ? <Gone what="swap" /> : <SwapPage key={swapId} at={at} />
}

function Gone({ what }: { readonly what: 'room' | 'swap' }) {
  return (
    <Nothing title={words.gone[what]}>
      <p>{words.gone.says}</p>
    </Nothing>
  )
}
