import { NativeSelect } from '@mantine/core'
import type { ReactNode } from 'react'
import type { AnswerOf } from '../../../../src-main/contract/requests.ts'
import { roomUse } from '../../../../src-main/domain/job.ts'
import { FieldGrid } from '../../../parts/card.tsx'
import type { Choice } from '../../../parts/words.ts'
import { roomUses } from '../../../parts/words.ts'
import styles from './quick.module.css'
import { NumberBox } from './number-box.tsx'
import { aboveChoices, belowChoices, countryChoices, wallCountChoices } from './fixed-choices.ts'
import { bandChoices, constructionChoices } from './table-choices.ts'
import type { QuickTyped } from './worked-out.ts'
import { words } from './quick.words.ts'

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
        <legend>{words.outside.title}</legend>
        <FieldGrid>
          {pick('outsideWallCount', words.outside.count, wallCountChoices)}
          {box('outsideWallM', words.outside.length, words.outside.lengthHint)}
          {pick('wall', words.outside.built, constructionChoices(tables, 'wall', entry['country']))}
          {box('windowCount', words.outside.windows, words.outside.windowsHint)}
          {box('glazedM2', words.outside.glazed, words.outside.glazedHint)}
          {pick('glazing', words.outside.glazing, constructionChoices(tables, 'window', entry['country']))}
          {box('outsideDoorCount', words.outside.doors)}
        </FieldGrid>
      </fieldset>
      <fieldset className={styles.group}>
        <legend>{words.house.title}</legend>
        <FieldGrid>
          {pick('ageBand', words.house.age, bandChoices(tables, entry['country']))}
          {pick('country', words.house.country, countryChoices)}
          <Neighbours box={box} pick={pick} entry={entry} />
        </FieldGrid>
      </fieldset>
    </div>
  )
}

function RoomItself({ typed, at, set, settle, errorAt, box }: QuickFieldsProps & { readonly box: Box }) {
  return (
    <fieldset className={styles.group}>
      <legend>{words.room.title}</legend>
      <FieldGrid>
        <Pick
          id={`${at}.use`}
          label={words.room.use}
          choices={roomUses}
          value={typed.use}
          set={(value) => set({ ...typed, use: roomUse.parse(value) })}
        />
        <NumberBox
          id={`${at}.roomC`}
          label={words.room.roomC}
          hint={words.room.roomCHint}
          value={typed.roomC}
          error={errorAt('roomC')}
          set={(roomC) => set({ ...typed, roomC })}
          done={settle}
        />
        {box('lengthM', words.room.length)}
        {box('widthM', words.room.width)}
        {box('heightM', words.room.height)}
      </FieldGrid>
    </fieldset>
  )
}

type Around = { readonly box: Box; readonly pick: Chooser; readonly entry: QuickTyped['entry'] }

function Neighbours({ box, pick, entry }: Around) {
  const { asWarm } = words.house
  return (
    <>
      {pick('above', words.house.above, aboveChoices)}
      {entry['above'] === 'heatedRoom' ? box('aboveC', words.house.aboveC, asWarm) : null}
      {entry['above'] === 'loft' ? box('loftInsulationMm', words.house.loft, words.house.loftHint) : null}
      {pick('below', words.house.below, belowChoices)}
      {entry['below'] === 'heatedRoom' ? box('belowC', words.house.belowC, asWarm) : null}
      {box('besideC', words.house.besideC, asWarm)}
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
        ...(known ? [] : [{ value: '', label: words.choose }]),
        ...choices.map((choice) => ({ value: String(choice.value), label: choice.label })),
      ]}
      onChange={({ currentTarget }) => {
        const chosen = choices.find((choice) => String(choice.value) === currentTarget.value)
        if (chosen !== undefined) set(chosen.value)
      }}
    />
  )
}
