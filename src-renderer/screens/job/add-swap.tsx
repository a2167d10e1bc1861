import { Button, Checkbox, NativeSelect, TextInput } from '@mantine/core'
import { useEffect, useState } from 'react'
import type { KeyboardEvent } from 'react'
import { Link, useLocation } from 'wouter'
import type { Emitter } from '../../../src-main/domain/item.ts'
import type { Job } from '../../../src-main/domain/job.ts'
import { focusOn, focusWhenThere } from '../../draft/go-to-field.ts'
import { useOpenJob } from '../../draft/use-draft.ts'
import { Card, FieldGrid, Stack, Wide } from '../../parts/card.tsx'
import { Nothing } from '../../parts/notice.tsx'
import { pipeOrigins, pipeSizes } from '../../parts/words.ts'
import { InTheWay } from './add-swap/in-the-way.tsx'
import { EmitterPicker } from './emitter-picker.tsx'
import { emitterSearchId } from './add-swap/use-choose-by-keys.ts'
import styles from './job.module.css'
import { newSwap } from './new-things.ts'
import { placeOf, startTyped, swapAskedOf, wrongIn } from './swap-typed.ts'
import type { SwapTyped, TextField } from './swap-typed.ts'
import { words } from './add-swap/add-swap.words.ts'

type Asked = {
  readonly survey: string
  /** The room that it is for, where that is known already. */
  readonly roomId?: string | undefined
}

/** Asks where a new emitter goes, what hangs there and where the pipes are, and then which emitter it shall be. */
export function AddSwap({ survey, roomId }: Asked) {
  const { job } = useOpenJob()
  if (job.rooms.length === 0) {
    return (
      <Nothing title={words.noRoom.title}>
        <p>{words.noRoom.says}</p>
        <Button component={Link} href={`${survey}/add-room`}>
          {words.noRoom.add}
        </Button>
      </Nothing>
    )
  }
  return <SwapForm survey={survey} roomId={roomId} />
}

function SwapForm({ survey, roomId }: Asked) {
  const { job, change } = useOpenJob()
  const [, navigate] = useLocation()
  const [typed, setTyped] = useState(() => startIn(job, roomId))
  // A room that was chosen already need not be looked at again.
  const [first] = useState(() =>
    roomId === undefined && job.rooms.length > 1 ? 'new-swap-roomId' : 'new-swap-oldName',
  )
  const [tried, setTried] = useState(false)
  const wrong = wrongIn(typed)
  const choose = (emitter: Pick<Emitter, 'itemId'>) => {
    setTried(true)
    const bad = Object.keys(wrong)[0]
    if (bad !== undefined) {
      focusBox(`new-swap-${bad}`)
      return
    }
    const swap = newSwap(
      swapAskedOf(typed, emitter),
      job.swaps.map(({ swapId }) => swapId),
    )
    change({ kind: 'add', path: 'swaps', value: swap })
    navigate(`${survey}/swap/${swap.swapId}`)
    focusWhenThere(`swaps[${job.swaps.length}].emitterId`)
  }
  const form: Form = { typed, set: (next) => setTyped({ ...typed, ...next }), wrong: tried ? wrong : {} }
  useEffect(() => focusBox(first), [first])
  return (
    <Stack>
      <div className={styles.asked} onKeyDown={onToEmitter}>
        <WhereCard form={form} />
        <OldCard form={form} />
        <PipesCard form={form} />
      </div>
      <InTheWay roomId={typed.roomId} wallId={typed.wallId} />
      <Card title={words.emitter.title} says={words.emitter.says}>
        <EmitterPicker place={placeOf(typed)} chosenId={null} choose={choose} />
      </Card>
    </Stack>
  )
}

function startIn(job: Job, roomId: string | undefined): SwapTyped {
  const room = job.rooms.find((one) => one.roomId === roomId)
  const start = startTyped(job)
  return room === undefined ? start : { ...start, roomId: room.roomId, wallId: room.walls[0]?.wallId ?? '' }
}

function focusBox(id: string): void {
  const box = document.getElementById(id)
  if (box !== null) focusOn(box)
}

/** Enter in a box goes on to the emitters. */
function onToEmitter(event: KeyboardEvent): void {
  if (event.key !== 'Enter' || event.ctrlKey || event.metaKey) return
  if (!(event.target instanceof HTMLInputElement)) return
  event.preventDefault()
  focusBox(emitterSearchId)
}

type Form = {
  readonly typed: SwapTyped
  readonly set: (next: Partial<SwapTyped>) => void
  readonly wrong: Partial<Record<TextField, string>>
}

function Box({
  form,
  field,
  label,
}: {
  readonly form: Form
  readonly field: TextField
  readonly label: string
}) {
  return (
    <TextInput
      id={`new-swap-${field}`}
      label={label}
      value={form.typed[field]}
      error={form.wrong[field]}
      inputMode={field === 'oldName' ? 'text' : 'decimal'}
      onChange={({ currentTarget }) => form.set({ [field]: currentTarget.value })}
    />
  )
}

function WhereCard({ form }: { readonly form: Form }) {
  const { job } = useOpenJob()
  const room = job.rooms.find((one) => one.roomId === form.typed.roomId)
  return (
    <Card title={words.where.title}>
      <FieldGrid>
        <NativeSelect
          id="new-swap-roomId"
          label={words.where.room}
          value={form.typed.roomId}
          data={job.rooms.map(({ roomId, name }) => ({ value: roomId, label: name }))}
          onChange={({ currentTarget }) => {
            const next = job.rooms.find((one) => one.roomId === currentTarget.value)
            form.set({ roomId: currentTarget.value, wallId: next?.walls[0]?.wallId ?? '' })
          }}
        />
        <NativeSelect
          label={words.where.wall}
          value={form.typed.wallId}
          data={(room?.walls ?? []).map(({ wallId, name }) => ({ value: wallId, label: name }))}
          onChange={({ currentTarget }) => form.set({ wallId: currentTarget.value })}
        />
      </FieldGrid>
    </Card>
  )
}

function OldCard({ form }: { readonly form: Form }) {
  return (
    <Card title={words.old.title}>
      <FieldGrid>
        <Wide>
          <Checkbox
            label={words.old.comesOff}
            checked={form.typed.hasOld}
            onChange={({ currentTarget }) => form.set({ hasOld: currentTarget.checked })}
          />
        </Wide>
        {form.typed.hasOld ? (
          <>
            <Box form={form} field="oldName" label={words.old.what} />
            <Box form={form} field="oldWidth" label={words.old.width} />
            <Box form={form} field="oldHeight" label={words.old.height} />
          </>
        ) : null}
      </FieldGrid>
    </Card>
  )
}

function PipesCard({ form }: { readonly form: Form }) {
  return (
    <Card title={words.pipes.title} says={words.pipes.says}>
      <FieldGrid>
        <Box form={form} field="leftX" label={words.pipes.left} />
        <Box form={form} field="rightX" label={words.pipes.right} />
        <NativeSelect
          label={words.pipes.size}
          value={form.typed.size}
          data={pipeSizes.map(({ value, label }) => ({ value: String(value), label }))}
          onChange={({ currentTarget }) => form.set({ size: currentTarget.value })}
        />
        <NativeSelect
          label={words.pipes.from}
          value={form.typed.from}
          data={pipeOrigins.map(({ value, label }) => ({ value: String(value), label }))}
          onChange={({ currentTarget }) =>
            form.set({ from: currentTarget.value === 'wall' ? 'wall' : 'floor' })
          }
        />
      </FieldGrid>
    </Card>
  )
}
