import { Button } from '@mantine/core'
import type { Swap } from '../../../src-main/domain/job.ts'
import { DraftNumber, DraftText } from '../../draft/fields.tsx'
import { useOpenJob } from '../../draft/use-draft.ts'
import { Card, FieldGrid } from '../../parts/card.tsx'
import { OldHoles } from './wall/old-holes.tsx'

type SwapAt = { readonly path: string; readonly swap: Swap }

/** What hangs there now, with the holes it leaves behind. */
export function OldEmitterCard({ path, swap }: SwapAt) {
  const { change } = useOpenJob()
  const existing = `${path}.existing`
  const add = () =>
    change({ kind: 'set', path: existing, value: { name: 'Old radiator', widthMm: 1000, heightMm: 600 } })
  if (swap.existing === undefined) {
    return (
      <Card title="What hangs there now" says="Nothing: the wall is empty.">
        <Button variant="default" onClick={add}>
          An old emitter comes off
        </Button>
      </Card>
    )
  }
  return (
    <Card
      title="What hangs there now"
      aside={
        <Button variant="subtle" color="gray" onClick={() => change({ kind: 'remove', path: existing })}>
          Nothing hangs there
        </Button>
      }
    >
      <FieldGrid>
        <DraftText path={`${existing}.name`} label="What it is" />
        <DraftNumber path={`${existing}.widthMm`} label="Width of the old one (mm)" />
        <DraftNumber path={`${existing}.heightMm`} label="Height of the old one (mm)" />
        <DraftNumber path={`${existing}.ratedW`} label="Rated output (W)" hint="Empty if not known" />
        <DraftNumber path={`${existing}.dryKg`} label="Mass (kg)" hint="Empty if not known" />
        <DraftNumber path={`${existing}.waterLitres`} label="Water (litres)" hint="Empty if not known" />
        <DraftNumber path={`${existing}.brackets`} label="Brackets that leave marks" />
        <DraftText path={`${existing}.note`} label="Note on the old one" optional />
      </FieldGrid>
      <OldHoles path={`${existing}.oldHoles`} existing={swap.existing} />
    </Card>
  )
}
