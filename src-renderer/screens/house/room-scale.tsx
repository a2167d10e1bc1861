import { Card } from '../../parts/card.tsx'
import { plain } from '../../parts/figures-in-words.ts'
import { useHeatInWords } from '../../parts/heat-in-words.ts'
import { WhyButton, WhyTree, useWhy } from '../../parts/why.tsx'
import { roomWhy } from './flow-answer.ts'
import type { FlowAnswer } from './flow-answer.ts'
import styles from './house.module.css'
import { words } from './house.words.ts'
import { axisOf, roomRows, shareAt } from './room-rows.ts'
import type { Axis, RoomRow } from './room-rows.ts'

type Scale = { readonly answer: FlowAnswer; readonly swappedRooms: ReadonlySet<string> }

/** The rooms on one scale of flow temperatures, worst on top, before and after the swaps, with the numbers beside. */
export function RoomScale({ answer, swappedRooms }: Scale) {
  const rows = roomRows(answer, swappedRooms)
  const axis = axisOf(rows)
  const hasSwaps = swappedRooms.size > 0
  return (
    <Card title={words.rooms} says={words.roomsSays(plain(answer.spreadK))}>
      {rows.length === 0 ? (
        <p>{words.nobodyJudged}</p>
      ) : (
        <div className={styles.scroll}>
          <table className={styles.rooms}>
            <thead>
              <tr>
                <th scope="col">{words.columns.room}</th>
                <th scope="col" className={styles.number}>
                  {words.columns.needs}
                </th>
                <th scope="col" className={styles.scaleHead}>
                  <span className={styles.unseen}>{words.columns.scale}</span>
                  <Ticks axis={axis} />
                </th>
                <th scope="col" className={styles.number}>
                  <Key kind="before" /> {words.columns.before}
                </th>
                {hasSwaps ? (
                  <th scope="col" className={styles.number}>
                    <Key kind="after" /> {words.columns.after}
                  </th>
                ) : null}
                <th scope="col">
                  <span className={styles.unseen}>{words.columns.why}</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {rows.map((row) => (
                <RoomLine key={row.roomId} row={row} axis={axis} answer={answer} hasSwaps={hasSwaps} />
              ))}
            </tbody>
          </table>
        </div>
      )}
    </Card>
  )
}

type Line = {
  readonly row: RoomRow
  readonly axis: Axis
  readonly answer: FlowAnswer
  readonly hasSwaps: boolean
}

function RoomLine({ row, axis, answer, hasSwaps }: Line) {
  const why = useWhy(words.whyRoom(row.name))
  const heat = useHeatInWords()
  const columns = hasSwaps ? 6 : 5
  return (
    <>
      <tr data-decides={row.decides}>
        <th scope="row" className={styles.room}>
          {row.name}
          {row.decides ? <span className={styles.decides}>{words.decides}</span> : null}
        </th>
        <td className={styles.number}>{heat(row.loadW)}</td>
        <td>
          <Stands row={row} axis={axis} />
        </td>
        <td className={styles.number}>{row.before.says}</td>
        {hasSwaps ? (
          <td className={`${styles.number} ${styles.after}`}>
            {row.swapped ? row.after.says : words.noSwapHere}
          </td>
        ) : null}
        <td>
          <WhyButton {...why} />
        </td>
      </tr>
      {why.open ? (
        <tr>
          <td colSpan={columns} id={why.regionId}>
            <RoomWhys row={row} answer={answer} />
          </td>
        </tr>
      ) : null}
    </>
  )
}

function RoomWhys({ row, answer }: Pick<Line, 'row' | 'answer'>) {
  return (
    <div className={styles.whys}>
      {row.swapped ? (
        <>
          <h3>{words.key.after}</h3>
          <WhyTree why={roomWhy(answer, 'after', row.roomIndex)} />
        </>
      ) : null}
      <h3>{words.key.before}</h3>
      <WhyTree why={roomWhy(answer, 'before', row.roomIndex)} />
    </div>
  )
}

/** The scale itself is for the eye: every number on it stands in the columns beside it. */
function Stands({ row, axis }: Pick<Line, 'row' | 'axis'>) {
  const { before, after, swapped } = row
  const at = (flowC: number) => shareAt(axis, flowC) * 100
  const both = swapped && before.flowC !== null && after.flowC !== null
  return (
    <svg className={styles.stands} aria-hidden>
      <line className={styles.rail} x1="0%" x2="100%" y1="50%" y2="50%" />
      {axis.ticksC.map((tickC) => (
        <line
          key={tickC}
          className={styles.tick}
          x1={`${at(tickC)}%`}
          x2={`${at(tickC)}%`}
          y1="15%"
          y2="85%"
        />
      ))}
      {both ? (
        <line
          className={styles.move}
          x1={`${at(before.flowC)}%`}
          x2={`${at(after.flowC)}%`}
          y1="50%"
          y2="50%"
        />
      ) : null}
      {before.flowC === null ? null : (
        <svg x={`${at(before.flowC)}%`} y="50%" overflow="visible">
          <circle className={styles.before} r="7" />
        </svg>
      )}
      {!swapped || after.flowC === null ? null : (
        <svg x={`${at(after.flowC)}%`} y="50%" overflow="visible">
          <path className={styles.now} d="M0-9 9 0 0 9-9 0Z" />
        </svg>
      )}
    </svg>
  )
}

function Ticks({ axis }: { readonly axis: Axis }) {
  return (
    <span className={styles.ticks} aria-hidden>
      {axis.ticksC.map((tickC) => (
        <span key={tickC} style={{ left: `${shareAt(axis, tickC) * 100}%` }}>
          {words.degrees(String(tickC))}
        </span>
      ))}
    </span>
  )
}

/** The mark that stands for before or after, beside its word. */
function Key({ kind }: { readonly kind: 'before' | 'after' }) {
  return (
    <svg className={styles.key} viewBox="-10 -10 20 20" aria-hidden>
      {kind === 'before' ? (
        <circle className={styles.before} r="7" />
      ) : (
        <path className={styles.now} d="M0-9 9 0 0 9-9 0Z" />
      )}
    </svg>
  )
}
