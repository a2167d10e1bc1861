import { Button, NativeSelect } from '@mantine/core'
import { DraftCheck, DraftMoney, DraftText } from '../../../draft/fields.tsx'
import { useOpenJob } from '../../../draft/use-draft.ts'
import { Card, FieldGrid, Row, Wide } from '../../../parts/card.tsx'
import { freeOptionId } from '../job-changes.ts'
import { taxChoices } from '../own-words.ts'
import styles from '../price.module.css'

const taxOfOption = [
  { value: '', label: 'As for options' },
  ...taxChoices.map(({ value, label }) => ({ value: String(value), label })),
]

/** Work offered beside the job at a fixed price, outside the total until it is chosen. */
export function OptionsCard() {
  const { job, change } = useOpenJob()
  const options = job.options ?? []
  const add = () =>
    change({
      kind: 'alter',
      alter: (now) => ({
        ...now,
        options: [
          ...(now.options ?? []),
          { optionId: freeOptionId(now), name: 'Another piece of work', netPence: 0, chosen: false },
        ],
      }),
    })
  return (
    <Card
      title="Options"
      says="Offered beside the job at a fixed price. Each stands outside the total until it is chosen."
    >
      <ul className={styles.plainList} aria-label="Options">
        {options.map(({ optionId, name, taxKey }, at) => (
          <OneOption key={optionId} at={at} name={name} taxKey={taxKey} />
        ))}
      </ul>
      <Row>
        <Button variant="default" onClick={add}>
          Add an option
        </Button>
      </Row>
    </Card>
  )
}

type Offered = { readonly at: number; readonly name: string; readonly taxKey: string | undefined }

function OneOption({ at, name, taxKey }: Offered) {
  const { change } = useOpenJob()
  return (
    <li>
      <FieldGrid>
        <Wide>
          <DraftText path={`options[${at}].name`} label="What is offered" />
        </Wide>
        <DraftMoney path={`options[${at}].netPence`} label="Price before VAT (£)" />
        <NativeSelect
          label="VAT"
          value={taxKey ?? ''}
          data={taxOfOption}
          onChange={({ currentTarget: { value } }) =>
            change({
              kind: 'set',
              path: `options[${at}].taxKey`,
              value: value === '' ? undefined : value,
            })
          }
        />
      </FieldGrid>
      <div className={styles.optionRow}>
        <DraftCheck path={`options[${at}].chosen`} label="Chosen: in the total" />
        <Button
          variant="default"
          aria-label={`Remove the option: ${name}`}
          onClick={() => change({ kind: 'remove', path: `options[${at}]` })}
        >
          Remove
        </Button>
      </div>
    </li>
  )
}
