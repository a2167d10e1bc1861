import { Button, NativeSelect } from '@mantine/core'
import { useState } from 'react'
import { useLocation } from 'wouter'
import type { Swap } from '../../../src-main/domain/job.ts'
import { DraftChoice, DraftLines } from '../../draft/fields.tsx'
import { useOpenJob, useProblemsAt } from '../../draft/use-draft.ts'
import { Card, FieldGrid, Row, Stack, Wide } from '../../parts/card.tsx'
import { Confirm } from '../../parts/confirm.tsx'
import { WhatIf } from '../../parts/flow-plot/what-if.tsx'
import { hungAt } from '../../parts/wall-drawing/place/board-paths.ts'
import { WallBoard } from '../../parts/wall-drawing/wall-board.tsx'
import { EmitterCard } from './emitter-card.tsx'
import { OldEmitterCard } from './old-emitter-card.tsx'
import { PipesCard } from './pipes-card.tsx'
import { FactorsCard } from './wall/factors-card.tsx'
import { words } from './job.words.ts'

/** One swap: where, what comes off, the pipes, what goes up, and how it looks on the wall. */
export function SwapPage({ at }: { readonly at: number }) {
  const { job } = useOpenJob()
  const swap = job.swaps[at]
  if (swap === undefined) return null
  const path = `swaps[${at}]`
  const hung = hungAt(job, at)
  return (
    <Stack>
      <EmitterCard path={path} swap={swap} />
      <Card title={words.swap.onWall}>
        {hung === null ? <p>{words.swap.noWall}</p> : <WallBoard key={swap.swapId} job={job} {...hung} />}
      </Card>
      <WhatIf roomId={swap.roomId} />
      <PipesCard path={path} swap={swap} />
      <OldEmitterCard path={path} swap={swap} />
      <FactorsCard path={path} swap={swap} />
      <WhereCard path={path} swap={swap} />
      <Row>
        <RemoveSwap at={at} />
      </Row>
    </Stack>
  )
}

function WhereCard({ path, swap }: { readonly path: string; readonly swap: Swap }) {
  const { job } = useOpenJob()
  const room = job.rooms.find((one) => one.roomId === swap.roomId)
  return (
    <Card title={words.swap.where}>
      <FieldGrid>
        <RoomChoice path={path} swap={swap} />
        <DraftChoice
          path={`${path}.wallId`}
          label={words.swap.wall}
          choices={(room?.walls ?? []).map(({ wallId, name }) => ({ value: wallId, label: name }))}
        />
        <Wide>
          <DraftLines path={`${path}.note`} label={words.swap.note} />
        </Wide>
      </FieldGrid>
    </Card>
  )
}

/** Another room has other walls: its first one is taken with it. */
function RoomChoice({ path, swap }: { readonly path: string; readonly swap: Swap }) {
  const { job, change } = useOpenJob()
  const error = useProblemsAt(`${path}.roomId`)
  const move = (roomId: string) => {
    const wallId = job.rooms.find((room) => room.roomId === roomId)?.walls[0]?.wallId ?? ''
    change({ kind: 'set', path, value: { ...swap, roomId, wallId } })
    change({ kind: 'settle' })
  }
  return (
    <NativeSelect
      id={`${path}.roomId`}
      label={words.swap.room}
      error={error}
      value={swap.roomId}
      data={job.rooms.map(({ roomId, name }) => ({ value: roomId, label: name }))}
      onChange={({ currentTarget }) => move(currentTarget.value)}
    />
  )
}

function RemoveSwap({ at }: { readonly at: number }) {
  const { job, change } = useOpenJob()
  const [, navigate] = useLocation()
  const [asking, setAsking] = useState(false)
  const remove = () => {
    setAsking(false)
    navigate(`/job/${job.jobId}/survey`)
    change({ kind: 'remove', path: `swaps[${at}]` })
  }
  return (
    <>
      <Button variant="subtle" color="gray" onClick={() => setAsking(true)}>
        {words.swap.remove}
      </Button>
      <Confirm
        opened={asking}
        title={words.swap.removeTitle}
        yes={words.swap.removeYes}
        onYes={remove}
        onNo={() => setAsking(false)}
      >
        <p>{words.swap.removeSays}</p>
      </Confirm>
    </>
  )
}
