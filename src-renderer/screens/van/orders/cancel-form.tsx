import { Button, TextInput } from '@mantine/core'
import { useState } from 'react'
import { sentencesOf } from '../../../bridge/call.ts'
import { Row, Stack } from '../../../parts/card.tsx'
import { ProblemList } from '../../../parts/notice.tsx'
import styles from '../van.module.css'
import { words } from './orders.words.ts'
import type { OrderWork } from './use-orders.ts'

type Props = { readonly orderId: string; readonly work: OrderWork; readonly close: () => void }

/** Cancels an order, with the reason that it wants. */
export function CancelForm({ orderId, work, close }: Props) {
  const [says, setSays] = useState('')
  const problems = sentencesOf(work.cancel.error)
  return (
    <form
      className={styles.form}
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        work.cancel.mutate({ orderId, says }, { onSuccess: close })
      }}
    >
      <Stack>
        <TextInput
          label={words.cancel.why}
          value={says}
          onChange={({ currentTarget }) => setSays(currentTarget.value)}
        />
        {problems.length === 0 ? null : <ProblemList title={words.cancel.notCancelled} problems={problems} />}
        <Row>
          <Button type="submit" color="red.9" loading={work.cancel.isPending}>
            {words.cancel.keep}
          </Button>
          <Button variant="default" onClick={close}>
            {words.cancel.leave}
          </Button>
        </Row>
      </Stack>
    </form>
  )
}
