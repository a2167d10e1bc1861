import { Button } from '@mantine/core'
import type { Swap } from '../../../src-main/domain/job.ts'
import { DraftNumber, DraftText } from '../../draft/fields.tsx'
import { useOpenJob } from '../../draft/use-draft.ts'
import { Card, FieldGrid } from '../../parts/card.tsx'
import { OldHoles } from './wall/old-holes.tsx'
import { words } from './job.words.ts'

type SwapAt = { readonly path: string; readonly swap: Swap }

/** What hangs there now, with the holes it leaves behind. */
export function OldEmitterCard({ path, swap }: SwapAt) {
  const { change } = useOpenJob()
  const existing = `${path}.existing`
  const add = () =>
    change({ kind: 'set', path: existing, value: { name: words.old.fresh, widthMm: 1000, heightMm: 600 } })
  if (swap.existing === undefined) {
    return (
      <Card title={words.old.title} says={words.old.nothing}>
        <Button variant="default" onClick={add}>
          {words.old.comesOff}
        </Button>
      </Card>
    )
  }
  return (
    <Card
      title={words.old.title}
      aside={
        <Button variant="subtle" color="gray" onClick={() => change({ kind: 'remove', path: existing })}>
          {words.old.nothingHangs}
        </Button>
      }
    >
      <FieldGrid>
        <DraftText path={`${existing}.name`} label={words.old.what} />
        <DraftNumber path={`${existing}.widthMm`} label={words.old.width} />
        <DraftNumber path={`${existing}.heightMm`} label={words.old.height} />
        <DraftNumber path={`${existing}.ratedW`} label={words.old.rated} hint={words.old.notKnown} />
        <DraftNumber path={`${existing}.dryKg`} label={words.old.mass} hint={words.old.notKnown} />
        <DraftNumber path={`${existing}.waterLitres`} label={words.old.water} hint={words.old.notKnown} />
        <DraftNumber path={`${existing}.brackets`} label={words.old.brackets} />
        <DraftText path={`${existing}.note`} label={words.old.note} optional />
      </FieldGrid>
      <OldHoles path={`${existing}.oldHoles`} existing={swap.existing} />
    </Card>
  )
}
