import { Button } from '@mantine/core'
import { useEffect } from 'react'
import { DraftCheck, DraftLines, DraftMoney, DraftNumber, DraftText } from '../../draft/fields.tsx'
import { focusIfNowhere } from '../../draft/go-to-field.ts'
import { useOpenJob } from '../../draft/use-draft.ts'
import { Card, FieldGrid, Row, Stack, Wide } from '../../parts/card.tsx'
import styles from './job.module.css'
import { freeId } from './new-things.ts'
import { words } from './job.words.ts'

/** What the job is, who it is for and where. */
export function CustomerPage() {
  useEffect(() => {
    // A job that was just begun has its title and its customer's name: the form that asked for them took the focus with it.
    focusIfNowhere('customer.phone')
  }, [])
  return (
    <Stack>
      <Card title={words.job.title}>
        <FieldGrid>
          <Wide>
            <DraftText path="title" label={words.job.what} />
          </Wide>
          <DraftText path="reference" label={words.job.reference} optional />
          <DraftText
            path="quotedOn"
            label={words.job.quotedOn}
            hint={words.job.quotedOnHint}
            type="date"
            optional
          />
        </FieldGrid>
      </Card>
      <Card title={words.customer.title}>
        <FieldGrid>
          <DraftText path="customer.name" label={words.customer.name} />
          <DraftText path="customer.phone" label={words.customer.phone} optional />
          <DraftText path="customer.email" label={words.customer.email} optional />
          <Wide>
            <DraftLines path="customer.addressLines" label={words.customer.address} asList />
          </Wide>
        </FieldGrid>
      </Card>
      <Site />
      <Options />
    </Stack>
  )
}

function Site() {
  const { job, change } = useOpenJob()
  const sameAsCustomer = () =>
    change({ kind: 'set', path: 'site.addressLines', value: [...job.customer.addressLines] })
  return (
    <Card
      title={words.site.title}
      aside={
        <Button variant="default" onClick={sameAsCustomer}>
          {words.site.same}
        </Button>
      }
    >
      <FieldGrid>
        <Wide>
          <DraftLines path="site.addressLines" label={words.site.address} asList />
        </Wide>
        <DraftNumber path="site.travelKm" label={words.site.distance} />
        <DraftNumber path="site.upperFloors" label={words.site.floors} />
      </FieldGrid>
    </Card>
  )
}

/** Work offered beside the job at a fixed price. */
function Options() {
  const { job, change } = useOpenJob()
  const options = job.options ?? []
  const add = () => {
    const optionId = freeId(
      'option',
      options.map((option) => option.optionId),
    )
    change({
      kind: 'add',
      path: 'options',
      value: { optionId, name: words.options.fresh, netPence: 0, chosen: false },
    })
  }
  return (
    <Card title={words.options.title} says={words.options.says}>
      <Stack>
        {options.map((option, at) => (
          <div key={option.optionId} className={styles.item}>
            <FieldGrid>
              <Wide>
                <DraftText path={`options[${at}].name`} label={words.options.option(at + 1)} />
              </Wide>
              <DraftMoney path={`options[${at}].netPence`} label={words.options.price} />
              <DraftCheck path={`options[${at}].chosen`} label={words.options.chosen} />
            </FieldGrid>
            <Row>
              <Button
                variant="subtle"
                color="gray"
                onClick={() => change({ kind: 'remove', path: `options[${at}]` })}
              >
                {words.options.remove(at + 1)}
              </Button>
            </Row>
          </div>
        ))}
        <Row>
          <Button variant="default" onClick={add}>
            {words.options.add}
          </Button>
        </Row>
      </Stack>
    </Card>
  )
}
