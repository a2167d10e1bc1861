import { Button, Checkbox, FileButton, NativeSelect, Progress, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { DragEvent } from 'react'
import { Link } from 'wouter'
import { call, sentencesOf } from '../../../bridge/call.ts'
import { Card, FieldGrid, Row, Stack } from '../../../parts/card.tsx'
import { Notice, ProblemList } from '../../../parts/notice.tsx'
import { Compared } from './compared.tsx'
import { HowRead } from './how-read.tsx'
import styles from '../prices.module.css'
import { useBringIn, useProgress } from './use-bring-in.ts'
import type { BringInSteps } from './use-bring-in.ts'
import { useSupplierNames } from '../use-supplier-names.ts'

/** A supplier's file, from the drop on the window to the prices in the list. Nothing changes before the last press. */
export function BringIn() {
  const steps = useBringIn()
  const compared = steps.compare.data
  if (steps.apply.data !== undefined) return <TakenIn steps={steps} />
  return (
    <Stack>
      <ChooseFile steps={steps} />
      {steps.look.data === undefined || steps.reading === null ? null : (
        <>
          <HowRead look={steps.look.data} reading={steps.reading} change={steps.readAgain} />
          <AskWhat steps={steps} />
        </>
      )}
      {compared === undefined ? null : (
        <Compared
          comparison={compared}
          busy={steps.apply.isPending}
          take={(links) => steps.apply.mutate({ fileHash: compared.fileHash, links })}
        />
      )}
      <Working steps={steps} />
      <Troubles steps={steps} />
    </Stack>
  )
}

function ChooseFile({ steps }: { readonly steps: BringInSteps }) {
  const [over, setOver] = useState(false)
  const names = useSupplierNames()
  const take = (file: File | null | undefined) => {
    if (file === null || file === undefined) return
    steps.startOver()
    steps.hand.mutate(file)
  }
  const drop = (event: DragEvent) => {
    event.preventDefault()
    setOver(false)
    take(event.dataTransfer.files[0])
  }
  return (
    <Card
      title="1. Whose file is it?"
      says="CSV, a spreadsheet (XLSX) or a UBL catalogue, as the supplier sent it."
    >
      <div
        className={styles.drop}
        data-over={over}
        onDragOver={(event) => {
          event.preventDefault()
          setOver(true)
        }}
        onDragLeave={() => setOver(false)}
        onDrop={drop}
      >
        <NativeSelect
          label="Supplier"
          value={steps.supplierId}
          data={[{ value: '', label: 'Choose the supplier' }, ...names]}
          onChange={({ currentTarget }) => steps.forSupplier(currentTarget.value)}
        />
        <FileButton
          accept=".csv,.tsv,.txt,.xlsx,.xml"
          inputProps={{ 'aria-label': 'Price file to bring in', tabIndex: -1 }}
          onChange={take}
        >
          {(props) => (
            <Button {...props} loading={steps.hand.isPending || steps.look.isPending}>
              {steps.look.data === undefined ? 'Choose the file' : 'Choose another file'}
            </Button>
          )}
        </FileButton>
        <p className={styles.soft}>or drop it here</p>
        {steps.look.data === undefined ? null : (
          <p role="status">
            <strong>{steps.look.data.name}</strong>, {Math.ceil(steps.look.data.bytes / 1024)} kB
          </p>
        )}
      </div>
      <p className={styles.soft}>
        Not in the list? <Link href="/prices/suppliers">Add the supplier</Link> first.
      </p>
    </Card>
  )
}

function AskWhat({ steps }: { readonly steps: BringInSteps }) {
  return (
    <Card title="3. What would it change?" says="Nothing changes yet: this only compares.">
      <FieldGrid>
        <TextInput
          type="date"
          label="Prices hold from"
          description="Today when empty, unless the file says"
          value={steps.validFrom}
          onChange={({ currentTarget }) => steps.setValidFrom(currentTarget.value)}
        />
      </FieldGrid>
      <Checkbox
        mt="md"
        label="This file is only a part of the list"
        description="Then rows that it does not have stay as they are, and are not marked as gone"
        checked={steps.part}
        onChange={({ currentTarget }) => steps.sayPart(currentTarget.checked)}
      />
      <Row>
        <Button
          mt="md"
          disabled={steps.supplierId === ''}
          loading={steps.compare.isPending}
          onClick={() => steps.compare.mutate()}
        >
          Compare with my prices
        </Button>
        {steps.supplierId === '' ? <p className={styles.soft}>Choose the supplier first.</p> : null}
      </Row>
    </Card>
  )
}

function Working({ steps }: { readonly steps: BringInSteps }) {
  const running = steps.compare.isPending || steps.apply.isPending
  const progress = useProgress(steps.workId, running)
  if (!running) return null
  const share = progress?.done ?? null
  return (
    <Card title={progress?.says === undefined || progress.says === '' ? 'Reading the file' : progress.says}>
      <Progress
        value={share === null ? 100 : share * 100}
        animated={share === null}
        aria-label={share === null ? 'At work' : `${Math.round(share * 100)} % done`}
      />
      <Button mt="md" variant="default" onClick={() => void call('work.cancel', { workId: steps.workId })}>
        Stop; leave everything as it was
      </Button>
    </Card>
  )
}

function Troubles({ steps }: { readonly steps: BringInSteps }) {
  const problems = [steps.hand, steps.look, steps.compare, steps.apply].flatMap(({ error }) =>
    sentencesOf(error),
  )
  return problems.length === 0 ? null : (
    <ProblemList title="The file was not taken in; nothing has changed" problems={problems} />
  )
}

function TakenIn({ steps }: { readonly steps: BringInSteps }) {
  const counts = steps.apply.data?.counts
  const nothing = steps.apply.data?.changeNo === null
  return (
    <div role="status">
      <Notice tone="good" title={nothing ? 'Nothing was new' : 'The prices are taken in'}>
        {counts === undefined ? null : (
          <p>
            {counts.new} new, {counts.changed} changed, {counts.unchanged} as they were, {counts.rejected} not
            taken.
          </p>
        )}
        <Row>
          <Button component={Link} href="/prices/done" variant="default" mt="sm">
            See or undo what was changed
          </Button>
          <Button mt="sm" onClick={steps.startOver}>
            Bring in another file
          </Button>
        </Row>
      </Notice>
    </div>
  )
}
