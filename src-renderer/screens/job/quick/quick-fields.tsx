import { NativeSelect } from '@mantine/core'
import type { ReactNode } from 'react'
import type { AnswerOf } from '../../../../src-main/contract/requests.ts'
import { roomUse } from '../../../../src-main/domain/job.ts'
import { FieldGrid } from '../../../parts/card.tsx'
import type { Choice } from '../../../parts/words.ts'
import { roomUses } from '../../../parts/words.ts'
import styles from './quick.module.css'
import { NumberBox } from './number-box.tsx'
import { aboveChoices, belowChoices, countryChoices, wallCountChoices } from './quick-words.ts'
import { bandChoices, constructionChoices } from './table-choices.ts'
import type { QuickTyped } from './worked-out.ts'

export type QuickFieldsProps = {
  readonly typed: QuickTyped
  readonly tables: AnswerOf<'heat.tables'>
  /** Where the answers lie, which begins the ids of their boxes. */
  readonly at: string
  readonly set: (typed: QuickTyped) => void
  readonly settle?: () => void
  readonly errorAt: (field: string) => string | undefined
}

type Box = (field: string, label: string, hint?: string) => ReactNode
type Chooser = (field: string, label: string, choices: readonly Choice[]) => ReactNode

/** The questions of the quick entry, from the room's size to what lies below it. */
export function QuickFields(props: QuickFieldsProps) {
  const { typed, tables, at, set, settle, errorAt } = props
  const { entry } = typed
  const answer = (field: string, value: unknown) => {
    const rest = Object.fromEntries(Object.entries(entry).filter(([name]) => name !== field))
    set({ ...typed, entry: value === undefined ? rest : { ...rest, [field]: value } })
  }
  const box: Box = (field, label, hint) => (
    <NumberBox
      id={`${at}.${field}`}
      label={label}
      hint={hint}
      value={entry[field]}
      error={errorAt(field)}
      set={(value) => answer(field, value)}
      done={settle}
    />
  )
  const pick: Chooser = (field, label, choices) => (
    <Pick
      id={`${at}.${field}`}
      label={label}
      choices={choices}
      value={entry[field]}
      error={errorAt(field)}
      set={(value) => answer(field, value)}
    />
  )
  return (
    <div className={styles.groups}>
      <RoomItself {...props} box={box} />
      <fieldset className={styles.group}>
        <legend>Outside walls and windows</legend>
        <FieldGrid>
          {pick('outsideWallCount', 'Outside walls', wallCountChoices)}
          {box('outsideWallM', 'Their length together (m)', 'Empty: so many sides of the room')}
          {pick('wall', 'Built as', constructionChoices(tables, 'wall', entry['country']))}
          {box('windowCount', 'Windows of usual size', '1.2 by 1.2 m each')}
          {box('glazedM2', 'Or their area (m²)', 'Empty: the windows are counted')}
          {pick('glazing', 'Glazing', constructionChoices(tables, 'window', entry['country']))}
          {box('outsideDoorCount', 'Outside doors')}
        </FieldGrid>
      </fieldset>
      <fieldset className={styles.group}>
        <legend>The house around it</legend>
        <FieldGrid>
          {pick('ageBand', 'Age of the house', bandChoices(tables, entry['country']))}
          {pick('country', 'Country', countryChoices)}
          <Neighbours box={box} pick={pick} entry={entry} />
        </FieldGrid>
      </fieldset>
    </div>
  )
}

function RoomItself({ typed, at, set, settle, errorAt, box }: QuickFieldsProps & { readonly box: Box }) {
  return (
    <fieldset className={styles.group}>
      <legend>The room itself</legend>
      <FieldGrid>
        <Pick
          id={`${at}.use`}
          label="Used as"
          choices={roomUses}
          value={typed.use}
          set={(value) => set({ ...typed, use: roomUse.parse(value) })}
        />
        <NumberBox
          id={`${at}.roomC`}
          label="Design temperature (°C)"
          hint="Empty: as usual for its use"
          value={typed.roomC}
          error={errorAt('roomC')}
          set={(roomC) => set({ ...typed, roomC })}
          done={settle}
        />
        {box('lengthM', 'Length (m)')}
        {box('widthM', 'Width (m)')}
        {box('heightM', 'Height (m)')}
      </FieldGrid>
    </fieldset>
  )
}

type Around = { readonly box: Box; readonly pick: Chooser; readonly entry: QuickTyped['entry'] }

function Neighbours({ box, pick, entry }: Around) {
  const asWarm = 'Empty: as warm as this one'
  return (
    <>
      {pick('above', 'Above it', aboveChoices)}
      {entry['above'] === 'heatedRoom' ? box('aboveC', 'Room above is at (°C)', asWarm) : null}
      {entry['above'] === 'loft'
        ? box('loftInsulationMm', 'Loft insulation (mm)', 'Empty: as its age has it')
        : null}
      {pick('below', 'Below it', belowChoices)}
      {entry['below'] === 'heatedRoom' ? box('belowC', 'Room below is at (°C)', asWarm) : null}
      {box('besideC', 'Rooms beside are at (°C)', asWarm)}
    </>
  )
}

type PickProps = {
  readonly id: string
  readonly label: string
  readonly choices: readonly Choice[]
  readonly value: unknown
  readonly error?: string | undefined
  readonly set: (value: string | number) => void
}

function Pick({ id, label, choices, value, error, set }: PickProps) {
  const known = choices.some((choice) => choice.value === value)
  return (
    <NativeSelect
      id={id}
      label={label}
      error={error}
      value={known ? String(value) : ''}
      data={[
        ...(known ? [] : [{ value: '', label: 'Choose' }]),
        ...choices.map((choice) => ({ value: String(choice.value), label: choice.label })),
      ]}
      onChange={({ currentTarget }) => {
        const chosen = choices.find((choice) => String(choice.value) === currentTarget.value)
        if (chosen !== undefined) set(chosen.value)
      }}
    />
  )
}
