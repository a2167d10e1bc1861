import { Button, TextInput } from '@mantine/core'
import { useId, useState } from 'react'
import type { KeyboardEvent } from 'react'
import { typedNumber } from '../../draft/typed-number.ts'
import { useOpenJob } from '../../draft/use-draft.ts'
import { Card, Row, Stack } from '../card.tsx'
import { plain } from '../figures-in-words.ts'
import { ProblemList, Waiting } from '../notice.tsx'
import { Why } from '../why.tsx'
import styles from './flow-plot.module.css'
import { FlowPlot } from './flow-plot.tsx'
import { flowSpan, moved } from './geometry.ts'
import { outputAt, warmFrom } from './room-output.ts'
import type { RoomHeatNow } from './room-output.ts'
import { staysAt, withFlow } from './use-for-house.ts'
import { useRoomHeat } from './use-room-heat.ts'
import { crossingSays, readOut, staysSays, words } from './what-if.words.ts'

/** What a room's emitters give at other flow temperatures; the job stays as it is until the temperature is taken over. */
export function WhatIf({ roomId }: { readonly roomId: string }) {
  const { room, finding, problems } = useRoomHeat(roomId)
  return (
    <Card title={words.title} says={words.says}>
      {problems.length > 0 ? (
        <ProblemList title={words.notFound} problems={problems} />
      ) : room !== null ? (
        <Trying room={room} />
      ) : finding ? (
        <Waiting what={words.finding} />
      ) : (
        <p>{words.waiting}</p>
      )}
    </Card>
  )
}

type Span = { readonly fromC: number; readonly toC: number }

function Trying({ room }: { readonly room: RoomHeatNow }) {
  const [flowC, setFlowC] = useState(room.flowC)
  const span = flowSpan(room)
  const crossC = warmFrom(room, span.toC)
  const output = outputAt(room, flowC)
  return (
    <Stack>
      <FlowInputs flowC={flowC} span={span} set={setFlowC} />
      <FlowPlot room={room} {...span} flowC={flowC} crossC={crossC} />
      <div role="status" className={styles.read}>
        {readOut({ ...room, flowC, outputW: output.watts }).map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
        <p>{crossingSays(crossC, room.rough, span.toC)}</p>
      </div>
      <div className={styles.whys}>
        {output.why === null ? null : (
          <div>
            <span>{words.emitters}</span> <Why of={words.why} why={output.why} />
          </div>
        )}
        <div>
          <span>{words.needs}</span> <Why of={words.whyLoad} why={room.loadWhy} />
        </div>
      </div>
      <TakeOver room={room} flowC={flowC} />
    </Stack>
  )
}

type Inputs = { readonly flowC: number; readonly span: Span; readonly set: (flowC: number) => void }

/** How far a key moves the temperature; null for keys that mean something else. */
function byKey({ key, shiftKey }: Pick<KeyboardEvent, 'key' | 'shiftKey'>): number | null {
  if (key === 'PageUp') return 5
  if (key === 'PageDown') return -5
  const step = shiftKey ? 5 : 1
  if (key === 'ArrowUp' || key === 'ArrowRight') return step
  return key === 'ArrowDown' || key === 'ArrowLeft' ? -step : null
}

function FlowInputs({ flowC, span, set }: Inputs) {
  const id = useId()
  const [typed, setTyped] = useState<string | null>(null)
  const move = (event: KeyboardEvent, sideways: boolean) => {
    const byK = byKey(event)
    if (byK === null || (!sideways && event.key.endsWith('t'))) return
    event.preventDefault()
    setTyped(null)
    set(moved(flowC, byK, span))
  }
  const read = typed === null ? flowC : typedNumber(typed)
  const wrong = typeof read !== 'number' || read < span.fromC || read > span.toC
  return (
    <div className={styles.inputs}>
      <div className={styles.slider}>
        <label htmlFor={id}>{words.flow}</label>
        <input
          id={id}
          type="range"
          min={span.fromC}
          max={span.toC}
          step="0.1"
          value={flowC}
          aria-valuetext={words.degrees(plain(flowC))}
          onKeyDown={(event) => move(event, true)}
          onChange={({ currentTarget }) => {
            setTyped(null)
            set(Math.round(Number(currentTarget.value)))
          }}
        />
        <span className={styles.soft}>{words.keys}</span>
      </div>
      <TextInput
        className={styles.box ?? ''}
        label={words.box}
        inputMode="decimal"
        value={typed ?? String(flowC)}
        error={wrong ? words.noNumber(span.fromC, span.toC) : undefined}
        onKeyDown={(event) => move(event, false)}
        onBlur={() => setTyped(null)}
        onChange={({ currentTarget }) => {
          const next = typedNumber(currentTarget.value)
          setTyped(currentTarget.value)
          if (typeof next === 'number' && next >= span.fromC && next <= span.toC) set(next)
        }}
      />
    </div>
  )
}

function TakeOver({ room, flowC }: { readonly room: RoomHeatNow; readonly flowC: number }) {
  const { job, change } = useOpenJob()
  const same = flowC === room.flowC
  const stays = same ? null : staysSays(staysAt(job, flowC, room.spreadK))
  /** The button stays where the focus is, even when there is nothing more to take over. */
  const use = () => {
    if (!same) change({ kind: 'alter', alter: (now) => withFlow(now, flowC, room.spreadK) })
  }
  return (
    <div>
      <Row>
        <Button data-disabled={same || undefined} aria-disabled={same} onClick={use}>
          {words.use}
        </Button>
        {same ? <span className={styles.soft}>{words.same}</span> : null}
      </Row>
      {stays === null ? null : <p className={styles.soft}>{stays}</p>}
    </div>
  )
}
