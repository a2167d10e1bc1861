import type { ReactNode } from 'react'
import { Link, useLocation } from 'wouter'
import { fieldOf, useOpenJob } from '../../draft/use-draft.ts'
import styles from './job.module.css'
import { words } from './job.words.ts'

/** The way between the pages of the survey. */
export function SurveySide({ survey }: { readonly survey: string }) {
  const { job } = useOpenJob()
  const roomName = (roomId: string) => job.rooms.find((room) => room.roomId === roomId)?.name
  return (
    <nav className={styles.side} aria-label={words.side.label}>
      <ul>
        <Place href={survey} fields={/^(title|reference|quotedOn|customer|site|options)/}>
          {words.side.customer}
        </Place>
        <Place href={`${survey}/system`} fields={/^survey/}>
          {words.side.system}
        </Place>
      </ul>
      <h2>{words.side.rooms}</h2>
      <ul>
        {job.rooms.map((room, at) => (
          <Place key={room.roomId} href={`${survey}/room/${room.roomId}`} fields={fieldsUnder('rooms', at)}>
            {room.name === '' ? words.side.unnamedRoom : room.name}
          </Place>
        ))}
        <Place href={`${survey}/add-room`} adds>
          {words.side.addRoom}
        </Place>
      </ul>
      <h2>{words.side.swaps}</h2>
      <ul>
        {job.swaps.map((swap, at) => (
          <Place key={swap.swapId} href={`${survey}/swap/${swap.swapId}`} fields={fieldsUnder('swaps', at)}>
            {roomName(swap.roomId) ?? words.side.noRoom}
            <span className={styles.placeUnder}>{swap.existing?.name ?? words.side.newEmitter}</span>
          </Place>
        ))}
        <Place href={`${survey}/add-swap`} adds>
          {words.side.addSwap}
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
        {wrong ? <span className={styles.wrong}> {words.side.putRight}</span> : null}
      </Link>
    </li>
  )
}
