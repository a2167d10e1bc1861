import { Button, Group, Modal, NativeSelect, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { Override } from '../../../src-main/domain/job.ts'
import { taxCategory } from '../../../src-main/domain/pricing.ts'
import type { Purchase, QuoteLine } from '../../../src-main/domain/quote.ts'
import { penceText } from '../../draft/typed-number.ts'
import { useOpenJob } from '../../draft/use-draft.ts'
import { FieldGrid, Stack } from '../../parts/card.tsx'
import { howMuchOf, money } from '../../parts/figures-in-words.ts'
import { FindPart } from '../../parts/find-part.tsx'
import { withOverride, withTax } from './job-changes.ts'
import { taxChoices } from './tax.words.ts'
import { changeKeyOf, overrideOf } from './priced-line.ts'
import { overrideTyped } from './typed-override.ts'
import type { TypedOverride } from './typed-override.ts'
import { words as all } from './price.words.ts'

const words = all.change

type ChangeLine = {
  readonly line: QuoteLine
  readonly purchase: Purchase | undefined
  readonly close: () => void
}

/** Changes one line by hand: how many, which item, what it is sold for; always with a reason. */
export function ChangeLine({ line, purchase, close }: ChangeLine) {
  return (
    <Modal
      opened
      onClose={close}
      title={words.title(line.name)}
      size="42rem"
      attributes={{ header: { role: 'presentation' } }}
    >
      <ChangeForm line={line} purchase={purchase} close={close} />
    </Modal>
  )
}

function textsOf(override: Override | undefined): TypedOverride {
  return {
    quantity: override?.quantity === undefined ? '' : String(override.quantity),
    price: penceText(override?.netPence),
    itemId: override?.itemId,
    reason: override?.reason ?? '',
  }
}

function ChangeForm({ line, purchase, close }: ChangeLine) {
  const { job, change } = useOpenJob()
  const had = overrideOf(line, job.overrides ?? [])
  const lineKey = changeKeyOf(line)
  const [typed, setTyped] = useState(textsOf(had))
  const [tried, setTried] = useState(false)
  const read = overrideTyped(typed)
  const keep = () => {
    setTried(true)
    if (read.override === null) return
    const { override } = read
    change({ kind: 'alter', alter: (now) => withOverride(now, lineKey, override) })
    close()
  }
  const takeOff = () => {
    change({ kind: 'alter', alter: (now) => withOverride(now, lineKey, null) })
    close()
  }
  const faults = tried ? read.faults : {}
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault()
        keep()
      }}
    >
      <Stack>
        {line.part === undefined || purchase?.oneOff === true ? null : (
          <PartFields line={line} purchase={purchase} typed={typed} set={setTyped} fault={faults.quantity} />
        )}
        <FieldGrid>
          <TextInput
            label={words.price}
            description={words.priceSays(money(line.was?.netPence ?? line.netPence))}
            inputMode="decimal"
            value={typed.price}
            error={faults.price}
            onChange={({ currentTarget }) => setTyped({ ...typed, price: currentTarget.value })}
          />
          <LineTax line={line} />
        </FieldGrid>
        <TextInput
          label={words.reason}
          description={words.reasonSays}
          value={typed.reason}
          error={faults.reason}
          onChange={({ currentTarget }) => setTyped({ ...typed, reason: currentTarget.value })}
        />
        {faults.whole === undefined ? null : <p role="alert">{faults.whole}</p>}
      </Stack>
      <Buttons close={close} takeOff={had === undefined ? null : takeOff} />
    </form>
  )
}

type Ways = { readonly close: () => void; readonly takeOff: (() => void) | null }

function Buttons({ close, takeOff }: Ways) {
  return (
    <Group mt="lg" justify="flex-end">
      {takeOff === null ? null : (
        <Button variant="default" onClick={takeOff}>
          {words.takeOff}
        </Button>
      )}
      <Button variant="default" onClick={close}>
        {words.leave}
      </Button>
      <Button type="submit">{words.keep}</Button>
    </Group>
  )
}

type PartChange = {
  readonly line: QuoteLine
  readonly purchase: Purchase | undefined
  readonly typed: TypedOverride
  readonly set: (typed: TypedOverride) => void
  readonly fault: string | undefined
}

function PartFields({ line, purchase, typed, set, fault }: PartChange) {
  const [searching, setSearching] = useState(false)
  const [chosen, setChosen] = useState<string | null>(null)
  const worked = line.was?.quantity ?? purchase?.need ?? line.quantity
  const isEmitter = line.part?.itemKind === 'emitter'
  return (
    <>
      <TextInput
        label={words.quantity}
        description={words.quantitySays(howMuchOf(worked, line.unit))}
        inputMode="decimal"
        value={typed.quantity}
        error={fault}
        onChange={({ currentTarget }) => set({ ...typed, quantity: currentTarget.value })}
      />
      {isEmitter ? (
        <p>{words.emitter}</p>
      ) : (
        <Group>
          <p>{typed.itemId === undefined ? words.itemPlain : words.instead(chosen ?? line.name)}</p>
          <Button variant="default" aria-expanded={searching} onClick={() => setSearching(!searching)}>
            {words.another}
          </Button>
          {typed.itemId === undefined ? null : (
            <Button variant="default" onClick={() => set({ ...typed, itemId: undefined })}>
              {words.back}
            </Button>
          )}
        </Group>
      )}
      {searching ? (
        <FindPart
          kind={line.part?.itemKind}
          label={words.find}
          choose={({ itemId, name }) => {
            set({ ...typed, itemId })
            setChosen(name)
            setSearching(false)
          }}
        />
      ) : null}
    </>
  )
}

/** The tax of this one line. It is kept at once, and wants no reason. */
function LineTax({ line }: { readonly line: QuoteLine }) {
  const { job, change } = useOpenJob()
  const of = line.part === undefined ? 'lineCategories' : 'partCategories'
  const name = changeKeyOf(line)
  return (
    <NativeSelect
      label={words.tax}
      value={job.pricing?.[of]?.[name] ?? ''}
      data={[
        { value: '', label: words.taxPlain },
        ...taxChoices.map(({ value, label }) => ({ value: String(value), label })),
      ]}
      onChange={({ currentTarget }) => {
        const picked = taxCategory.safeParse(currentTarget.value)
        const category = picked.success ? picked.data : null
        change({ kind: 'alter', alter: (now) => withTax(now, { of, name }, category) })
      }}
    />
  )
}
