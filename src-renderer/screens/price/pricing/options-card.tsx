import { Button, NativeSelect } from '@mantine/core'
import { DraftCheck, DraftMoney, DraftText } from '../../../draft/fields.tsx'
import { useOpenJob } from '../../../draft/use-draft.ts'
import { Card, FieldGrid, Row, Wide } from '../../../parts/card.tsx'
import { freeOptionId } from '../job-changes.ts'
import { taxChoices } from '../tax.words.ts'
import styles from '../price.module.css'
import { words as all } from './pricing.words.ts'

const words = all.options

const taxOfOption = [
  { value: '', label: words.taxPlain },
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
          { optionId: freeOptionId(now), name: words.first, netPence: 0, chosen: false },
        ],
      }),
    })
  return (
    <Card title={words.title} says={words.says}>
      <ul className={styles.plainList} aria-label={words.title}>
        {options.map(({ optionId, name, taxKey }, at) => (
          <OneOption key={optionId} at={at} name={name} taxKey={taxKey} />
        ))}
      </ul>
      <Row>
        <Button variant="default" onClick={add}>
          {words.add}
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
          <DraftText path={`options[${at}].name`} label={words.what} />
        </Wide>
        <DraftMoney path={`options[${at}].netPence`} label={words.price} />
        <NativeSelect
          label={words.tax}
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
        <DraftCheck path={`options[${at}].chosen`} label={words.chosen} />
        <Button
          variant="default"
          aria-label={words.removeNamed(name)}
          onClick={() => change({ kind: 'remove', path: `options[${at}]` })}
        >
          {words.remove}
        </Button>
      </div>
    </li>
  )
}
