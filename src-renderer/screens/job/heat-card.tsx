import { Button } from '@mantine/core'
import { useState } from 'react'
import type { Room } from '../../../src-main/domain/job.ts'
import { surveyedHeat } from '../../../src-main/domain/room-heat.ts'
import type { SurveyedHeat } from '../../../src-main/domain/room-heat.ts'
import { heatLoad } from '../../../src-main/engine/heat/heat-load.ts'
import { DraftNumber } from '../../draft/fields.tsx'
import { useOpenJob } from '../../draft/use-draft.ts'
import { Card, FieldGrid, Row } from '../../parts/card.tsx'
import { Confirm } from '../../parts/confirm.tsx'
import { ElementTable } from './element-table.tsx'
import styles from './job.module.css'
import { LoadLine } from './quick/load-line.tsx'
import { QuickCard } from './quick/quick-card.tsx'
import { words } from './heat.words.ts'

type Heat = { readonly path: string; readonly room: Room }

/** The heat a room needs: by quick entry, element by element, or a rough guess by volume. */
export function HeatCard({ path, room }: Heat) {
  if (room.quick !== undefined && room.quick.byHand !== true && 'elements' in room.heat)
    return <QuickCard path={path} room={room} />
  return 'elements' in room.heat ? <Measured path={path} room={room} /> : <Rough path={path} room={room} />
}

/** What the heat comes to as it stands; nothing while a figure in it is no figure. */
function useLoad({ roomC, heat }: Room) {
  const { job } = useOpenJob()
  const read = surveyedHeat.safeParse(heat)
  if (!read.success || typeof roomC !== 'number' || typeof job.survey.outsideC !== 'number') return null
  const load = heatLoad({ room: { name: words.room, roomC, outsideC: job.survey.outsideC, ...read.data } })
  return load.ok ? load.value : null
}

function Rough({ path, room }: Heat) {
  const { change } = useOpenJob()
  const load = useLoad(room)
  const measure = () => {
    /** One air change an hour and 2.4 m to start from (practice, no published source). */
    const floorAreaM2 = Math.max(1, Math.round((room.heat.volumeM3 / 2.4) * 10) / 10)
    const measured = {
      volumeM3: room.heat.volumeM3,
      floorAreaM2,
      airChangesPerHour: 1,
      elements: [newElement],
    }
    change({ kind: 'set', path: `${path}.heat`, value: measured })
    change({ kind: 'settle' })
  }
  return (
    <Card
      title={words.rough.title}
      says={words.rough.says}
      aside={
        <Button variant="default" onClick={measure}>
          {words.rough.measure}
        </Button>
      }
    >
      <FieldGrid>
        <DraftNumber path={`${path}.heat.volumeM3`} label={words.volume} />
        <DraftNumber path={`${path}.heat.roughWPerM3`} label={words.rough.heat} />
      </FieldGrid>
      <div className={styles.more}>
        <LoadLine load={load} says={load === null ? words.notYet : words.rough.made} />
      </div>
    </Card>
  )
}

/** An outside wall to be measured; the U-value is a starting point from memory. */
const newElement = {
  name: words.measured.newElement,
  areaM2: 10,
  uWPerM2K: 1.6,
  boundary: { kind: 'outside' },
}

function Measured({ path, room }: Heat) {
  const { change } = useOpenJob()
  const load = useLoad(room)
  const heat: SurveyedHeat = room.heat
  return (
    <Card title={words.measured.title} aside={<OtherWays path={path} room={room} />}>
      <FieldGrid>
        <DraftNumber path={`${path}.heat.volumeM3`} label={words.volume} />
        <DraftNumber path={`${path}.heat.floorAreaM2`} label={words.measured.floorArea} />
        <DraftNumber path={`${path}.heat.airChangesPerHour`} label={words.measured.airChanges} />
        <DraftNumber
          path={`${path}.heat.thermalBridgeWPerM2K`}
          label={words.measured.bridges}
          hint={words.measured.bridgesHint}
        />
        <DraftNumber
          path={`${path}.heat.reheatWPerM2`}
          label={words.measured.reheat}
          hint={words.measured.reheatHint}
        />
      </FieldGrid>
      <div className={styles.more}>
        <ElementTable path={`${path}.heat.elements`} elements={'elements' in heat ? heat.elements : []} />
        <Row>
          <Button
            variant="default"
            onClick={() => change({ kind: 'add', path: `${path}.heat.elements`, value: newElement })}
          >
            {words.measured.add}
          </Button>
        </Row>
      </div>
      <div className={styles.more}>
        <LoadLine load={load} says={load === null ? words.notYet : words.measured.made} />
      </div>
    </Card>
  )
}

/** The ways back to fewer questions. Both leave what stands in the table behind, so the first asks. */
function OtherWays({ path, room }: Heat) {
  const { change } = useOpenJob()
  const [asking, setAsking] = useState(false)
  const guess = () => {
    change({ kind: 'set', path: `${path}.heat`, value: { volumeM3: room.heat.volumeM3, roughWPerM3: 40 } })
    change({ kind: 'settle' })
  }
  const quick = () => {
    setAsking(false)
    if (room.quick === undefined) return
    change({ kind: 'set', path: `${path}.quick`, value: { entry: room.quick.entry } })
    change({ kind: 'settle' })
  }
  return (
    <Row>
      {room.quick === undefined ? null : (
        <Button variant="default" onClick={() => setAsking(true)}>
          {words.other.quick}
        </Button>
      )}
      <Button variant="default" onClick={guess}>
        {words.other.guess}
      </Button>
      <Confirm
        opened={asking}
        title={words.other.title}
        yes={words.other.yes}
        onYes={quick}
        onNo={() => setAsking(false)}
      >
        <p>{words.other.says}</p>
      </Confirm>
    </Row>
  )
}
