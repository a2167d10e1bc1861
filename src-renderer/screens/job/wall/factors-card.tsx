import { Button } from '@mantine/core'
import type { Swap } from '../../../../src-main/domain/job.ts'
import { DraftNumber, DraftText } from '../../../draft/fields.tsx'
import { useOpenJob } from '../../../draft/use-draft.ts'
import { Card, FieldGrid, Row } from '../../../parts/card.tsx'
import { words } from './wall.words.ts'

/** What changes the new emitter's output, each with its reason: towels on a rail, a cover, a shelf close above. */
export function FactorsCard({ path, swap }: { readonly path: string; readonly swap: Swap }) {
  const { change } = useOpenJob()
  const factors = swap.factors ?? []
  const add = () =>
    change({ kind: 'add', path: `${path}.factors`, value: { name: words.factors.usual, value: 0.8 } })
  return (
    <Card title={words.factors.title} says={words.factors.says}>
      {factors.map((factor, at) => (
        <FieldGrid key={at}>
          <DraftText path={`${path}.factors[${at}].name`} label={words.factors.reason(at + 1)} />
          <DraftNumber path={`${path}.factors[${at}].value`} label={words.factors.share(at + 1)} />
          <Row>
            <Button
              variant="subtle"
              color="gray"
              aria-label={words.factors.removeNamed(factor.name)}
              onClick={() => change({ kind: 'remove', path: `${path}.factors[${at}]` })}
            >
              {words.factors.remove}
            </Button>
          </Row>
        </FieldGrid>
      ))}
      <Row>
        <Button variant="default" onClick={add}>
          {words.factors.add}
        </Button>
      </Row>
    </Card>
  )
}
