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
  const load = heatLoad({ room: { name: 'Room', roomC, outsideC: job.survey.outsideC, ...read.data } })
  return load.ok ? load.value : null
}

const notYet = 'Put right what is marked, and the heat shows here.'

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
      title="Heat needed, by a rough guess"
      says="Good enough to begin with. It is marked as rough on the quote and cannot back a flow temperature."
      aside={
        <Button variant="default" onClick={measure}>
          Measure it element by element
        </Button>
      }
    >
      <FieldGrid>
        <DraftNumber path={`${path}.heat.volumeM3`} label="Volume (m³)" />
        <DraftNumber path={`${path}.heat.roughWPerM3`} label="Rough heat (W for each m³)" />
      </FieldGrid>
      <div className={styles.more}>
        <LoadLine load={load} says={load === null ? notYet : 'Rough: a guess by volume.'} />
      </div>
    </Card>
  )
}

/** An outside wall to be measured; the U-value is a starting point from memory. */
const newElement = { name: 'Outside wall', areaM2: 10, uWPerM2K: 1.6, boundary: { kind: 'outside' } }

function Measured({ path, room }: Heat) {
  const { change } = useOpenJob()
  const load = useLoad(room)
  const heat: SurveyedHeat = room.heat
  return (
    <Card title="Heat needed, element by element" aside={<OtherWays path={path} room={room} />}>
      <FieldGrid>
        <DraftNumber path={`${path}.heat.volumeM3`} label="Volume (m³)" />
        <DraftNumber path={`${path}.heat.floorAreaM2`} label="Floor area (m²)" />
        <DraftNumber path={`${path}.heat.airChangesPerHour`} label="Air changes an hour" />
        <DraftNumber
          path={`${path}.heat.thermalBridgeWPerM2K`}
          label="Thermal bridges (W/m²K)"
          hint="Added to each U-value"
        />
        <DraftNumber path={`${path}.heat.reheatWPerM2`} label="Reheat (W/m²)" hint="Empty for none" />
      </FieldGrid>
      <div className={styles.more}>
        <ElementTable path={`${path}.heat.elements`} elements={'elements' in heat ? heat.elements : []} />
        <Row>
          <Button
            variant="default"
            onClick={() => change({ kind: 'add', path: `${path}.heat.elements`, value: newElement })}
          >
            Add a wall, floor or ceiling
          </Button>
        </Row>
      </div>
      <div className={styles.more}>
        <LoadLine load={load} says={load === null ? notYet : 'Element by element.'} />
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
          Back to quick entry
        </Button>
      )}
      <Button variant="default" onClick={guess}>
        Guess it by volume instead
      </Button>
      <Confirm
        opened={asking}
        title="Back to quick entry?"
        yes="Make them anew"
        onYes={quick}
        onNo={() => setAsking(false)}
      >
        <p>
          With the next quick answer that you change, every wall, floor and ceiling is made anew. What you
          changed in the table by hand then goes.
        </p>
      </Confirm>
    </Row>
  )
}
