import type { ReactNode } from 'react'
import { Link, useLocation } from 'wouter'
import { fieldOf, useOpenJob } from '../../draft/use-draft.ts'
import styles from './job.module.css'

/** The way between the pages of the survey. */
export function SurveySide({ survey }: { readonly survey: string }) {
  const { job } = useOpenJob()
  const roomName = (roomId: string) => job.rooms.find((room) => room.roomId === roomId)?.name
  return (
    <nav className={styles.side} aria-label="The survey">
      <ul>
        <Place href={survey} fields={/^(title|reference|quotedOn|customer|site|options)/}>
          Customer and site
        </Place>
        <Place href={`${survey}/system`} fields={/^survey/}>
          The system
        </Place>
      </ul>
      <h2>Rooms</h2>
      <ul>
        {job.rooms.map((room, at) => (
          <Place key={room.roomId} href={`${survey}/room/${room.roomId}`} fields={fieldsUnder('rooms', at)}>
            {room.name === '' ? 'A room without a name' : room.name}
          </Place>
        ))}
        <Place href={`${survey}/add-room`} adds>
          Add a room
        </Place>
      </ul>
      <h2>Swaps</h2>
      <ul>
        {job.swaps.map((swap, at) => (
          <Place key={swap.swapId} href={`${survey}/swap/${swap.swapId}`} fields={fieldsUnder('swaps', at)}>
            {roomName(swap.roomId) ?? 'Room not chosen'}
            <span className={styles.placeUnder}>{swap.existing?.name ?? 'A new emitter'}</span>
          </Place>
        ))}
        <Place href={`${survey}/add-swap`} adds>
          Add a swap
        </Place>
      </ul>
    </nav>
  )
}

function fieldsUnder(list: string, at: number): RegExp {
  return new RegExp(`^${list}\\[${at}\\]`)
}

type PlaceProps = {
  readonly href: string
  /** Which fields of the job stand there, to mark the page when one is wrong. */
  readonly fields?: RegExp
  readonly adds?: boolean
  readonly children: ReactNode
}

function Place({ href, fields, adds = false, children }: PlaceProps) {
  const { problems } = useOpenJob()
  const [here] = useLocation()
  const wrong = fields !== undefined && problems.some(({ path }) => fields.test(fieldOf(path)))
  const there =
    here === href ||
    (adds && here.startsWith(`${href}/`)) ||
    (href.endsWith('/survey') && here === href.replace('/survey', ''))
  return (
    <li>
      <Link
        href={href}
        className={`${styles.place} ${adds ? styles.add : ''}`}
        {...(there ? { 'aria-current': 'page' } : {})}
      >
        {adds ? <span aria-hidden>+ </span> : null}
        {children}
        {wrong ? <span className={styles.wrong}> (put right)</span> : null}
      </Link>
    </li>
  )
}
