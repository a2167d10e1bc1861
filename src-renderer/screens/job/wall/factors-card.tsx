import { Button } from '@mantine/core'
import type { Swap } from '../../../../src-main/domain/job.ts'
import { DraftNumber, DraftText } from '../../../draft/fields.tsx'
import { useOpenJob } from '../../../draft/use-draft.ts'
import { Card, FieldGrid, Row } from '../../../parts/card.tsx'

/** What changes the new emitter's output, each with its reason: towels on a rail, a cover, a shelf close above. */
export function FactorsCard({ path, swap }: { readonly path: string; readonly swap: Swap }) {
  const { change } = useOpenJob()
  const factors = swap.factors ?? []
  const add = () =>
    change({ kind: 'add', path: `${path}.factors`, value: { name: 'Towels on the rail', value: 0.8 } })
  return (
    <Card
      title="What changes its output"
      says="Towels, a cover, a shelf: each as a share of the rated output. 0.8 gives four fifths."
    >
      {factors.map((factor, at) => (
        <FieldGrid key={at}>
          <DraftText path={`${path}.factors[${at}].name`} label={`Reason ${at + 1}`} />
          <DraftNumber path={`${path}.factors[${at}].value`} label={`Share left with reason ${at + 1}`} />
          <Row>
            <Button
              variant="subtle"
              color="gray"
              aria-label={`Remove ${factor.name}`}
              onClick={() => change({ kind: 'remove', path: `${path}.factors[${at}]` })}
            >
              Remove
            </Button>
          </Row>
        </FieldGrid>
      ))}
      <Row>
        <Button variant="default" onClick={add}>
          Add a reason
        </Button>
      </Row>
    </Card>
  )
}
