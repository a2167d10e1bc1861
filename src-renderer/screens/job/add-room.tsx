import { Button, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { FormEvent } from 'react'
import { useLocation } from 'wouter'
import type { AnswerOf } from '../../../src-main/contract/requests.ts'
import { useAsk } from '../../bridge/use-ask.ts'
import { focusOn, focusWhenThere } from '../../draft/go-to-field.ts'
import { typedNumber } from '../../draft/typed-number.ts'
import { useOpenJob } from '../../draft/use-draft.ts'
import { Card, FieldGrid, Row, Stack } from '../../parts/card.tsx'
import { Waiting } from '../../parts/notice.tsx'
import { SurveyFormButton } from '../../parts/survey-form-button.tsx'
import { newRoom, quickRoomOf } from './new-things.ts'
import { LoadLine } from './quick/load-line.tsx'
import { assumedSays } from './quick/quick-card.tsx'
import { QuickFields } from './quick/quick-fields.tsx'
import { bandOfYear } from './quick/table-choices.ts'
import { byStorey, startEntry, workedOut } from './quick/worked-out.ts'
import type { QuickTyped } from './quick/worked-out.ts'
import { words } from './job.words.ts'

/** Asks for a room's name, size and walls, shows the heat it needs at once, and puts it into the job. */
export function AddRoom({ survey }: { readonly survey: string }) {
  const tables = useAsk('heat.tables', {}, { staleMs: Infinity })
  if (tables.data === undefined) return <Waiting what={words.addRoom.reading} />
  return <AskRoom survey={survey} tables={tables.data} />
}

type Ask = { readonly survey: string; readonly tables: AnswerOf<'heat.tables'> }

function AskRoom(props: Ask) {
  const { tables } = props
  const ask = useAskRoom(props)
  const { typed, setTyped, worked, tried } = ask
  const problems = tried && !worked.ok ? worked.problems : []
  return (
    <Card title={words.addRoom.title} says={words.addRoom.says}>
      <form onSubmit={ask.submit} noValidate>
        <Stack>
          <NameAndStorey ask={ask} />
          <QuickFields
            typed={typed}
            tables={tables}
            at="newRoom"
            set={setTyped}
            errorAt={(field) => problems.find((one) => one.path === field)?.message}
          />
          <LoadLine
            load={worked.ok ? worked.load : null}
            says={worked.ok ? assumedSays : (firstWanted(typed) ?? worked.problems[0]?.message ?? '')}
            {...(worked.ok ? { made: worked.made.why } : {})}
          />
          <Row>
            <Button type="submit">{words.addRoom.add}</Button>
            <Button variant="default" onClick={ask.rough}>
              {words.addRoom.rough}
            </Button>
            <SurveyFormButton blank />
          </Row>
        </Stack>
      </form>
    </Card>
  )
}

/** What is still to be answered before there is anything to work out. */
function firstWanted({ entry }: QuickTyped): string | undefined {
  const wanted = ['lengthM', 'widthM', 'heightM', 'ageBand'].some((field) => entry[field] === undefined)
  return wanted ? words.addRoom.wanted : undefined
}

function NameAndStorey({ ask }: { readonly ask: ReturnType<typeof useAskRoom> }) {
  const { name, setName, storey, setStorey, nameError, storeyError, tried } = ask
  return (
    <FieldGrid>
      <TextInput
        id="new-room-name"
        autoFocus
        label={words.room.name}
        value={name}
        error={tried ? nameError : undefined}
        onChange={({ currentTarget }) => setName(currentTarget.value)}
      />
      <TextInput
        id="new-room-storey"
        label={words.room.storey}
        value={storey}
        inputMode="numeric"
        error={tried ? storeyError : undefined}
        onChange={({ currentTarget }) => setStorey(currentTarget.value)}
      />
    </FieldGrid>
  )
}

/** What is typed of a room that is not in the job yet, and the two ways to put it there. */
function useAskRoom({ survey, tables }: Ask) {
  const { job, change } = useOpenJob()
  const [, navigate] = useLocation()
  const [name, setName] = useState('')
  const [storey, setStoreyText] = useState('0')
  const [typed, setTyped] = useState<QuickTyped>(() => startTyped(job, tables))
  const [tried, setTried] = useState(false)
  const worked = workedOut(typed, tables, job.survey.outsideC)
  const nameError = name.trim() === '' ? words.addRoom.noName : undefined
  const level = typedNumber(storey)
  const storeyError =
    Number.isInteger(level) && Number(level) >= -2 && Number(level) <= 30
      ? undefined
      : words.addRoom.wrongStorey
  const named = nameError === undefined && storeyError === undefined
  const ids = job.rooms.map(({ roomId }) => roomId)
  const asked = { name, use: typed.use, storey: Number(level) }
  const put = (room: ReturnType<typeof newRoom>) => {
    change({ kind: 'add', path: 'rooms', value: room })
    navigate(`${survey}/room/${room.roomId}`)
    focusWhenThere(`rooms[${job.rooms.length}].floor`)
  }
  /** The first box that must be put right gets the cursor. */
  const show = (wrong: string | undefined) => {
    setTried(true)
    const first =
      nameError !== undefined ? 'new-room-name' : storeyError !== undefined ? 'new-room-storey' : wrong
    const box = first === undefined ? null : document.getElementById(first)
    if (box !== null) focusOn(box)
  }
  return {
    name,
    setName,
    storey,
    nameError,
    storeyError,
    typed,
    setTyped,
    tried,
    worked,
    setStorey: (text: string) => {
      setStoreyText(text)
      setTyped({ ...typed, entry: { ...typed.entry, ...byStorey(typedNumber(text)) } })
    },
    submit: (event: FormEvent) => {
      event.preventDefault()
      if (named && worked.ok) put(quickRoomOf(asked, { typed, made: worked.made }, ids))
      else show(worked.ok ? undefined : `newRoom.${worked.problems[0]?.path ?? 'lengthM'}`)
    },
    rough: () => {
      const sizes = sizesOf(typed.entry)
      if (named && sizes !== null) put(newRoom({ ...asked, ...sizes }, ids))
      else show('newRoom.lengthM')
    },
  }
}

function startTyped(job: ReturnType<typeof useOpenJob>['job'], tables: Ask['tables']): QuickTyped {
  const entry = startEntry(job.rooms, 0)
  const ageBand = entry['ageBand'] ?? bandOfYear(tables, entry['country'], job.survey.builtYear)
  return {
    use: 'bedroom',
    roomC: undefined,
    entry: { ...entry, ...(ageBand === undefined ? {} : { ageBand }) },
  }
}

/** The three sizes, where all are lengths that a room can have. */
function sizesOf({ lengthM, widthM, heightM }: QuickTyped['entry']) {
  const right = (size: unknown): size is number => typeof size === 'number' && size >= 0.5 && size <= 50
  return right(lengthM) && right(widthM) && right(heightM) ? { lengthM, widthM, heightM } : null
}
