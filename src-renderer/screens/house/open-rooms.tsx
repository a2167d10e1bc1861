import { Button } from '@mantine/core'
import { useGoToField } from '../../draft/go-to-field.ts'
import { useOpenJob } from '../../draft/use-draft.ts'
import { Notice } from '../../parts/notice.tsx'
import type { FlowAnswer } from './flow-answer.ts'
import styles from './house.module.css'
import { words } from './house.words.ts'
import { openRooms } from './room-rows.ts'
import type { OpenRoom } from './room-rows.ts'

/** Rooms that back no flow temperature, each with the reason and the way to mend it. */
export function OpenRooms({ answer }: { readonly answer: FlowAnswer }) {
  const { job } = useOpenJob()
  const goTo = useGoToField(job)
  const open = openRooms(answer)
  if (open.length === 0) return null
  return (
    <Notice tone="warn" title={words.open}>
      <p>{words.openSays}</p>
      <ul className={styles.open} aria-label={words.open}>
        {open.map((room) => (
          <li key={room.roomId}>
            <span>{room.says}</span>
            <Button variant="default" onClick={() => goTo(fieldOf(room))}>
              {words.mend[room.kind](room.name)}
            </Button>
          </li>
        ))}
      </ul>
    </Notice>
  )
}

function fieldOf({ roomIndex, kind }: OpenRoom): string {
  return kind === 'rough' ? `rooms[${roomIndex}].heat.roughWPerM3` : `rooms[${roomIndex}].otherEmittersW`
}
