import { Button } from '@mantine/core'
import type { SurveyedHeat } from '../../../src-main/domain/room-heat.ts'
import { DraftNumber } from '../../draft/fields.tsx'
import { useOpenJob } from '../../draft/use-draft.ts'
import { Card, FieldGrid, Row } from '../../parts/card.tsx'
import { ElementTable } from './element-table.tsx'
import styles from './job.module.css'

type Heat = { readonly path: string; readonly heat: SurveyedHeat }

/** The heat a room needs: a rough guess by volume, or element by element. */
export function HeatCard({ path, heat }: Heat) {
  return 'elements' in heat ? <Measured path={path} heat={heat} /> : <Rough path={path} heat={heat} />
}

function Rough({ path, heat }: Heat) {
  const { change } = useOpenJob()
  const measure = () => {
    /** One air change an hour to start from (practice, no published source). */
    const measured = {
      volumeM3: heat.volumeM3,
      floorAreaM2: 10,
      airChangesPerHour: 1,
      elements: [newElement],
    }
    change({ kind: 'set', path, value: measured })
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
        <DraftNumber path={`${path}.volumeM3`} label="Volume (m³)" />
        <DraftNumber path={`${path}.roughWPerM3`} label="Rough heat (W for each m³)" />
      </FieldGrid>
    </Card>
  )
}

/** An outside wall to be measured; the U-value is a starting point from memory. */
const newElement = { name: 'Outside wall', areaM2: 10, uWPerM2K: 1.6, boundary: { kind: 'outside' } }

function Measured({ path, heat }: Heat) {
  const { change } = useOpenJob()
  const guess = () => {
    change({ kind: 'set', path, value: { volumeM3: heat.volumeM3, roughWPerM3: 40 } })
    change({ kind: 'settle' })
  }
  return (
    <Card
      title="Heat needed, element by element"
      aside={
        <Button variant="default" onClick={guess}>
          Guess it by volume instead
        </Button>
      }
    >
      <FieldGrid>
        <DraftNumber path={`${path}.volumeM3`} label="Volume (m³)" />
        <DraftNumber path={`${path}.floorAreaM2`} label="Floor area (m²)" />
        <DraftNumber path={`${path}.airChangesPerHour`} label="Air changes an hour" />
        <DraftNumber
          path={`${path}.thermalBridgeWPerM2K`}
          label="Thermal bridges (W/m²K)"
          hint="Added to each U-value"
        />
        <DraftNumber path={`${path}.reheatWPerM2`} label="Reheat (W/m²)" hint="Empty for none" />
      </FieldGrid>
      <div className={styles.more}>
        <ElementTable path={`${path}.elements`} elements={'elements' in heat ? heat.elements : []} />
        <Row>
          <Button
            variant="default"
            onClick={() => change({ kind: 'add', path: `${path}.elements`, value: newElement })}
          >
            Add a wall, floor or ceiling
          </Button>
        </Row>
      </div>
    </Card>
  )
}
