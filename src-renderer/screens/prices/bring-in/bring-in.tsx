import { Button, Checkbox, FileButton, NativeSelect, Progress, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { DragEvent } from 'react'
import { Link } from 'wouter'
import { call, sentencesOf } from '../../../bridge/call.ts'
import { Card, FieldGrid, Row, Stack } from '../../../parts/card.tsx'
import { Notice, ProblemList } from '../../../parts/notice.tsx'
import { words } from './bring-in.words.ts'
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
    <Card title={words.choose.title} says={words.choose.says}>
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
          label={words.choose.supplier}
          value={steps.supplierId}
          data={[{ value: '', label: words.choose.chooseSupplier }, ...names]}
          onChange={({ currentTarget }) => steps.forSupplier(currentTarget.value)}
        />
        <FileButton
          accept=".csv,.tsv,.txt,.xlsx,.xml"
          inputProps={{ 'aria-label': words.choose.file, tabIndex: -1 }}
          onChange={take}
        >
          {(props) => (
            <Button {...props} loading={steps.hand.isPending || steps.look.isPending}>
              {steps.look.data === undefined ? words.choose.chooseFile : words.choose.another}
            </Button>
          )}
        </FileButton>
        <p className={styles.soft}>{words.choose.drop}</p>
        {steps.look.data === undefined ? null : (
          <p role="status">
            <strong>{steps.look.data.name}</strong>
            {words.choose.size(Math.ceil(steps.look.data.bytes / 1024))}
          </p>
        )}
      </div>
      <p className={styles.soft}>
        {words.choose.notInList} <Link href="/prices/suppliers">{words.choose.addSupplier}</Link>{' '}
        {words.choose.first}
      </p>
    </Card>
  )
}

function AskWhat({ steps }: { readonly steps: BringInSteps }) {
  return (
    <Card title={words.ask.title} says={words.ask.says}>
      <FieldGrid>
        <TextInput
          type="date"
          label={words.ask.holdFrom}
          description={words.ask.holdFromSays}
          value={steps.validFrom}
          onChange={({ currentTarget }) => steps.setValidFrom(currentTarget.value)}
        />
      </FieldGrid>
      <Checkbox
        mt="md"
        label={words.ask.part}
        description={words.ask.partSays}
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
          {words.ask.compare}
        </Button>
        {steps.supplierId === '' ? <p className={styles.soft}>{words.ask.supplierFirst}</p> : null}
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
    <Card
      title={progress?.says === undefined || progress.says === '' ? words.working.reading : progress.says}
    >
      <Progress
        value={share === null ? 100 : share * 100}
        animated={share === null}
        aria-label={share === null ? words.working.atWork : words.working.done(Math.round(share * 100))}
      />
      <Button mt="md" variant="default" onClick={() => void call('work.cancel', { workId: steps.workId })}>
        {words.working.stop}
      </Button>
    </Card>
  )
}

function Troubles({ steps }: { readonly steps: BringInSteps }) {
  const problems = [steps.hand, steps.look, steps.compare, steps.apply].flatMap(({ error }) =>
    sentencesOf(error),
  )
  return problems.length === 0 ? null : <ProblemList title={words.working.failed} problems={problems} />
}

function TakenIn({ steps }: { readonly steps: BringInSteps }) {
  const counts = steps.apply.data?.counts
  const nothing = steps.apply.data?.changeNo === null
  return (
    <div role="status">
      <Notice tone="good" title={nothing ? words.taken.nothing : words.taken.title}>
        {counts === undefined ? null : <p>{words.taken.counts(counts)}</p>}
        <Row>
          <Button component={Link} href="/prices/done" variant="default" mt="sm">
            {words.taken.seeDone}
          </Button>
          <Button mt="sm" onClick={steps.startOver}>
            {words.taken.another}
          </Button>
        </Row>
      </Notice>
    </div>
  )
}
