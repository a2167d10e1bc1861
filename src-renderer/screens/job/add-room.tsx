import { Button, NativeSelect, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { FormEvent } from 'react'
import { useLocation } from 'wouter'
import { room as roomSchema } from '../../../src-main/domain/job.ts'
import type { Room } from '../../../src-main/domain/job.ts'
import { typedNumber } from '../../draft/typed-number.ts'
import { useOpenJob } from '../../draft/use-draft.ts'
import { Card, FieldGrid, Row, Stack } from '../../parts/card.tsx'
import { roomUses } from '../../parts/words.ts'
import { newRoom } from './new-things.ts'

type Typed = {
  readonly name: string
  readonly lengthM: string
  readonly widthM: string
  readonly heightM: string
}
type Errors = Partial<Record<keyof Typed, string>>

/** Asks for a room's name and size and puts it into the job. */
export function AddRoom({ survey }: { readonly survey: string }) {
  const { job, change } = useOpenJob()
  const [, navigate] = useLocation()
  const [use, setUse] = useState<Room['use']>('bedroom')
  const [typed, setTyped] = useState<Typed>({ name: '', lengthM: '', widthM: '', heightM: '2.4' })
  const [errors, setErrors] = useState<Errors>({})
  const submit = (event: FormEvent) => {
    event.preventDefault()
    const wrong = errorsIn(typed)
    setErrors(wrong)
    if (Object.keys(wrong).length > 0) return
    const room = newRoom(
      askedOf(typed, use),
      job.rooms.map(({ roomId }) => roomId),
    )
    change({ kind: 'add', path: 'rooms', value: room })
    navigate(`${survey}/room/${room.roomId}`)
  }
  const box = (field: keyof Typed, label: string, hint?: string) => (
    <TextInput
      label={label}
      description={hint}
      value={typed[field]}
      error={errors[field]}
      inputMode={field === 'name' ? 'text' : 'decimal'}
      onChange={({ currentTarget }) => setTyped({ ...typed, [field]: currentTarget.value })}
    />
  )
  return (
    <Card
      title="Add a room"
      says="Its heat starts from a rough guess by volume, which you can replace element by element."
    >
      <form onSubmit={submit} noValidate>
        <Stack>
          <FieldGrid>
            {box('name', 'Name of the room')}
            <NativeSelect
              label="Used as"
              value={use}
              data={roomUses.map(({ value, label }) => ({ value: String(value), label }))}
              onChange={({ currentTarget }) =>
                setUse(roomSchema.unwrap().shape.use.parse(currentTarget.value))
              }
            />
            {box('lengthM', 'Length (m)', 'Along the wall with the emitter')}
            {box('widthM', 'Width (m)', 'Away from that wall')}
            {box('heightM', 'Height (m)', 'Floor to ceiling')}
          </FieldGrid>
          <Row>
            <Button type="submit">Add the room</Button>
          </Row>
        </Stack>
      </form>
    </Card>
  )
}

function askedOf(typed: Typed, use: Room['use']) {
  const { name, lengthM, widthM, heightM } = typed
  return {
    name,
    use,
    lengthM: typedNumber(lengthM),
    widthM: typedNumber(widthM),
    heightM: typedNumber(heightM),
  }
}

function errorsIn(typed: Typed): Errors {
  const size = (text: string, what: string) => {
    const value = typedNumber(text)
    const right = typeof value === 'number' && value > 0 && value <= 20
    return right ? undefined : `${what} must be a number of metres, more than 0 and at most 20.`
  }
  const all = {
    name: typed.name.trim() === '' ? 'The room wants a name, such as Back bedroom.' : undefined,
    lengthM: size(typed.lengthM, 'Length'),
    widthM: size(typed.widthM, 'Width'),
    heightM: size(typed.heightM, 'Height'),
  }
  return Object.fromEntries(Object.entries(all).filter(([, says]) => says !== undefined))
}
