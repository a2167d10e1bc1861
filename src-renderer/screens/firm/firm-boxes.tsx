import { NativeSelect, Textarea, TextInput } from '@mantine/core'
import { priceDetail } from '../../../src-main/domain/firm.ts'
import type { problemsOf } from '../../bridge/call.ts'
import { FieldGrid, Wide } from '../../parts/card.tsx'
import styles from './firm.module.css'
import { words } from './firm.words.ts'
import { fieldPaths } from './use-firm.ts'
import type { FirmField, FirmText } from './use-firm.ts'

export type Boxes = {
  readonly text: FirmText
  readonly set: (changes: Partial<FirmText>) => void
  readonly problems: ReturnType<typeof problemsOf>
}

type BoxProps = Boxes & { readonly field: FirmField; readonly tall?: boolean }

/** One box of the firm's details. */
export function FirmBox({ field, text, set, problems, tall = false }: BoxProps) {
  const path = fieldPaths[field]
  const error = problems.find((problem) => problem.path?.startsWith(path))?.message
  const props = { id: path, label: words.fields[field], error, value: text[field] }
  return tall ? (
    <Textarea
      {...props}
      autosize
      minRows={3}
      onChange={({ currentTarget }) => set({ [field]: currentTarget.value })}
    />
  ) : (
    <TextInput {...props} onChange={({ currentTarget }) => set({ [field]: currentTarget.value })} />
  )
}

/** What prices are in, and which unit of heat comes first. */
export function UnitBoxes({ text, set }: Pick<Boxes, 'text' | 'set'>) {
  return (
    <FieldGrid>
      <NativeSelect
        label={words.units.currency}
        value="GBP"
        data={[{ value: 'GBP', label: words.units.pounds }]}
        onChange={() => set({ currency: 'GBP' })}
      />
      <NativeSelect
        label={words.units.heat}
        value={text.heatFirst}
        data={[
          { value: 'W', label: words.units.watts },
          { value: 'BtuPerHour', label: words.units.btu },
        ]}
        onChange={({ currentTarget }) =>
          set({ heatFirst: currentTarget.value === 'BtuPerHour' ? 'BtuPerHour' : 'W' })
        }
      />
      <NativeSelect
        label={words.units.detail}
        value={text.priceDetail}
        data={[
          { value: 'lines', label: words.units.byLine },
          { value: 'rooms', label: words.units.byRoom },
          { value: 'total', label: words.units.totalOnly },
        ]}
        onChange={({ currentTarget }) => set({ priceDetail: priceDetail.parse(currentTarget.value) })}
      />
      <Wide>
        <p className={styles.under}>{words.units.sizes}</p>
      </Wide>
    </FieldGrid>
  )
}
