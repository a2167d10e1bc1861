import { Button, Textarea, TextInput } from '@mantine/core'
import { useDocumentTitle } from '@mantine/hooks'
import { useState } from 'react'
import type { FormEvent } from 'react'
import { Link, useParams } from 'wouter'
import type { Firm } from '../../../src-main/domain/firm.ts'
import { problemsOf } from '../../bridge/call.ts'
import { Card, FieldGrid, Row, Stack, Wide } from '../../parts/card.tsx'
import { Notice, ProblemList, Waiting } from '../../parts/notice.tsx'
import styles from './firm.module.css'
import { fieldPaths, textOf, useFirm } from './use-firm.ts'
import type { FirmField, FirmText } from './use-firm.ts'

/** Who the quotes are from. */
export function FirmScreen() {
  const { asked, save } = useFirm()
  useDocumentTitle('Your firm: Tailpiece')
  return (
    <div className={styles.page}>
      <Stack>
        <div>
          <h1>Your firm</h1>
          <p className={styles.under}>
            It stands at the head of every quote. It stays in your own data file.
          </p>
        </div>
        <Body asked={asked} save={save} />
      </Stack>
    </div>
  )
}

type Both = ReturnType<typeof useFirm>

function Body({ asked, save }: Both) {
  if (asked.isPending) return <Waiting what="Looking for your firm’s details" />
  if (asked.error !== null) {
    return (
      <ProblemList title="The firm’s details can't be shown" problems={problemsOf(asked.error)}>
        <Button mt="md" onClick={() => void asked.refetch()}>
          Try again
        </Button>
      </ProblemList>
    )
  }
  return <FirmForm old={asked.data.firm} save={save} />
}

function FirmForm({ old, save }: { readonly old: Firm | null; readonly save: Both['save'] }) {
  const [text, setText] = useState(textOf(old))
  const problems = problemsOf(save.error)
  const submit = (event: FormEvent) => {
    event.preventDefault()
    save.mutate({ text, old })
  }
  const set = (field: FirmField, typed: string) => {
    if (!save.isIdle) save.reset()
    setText({ ...text, [field]: typed })
  }
  return (
    <form onSubmit={submit} noValidate>
      <Stack>
        {problems.length === 0 ? null : <ProblemList title="Not saved" problems={problems} />}
        <Letterhead text={text} set={set} problems={problems} />
        <Row>
          <Button type="submit" loading={save.isPending}>
            Save the firm
          </Button>
        </Row>
        {save.isSuccess ? <SavedNotice /> : null}
      </Stack>
    </form>
  )
}

type Boxes = Pick<BoxProps, 'text' | 'set' | 'problems'>

function Letterhead(boxes: Boxes) {
  return (
    <Card title="On the letterhead">
      <FieldGrid>
        <Wide>
          <Box field="name" label="Name of the firm" {...boxes} />
        </Wide>
        <Box field="phone" label="Telephone" {...boxes} />
        <Box field="email" label="Email" {...boxes} />
        <Box field="taxNumber" label="VAT number" {...boxes} />
        <Box field="address" label="Address, line by line" {...boxes} tall />
        <Box field="registrations" label="Registrations, one a line" {...boxes} tall />
        <Wide>
          <Box field="terms" label="Your terms, as they are printed" {...boxes} tall />
        </Wide>
      </FieldGrid>
    </Card>
  )
}

/** Where the person came from, so that the way leads back. */
function SavedNotice() {
  const { jobId } = useParams<{ jobId?: string }>()
  return (
    <div role="status">
      <Notice tone="good" title="The firm is saved">
        {jobId === undefined ? (
          <Link href="/">To the jobs</Link>
        ) : (
          <Link href={`/job/${jobId}/papers`}>Back to the quote</Link>
        )}
      </Notice>
    </div>
  )
}

type BoxProps = {
  readonly field: FirmField
  readonly label: string
  readonly text: FirmText
  readonly set: (field: FirmField, typed: string) => void
  readonly problems: ReturnType<typeof problemsOf>
  readonly tall?: boolean
}

function Box({ field, label, text, set, problems, tall = false }: BoxProps) {
  const path = fieldPaths[field]
  const error = problems.find((problem) => problem.path?.startsWith(path))?.message
  const props = { label, error, value: text[field] }
  return tall ? (
    <Textarea
      {...props}
      autosize
      minRows={3}
      onChange={({ currentTarget }) => set(field, currentTarget.value)}
    />
  ) : (
    <TextInput {...props} onChange={({ currentTarget }) => set(field, currentTarget.value)} />
  )
}
