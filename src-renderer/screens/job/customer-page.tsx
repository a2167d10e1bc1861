import { Button } from '@mantine/core'
import { useEffect } from 'react'
import { DraftCheck, DraftLines, DraftMoney, DraftNumber, DraftText } from '../../draft/fields.tsx'
import { useOpenJob } from '../../draft/use-draft.ts'
import { Card, FieldGrid, Row, Stack, Wide } from '../../parts/card.tsx'
import styles from './job.module.css'
import { freeId } from './new-things.ts'

/** What the job is, who it is for and where. */
export function CustomerPage() {
  useEffect(() => {
    // A job that was just begun has its title and its customer's name: the form that asked for them took the focus with it.
    if (document.activeElement === document.body) document.getElementById('customer.phone')?.focus()
  }, [])
  return (
    <Stack>
      <Card title="The job">
        <FieldGrid>
          <Wide>
            <DraftText path="title" label="What the job is" />
          </Wide>
          <DraftText path="reference" label="Your reference" optional />
          <DraftText
            path="quotedOn"
            label="Date of the quote"
            hint="Today, when left empty"
            type="date"
            optional
          />
        </FieldGrid>
      </Card>
      <Card title="The customer">
        <FieldGrid>
          <DraftText path="customer.name" label="Name" />
          <DraftText path="customer.phone" label="Telephone" optional />
          <DraftText path="customer.email" label="Email" optional />
          <Wide>
            <DraftLines path="customer.addressLines" label="Address, line by line" asList />
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
      title="The site"
      aside={
        <Button variant="default" onClick={sameAsCustomer}>
          Same address as the customer
        </Button>
      }
    >
      <FieldGrid>
        <Wide>
          <DraftLines path="site.addressLines" label="Address of the site, line by line" asList />
        </Wide>
        <DraftNumber path="site.travelKm" label="Distance one way (km)" />
        <DraftNumber path="site.upperFloors" label="Floors above the ground floor" />
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
      value: { optionId, name: 'Extra work', netPence: 0, chosen: false },
    })
  }
  return (
    <Card
      title="Options"
      says="Work offered beside the job at a fixed price. It stays outside the total until the customer chooses it."
    >
      <Stack>
        {options.map((option, at) => (
          <div key={option.optionId} className={styles.item}>
            <FieldGrid>
              <Wide>
                <DraftText path={`options[${at}].name`} label={`Option ${at + 1}`} />
              </Wide>
              <DraftMoney path={`options[${at}].netPence`} label="Price before VAT (£)" />
              <DraftCheck path={`options[${at}].chosen`} label="The customer has chosen it" />
            </FieldGrid>
            <Row>
              <Button
                variant="subtle"
                color="gray"
                onClick={() => change({ kind: 'remove', path: `options[${at}]` })}
              >
                Remove option {at + 1}
              </Button>
            </Row>
          </div>
        ))}
        <Row>
          <Button variant="default" onClick={add}>
            Add an option
          </Button>
        </Row>
      </Stack>
    </Card>
  )
}
