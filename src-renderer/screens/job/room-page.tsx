import { Button } from '@mantine/core'
import { useState } from 'react'
import { useLocation } from 'wouter'
import { DraftCheck, DraftChoice, DraftLines, DraftNumber, DraftText } from '../../draft/fields.tsx'
import { useOpenJob } from '../../draft/use-draft.ts'
import { Card, FieldGrid, Row, Stack, Wide } from '../../parts/card.tsx'
import { Confirm } from '../../parts/confirm.tsx'
import { SurveyFormButton } from '../../parts/survey-form-button.tsx'
import { floors, roomUses } from '../../parts/words.ts'
import { HeatCard } from './heat-card.tsx'
import { newWall, roomAgain } from './new-things.ts'
import { PhotoCard } from './photos/photo-card.tsx'
import { RoomSwaps } from './wall/room-swaps.tsx'
import { WallCard } from './wall-card.tsx'
import { words } from './job.words.ts'

/** One room: what it is, the heat it needs, and its walls. */
export function RoomPage({ at }: { readonly at: number }) {
  const { job, change } = useOpenJob()
  const room = job.rooms[at]
  if (room === undefined) return null
  const path = `rooms[${at}]`
  const addWall = () => {
    const last = room.walls.at(-1)
    const size = { widthMm: last?.widthMm ?? 3000, heightMm: last?.heightMm ?? 2400 }
    change({
      kind: 'add',
      path: `${path}.walls`,
      value: newWall(
        room.walls.map(({ wallId }) => wallId),
        size,
      ),
    })
  }
  return (
    <Stack>
      <RoomCard
        path={path}
        quick={room.quick !== undefined && room.quick.byHand !== true && 'elements' in room.heat}
      />
      <HeatCard path={path} room={room} />
      <RoomSwaps roomId={room.roomId} />
      {room.walls.map((wall, nth) => (
        <WallCard key={wall.wallId} path={`${path}.walls[${nth}]`} wall={wall} roomId={room.roomId} />
      ))}
      <Row>
        <Button variant="default" onClick={addWall}>
          {words.room.addWall}
        </Button>
      </Row>
      <PhotoCard path={`${path}.photos`} photos={room.photos ?? []} />
      <Row>
        <AgainRoom at={at} />
        <SurveyFormButton />
        <RemoveRoom at={at} />
      </Row>
    </Stack>
  )
}

function AgainRoom({ at }: { readonly at: number }) {
  const { job, change } = useOpenJob()
  const [, navigate] = useLocation()
  const room = job.rooms[at]
  if (room === undefined) return null
  const again = () => {
    const copy = roomAgain(
      room,
      job.rooms.map(({ roomId }) => roomId),
    )
    change({ kind: 'add', path: 'rooms', value: copy })
    navigate(`/job/${job.jobId}/survey/room/${copy.roomId}`)
  }
  return (
    <Button variant="default" onClick={again}>
      {words.room.again}
    </Button>
  )
}

/** With quick entry, use and temperature are asked there, because the heat is made anew from them. */
function RoomCard({ path, quick }: { readonly path: string; readonly quick: boolean }) {
  return (
    <Card title={words.room.title}>
      <FieldGrid>
        <DraftText path={`${path}.name`} label={words.room.name} />
        {quick ? null : <DraftChoice path={`${path}.use`} label={words.room.use} choices={roomUses} />}
        {quick ? null : <DraftNumber path={`${path}.roomC`} label={words.room.roomC} />}
        <DraftChoice path={`${path}.floor`} label={words.room.floor} choices={floors} />
        <DraftNumber path={`${path}.storey`} label={words.room.storey} />
        <DraftNumber path={`${path}.otherEmittersW`} label={words.room.others} hint={words.room.othersHint} />
        <Wide>
          <DraftCheck path={`${path}.holdsThermostat`} label={words.room.thermostat} optional />
        </Wide>
        <Wide>
          <DraftCheck path={`${path}.tightAccess`} label={words.room.tight} optional />
        </Wide>
        <Wide>
          <DraftLines path={`${path}.note`} label={words.room.note} />
        </Wide>
      </FieldGrid>
    </Card>
  )
}

function RemoveRoom({ at }: { readonly at: number }) {
  const { job, change } = useOpenJob()
  const [, navigate] = useLocation()
  const [asking, setAsking] = useState(false)
  const room = job.rooms[at]
  const remove = () => {
    setAsking(false)
    navigate(`/job/${job.jobId}/survey`)
    change({
      kind: 'alter',
      alter: (old) => ({
        ...old,
        rooms: old.rooms.filter((one) => one.roomId !== room?.roomId),
        swaps: old.swaps.filter((swap) => swap.roomId !== room?.roomId),
      }),
    })
  }
  return (
    <>
      <Button variant="subtle" color="gray" onClick={() => setAsking(true)}>
        {words.room.remove}
      </Button>
      <Confirm
        opened={asking}
        title={words.room.removeTitle}
        yes={words.room.removeYes}
        onYes={remove}
        onNo={() => setAsking(false)}
      >
        <p>{words.room.removeSays(room?.name ?? '')}</p>
      </Confirm>
    </>
  )
}
