import styles from './flow-plot.module.css'
import { curve, pathOf, tensBetween, ticksOf, topOf, xAt, yAt } from './geometry.ts'
import type { Plot } from './geometry.ts'
import { outputAt } from './room-output.ts'
import type { RoomHeatNow } from './room-output.ts'
import { words } from './what-if.words.ts'

type FlowPlotProps = {
  readonly room: RoomHeatNow
  readonly fromC: number
  readonly toC: number
  readonly flowC: number
  readonly crossC: number | null
}

/** What the room's emitters give against the flow temperature, and what the room needs. The words beneath say the same. */
export function FlowPlot({ room, fromC, toC, flowC, crossC }: FlowPlotProps) {
  const wattsAt = (at: number) => outputAt(room, at).watts
  const most = Math.max(wattsAt(toC), room.loadW, 1)
  const plot: Plot = {
    width: 760,
    height: 290,
    left: 72,
    right: 150,
    top: 16,
    bottom: 56,
    fromC,
    toC,
    mostW: topOf(most),
  }
  const right = plot.width - plot.right
  return (
    <svg className={styles.plot} viewBox={`0 0 ${plot.width} ${plot.height}`} aria-hidden>
      <Scales plot={plot} most={most} />
      <line
        className={styles.load}
        data-rough={room.rough}
        x1={plot.left}
        x2={right}
        y1={yAt(plot, room.loadW)}
        y2={yAt(plot, room.loadW)}
      />
      <path className={styles.output} d={pathOf(plot, curve(fromC, toC, wattsAt))} />
      <Names plot={plot} room={room} outputW={wattsAt(toC)} />
      <Tried plot={plot} flowC={flowC} watts={wattsAt(flowC)} />
      {crossC === null ? null : <Crossing plot={plot} crossC={crossC} loadW={room.loadW} />}
    </svg>
  )
}

function Scales({ plot, most }: { readonly plot: Plot; readonly most: number }) {
  const right = plot.width - plot.right
  const low = plot.height - plot.bottom
  return (
    <g className={styles.scales}>
      {ticksOf(most).map((watts) => (
        <g key={watts}>
          <line x1={plot.left} x2={right} y1={yAt(plot, watts)} y2={yAt(plot, watts)} />
          <text x={plot.left - 8} y={yAt(plot, watts) + 6} textAnchor="end">
            {watts}
          </text>
        </g>
      ))}
      {tensBetween(plot.fromC, plot.toC).map((tenC) => (
        <g key={tenC}>
          <line x1={xAt(plot, tenC)} x2={xAt(plot, tenC)} y1={low} y2={low + 6} />
          <text x={xAt(plot, tenC)} y={low + 24} textAnchor="middle">
            {tenC}
          </text>
        </g>
      ))}
      <text x={(plot.left + right) / 2} y={plot.height - 6} textAnchor="middle">
        {words.axes.flow}
      </text>
      <text x={plot.left + 8} y={plot.top + 14}>
        {words.axes.heat}
      </text>
    </g>
  )
}

/** The lines are named at their right ends; names that would touch move apart. */
function Names({ plot, room, outputW }: { plot: Plot; room: RoomHeatNow; outputW: number }) {
  const x = plot.width - plot.right + 10
  const loadY = yAt(plot, room.loadW)
  const outputY = yAt(plot, outputW)
  const apart = Math.abs(loadY - outputY) < 22
  const up = outputY <= loadY ? -1 : 1
  return (
    <g className={styles.names}>
      <text x={x} y={outputY + 6 + (apart ? up * 11 : 0)}>
        {words.line.output}
      </text>
      <text x={x} y={loadY + 6 + (apart ? -up * 11 : 0)}>
        {room.rough ? words.line.rough : words.line.load}
      </text>
    </g>
  )
}

function Tried({ plot, flowC, watts }: { plot: Plot; flowC: number; watts: number }) {
  const x = xAt(plot, flowC)
  return (
    <g className={styles.tried}>
      <line x1={x} x2={x} y1={plot.top} y2={plot.height - plot.bottom} />
      <circle cx={x} cy={yAt(plot, watts)} r="7" />
    </g>
  )
}

function Crossing({ plot, crossC, loadW }: { plot: Plot; crossC: number; loadW: number }) {
  const x = xAt(plot, crossC)
  const y = yAt(plot, loadW)
  const near = plot.left + 70
  return (
    <g className={styles.crossing}>
      <path d={`M${x} ${y - 9}l9 9-9 9-9-9Z`} />
      <text x={Math.max(x - 14, near)} y={y - 14} textAnchor="end">
        {words.degrees(crossC.toFixed(1))}
      </text>
    </g>
  )
}
