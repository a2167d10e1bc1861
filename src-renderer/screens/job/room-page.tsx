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
          Add a wall
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
      Another room like this
    </Button>
  )
}

/** With quick entry, use and temperature are asked there, because the heat is made anew from them. */
function RoomCard({ path, quick }: { readonly path: string; readonly quick: boolean }) {
  return (
    <Card title="The room">
      <FieldGrid>
        <DraftText path={`${path}.name`} label="Name of the room" />
        {quick ? null : <DraftChoice path={`${path}.use`} label="Used as" choices={roomUses} />}
        {quick ? null : <DraftNumber path={`${path}.roomC`} label="Design temperature (°C)" />}
        <DraftChoice path={`${path}.floor`} label="Floor covering" choices={floors} />
        <DraftNumber path={`${path}.storey`} label="Storey (0 is the ground floor)" />
        <DraftNumber
          path={`${path}.otherEmittersW`}
          label="Other emitters give (W)"
          hint="Those that stay; or empty"
        />
        <Wide>
          <DraftCheck
            path={`${path}.holdsThermostat`}
            label="Holds the room thermostat, or the bypass"
            optional
          />
        </Wide>
        <Wide>
          <DraftCheck
            path={`${path}.tightAccess`}
            label="No room to stand close to the wall and work"
            optional
          />
        </Wide>
        <Wide>
          <DraftLines path={`${path}.note`} label="Note" />
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
        Remove this room
      </Button>
      <Confirm
        opened={asking}
        title="Remove this room?"
        yes="Remove the room"
        onYes={remove}
        onNo={() => setAsking(false)}
      >
        <p>{room?.name} goes with its walls and its swaps. Undo brings it back.</p>
      </Confirm>
    </>
  )
}
