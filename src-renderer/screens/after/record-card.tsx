import { Checkbox, NativeSelect, TextInput, Textarea } from '@mantine/core'
import { useState } from 'react'
import type { Commissioning } from '../../../src-main/domain/follow-up/after-job.ts'
import { Card, FieldGrid, Stack } from '../../parts/card.tsx'
import { words } from './after.words.ts'
import { BalancingTable } from './balancing-table.tsx'
import { NumberBox } from './boxes.tsx'
import type { Notes, Planned } from './use-after.ts'

const own = words.record
const choices = (labels: Readonly<Record<string, string>>) =>
  Object.entries(labels).map(([value, label]) => ({ value, label }))

function blank(today: string, { swaps }: Planned): Commissioning {
  return {
    onDay: today,
    by: '',
    flush: { how: 'none' },
    dose: { product: '', litres: 0 },
    pressureTest: { testBar: 0, minutes: 0, endBar: 0 },
    balancing: swaps.map(({ swapId, roomName }) => ({ swapId, roomName })),
    leaksLookedFor: false,
    fillingLoopOff: false,
  }
}

export type RecordPart = {
  readonly record: Commissioning
  readonly set: (more: Partial<Commissioning>) => void
  readonly shut: boolean
}

/** The commissioning record; kept from the moment on that somebody's name stands on it. */
export function RecordCard({ notes, today }: { readonly notes: Notes; readonly today: string }) {
  const { after, change, shut, planned } = notes
  const [record, setRecord] = useState(after.commissioning ?? blank(today, planned))
  const part: RecordPart = {
    record,
    shut,
    set: (more) => {
      const next = { ...record, ...more }
      setRecord(next)
      if (next.by.trim() !== '' && next.onDay !== '') change({ commissioning: next })
    },
  }
  return (
    <Card title={own.title} says={own.says}>
      <Stack>
        <WhoAndWater {...part} />
        <PressureBoxes {...part} />
        <BalancingTable {...part} />
        <Checks {...part} />
      </Stack>
    </Card>
  )
}

function WhoAndWater({ record, set, shut }: RecordPart) {
  const { flush, by, onDay } = record
  return (
    <FieldGrid>
      <TextInput
        label={own.by}
        description={by.trim() === '' ? own.byFirst : null}
        readOnly={shut}
        value={by}
        onChange={({ currentTarget }) => set({ by: currentTarget.value })}
      />
      <TextInput
        type="date"
        label={own.day}
        readOnly={shut}
        value={onDay}
        onChange={({ currentTarget }) => set({ onDay: currentTarget.value })}
      />
      <NativeSelect
        label={own.flush}
        disabled={shut}
        data={choices(own.flushes)}
        value={flush.how}
        onChange={({ currentTarget }) =>
          set({ flush: { ...flush, how: currentTarget.value as typeof flush.how } })
        }
      />
      <TextInput
        label={own.flushSays}
        readOnly={shut}
        value={flush.says ?? ''}
        onChange={({ currentTarget }) => set({ flush: { ...flush, says: currentTarget.value } })}
      />
      <Dose record={record} set={set} shut={shut} />
    </FieldGrid>
  )
}

function Dose({ record: { dose }, set, shut }: RecordPart) {
  const strength = dose.testedGood === undefined ? 'no' : dose.testedGood ? 'good' : 'weak'
  return (
    <>
      <TextInput
        label={own.product}
        readOnly={shut}
        value={dose.product}
        onChange={({ currentTarget }) => set({ dose: { ...dose, product: currentTarget.value } })}
      />
      <NumberBox
        label={own.litres}
        shut={shut}
        empty={0}
        blank
        value={dose.litres}
        set={(litres) => set({ dose: { ...dose, litres: litres ?? 0 } })}
      />
      <NativeSelect
        label={own.strength}
        disabled={shut}
        data={choices(own.strengths)}
        value={strength}
        onChange={({ currentTarget: { value } }) => {
          const { testedGood: _was, ...rest } = dose
          set({ dose: value === 'no' ? rest : { ...rest, testedGood: value === 'good' } })
        }}
      />
    </>
  )
}

function PressureBoxes({ record: { pressureTest: test }, set, shut }: RecordPart) {
  const put = (more: Partial<typeof test>) => set({ pressureTest: { ...test, ...more } })
  return (
    <FieldGrid>
      <NumberBox
        label={own.testBar}
        shut={shut}
        empty={0}
        blank
        value={test.testBar}
        set={(bar) => put({ testBar: bar ?? 0 })}
      />
      <NumberBox
        label={own.minutes}
        shut={shut}
        empty={0}
        blank
        value={test.minutes}
        set={(min) => put({ minutes: min ?? 0 })}
      />
      <NumberBox
        label={own.endBar}
        shut={shut}
        empty={0}
        blank
        value={test.endBar}
        set={(bar) => put({ endBar: bar ?? 0 })}
      />
      <NumberBox
        label={own.cold}
        shut={shut}
        value={test.coldFillBar}
        set={(bar) => {
          const { coldFillBar: _was, ...rest } = test
          set({ pressureTest: bar === undefined ? rest : { ...rest, coldFillBar: bar } })
        }}
      />
    </FieldGrid>
  )
}

function Checks({ record, set, shut }: RecordPart) {
  return (
    <>
      <Checkbox
        label={own.leaks}
        disabled={shut}
        checked={record.leaksLookedFor}
        onChange={({ currentTarget }) => set({ leaksLookedFor: currentTarget.checked })}
      />
      <Checkbox
        label={own.loop}
        disabled={shut}
        checked={record.fillingLoopOff}
        onChange={({ currentTarget }) => set({ fillingLoopOff: currentTarget.checked })}
      />
      <Textarea
        autosize
        minRows={2}
        label={own.notes}
        readOnly={shut}
        value={record.notes ?? ''}
        onChange={({ currentTarget }) => set({ notes: currentTarget.value })}
      />
    </>
  )
}
