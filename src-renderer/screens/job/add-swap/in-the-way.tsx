import { Button, NativeSelect, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { FormEvent } from 'react'
import type { Obstacle } from '../../../../src-main/domain/wall.ts'
import { focusOn, focusWhenThere } from '../../../draft/go-to-field.ts'
import { typedNumber } from '../../../draft/typed-number.ts'
import { useOpenJob } from '../../../draft/use-draft.ts'
import { Card, FieldGrid, Row, Stack } from '../../../parts/card.tsx'
import { placedPreset, presets } from '../../../parts/wall-drawing/fields/presets.ts'
import styles from '../job.module.css'
import { emitterSearchId } from './use-choose-by-keys.ts'
import { words } from './add-swap.words.ts'

type OnWall = { readonly roomId: string; readonly wallId: string }

const fields = ['xMm', 'yMm', 'widthMm', 'heightMm'] as const
type Field = (typeof fields)[number]
type Sizes = Readonly<Record<Field, string>>

/** What stands in the way on the wall of a new swap, put there before the emitter is chosen. */
export function InTheWay({ roomId, wallId }: OnWall) {
  const { job, change } = useOpenJob()
  const roomAt = job.rooms.findIndex((room) => room.roomId === roomId)
  const wallAt = job.rooms[roomAt]?.walls.findIndex((wall) => wall.wallId === wallId) ?? -1
  const wall = job.rooms[roomAt]?.walls[wallAt]
  if (wall === undefined) return null
  const path = `rooms[${roomAt}].walls[${wallAt}].obstacles`
  const there = wall.obstacles ?? []
  return (
    <Card title={words.inWay.title} says={words.inWay.says}>
      <Stack>
        {there.length === 0 ? null : (
          <ul className={styles.inWay} aria-label={words.inWay.list}>
            {there.map((one, at) => (
              <li key={one.obstacleId}>
                <span>{words.inWay.thing(one)}</span>
                <Button
                  variant="subtle"
                  color="gray"
                  aria-label={words.inWay.takeOffNamed(one.name)}
                  onClick={() => change({ kind: 'remove', path: `${path}[${at}]` })}
                >
                  {words.inWay.takeOff}
                </Button>
              </li>
            ))}
          </ul>
        )}
        <PutThere wall={wall} put={(value) => change({ kind: 'add', path, value })} />
      </Stack>
    </Card>
  )
}

type Put = { readonly wall: Parameters<typeof placedPreset>[1]; readonly put: (one: Obstacle) => void }

function PutThere({ wall, put }: Put) {
  const ask = useAskThing({ wall, put })
  return (
    <form onSubmit={ask.submit} noValidate>
      <Stack>
        <FieldGrid>
          <NativeSelect
            id="new-thing"
            label={words.inWay.what}
            value={ask.label}
            data={presets.map(({ label }) => label)}
            onChange={({ currentTarget }) => ask.choose(currentTarget.value)}
          />
          {fields.map((field) => (
            <TextInput
              key={field}
              id={`new-thing-${field}`}
              label={words.inWay.fields[field]}
              inputMode="decimal"
              value={ask.sizes[field]}
              error={ask.tried && ask.wrong(field) ? words.inWay.wrong : undefined}
              onChange={({ currentTarget }) => ask.set({ [field]: currentTarget.value })}
            />
          ))}
        </FieldGrid>
        <Row>
          <Button type="submit" variant="default">
            {words.inWay.put}
          </Button>
        </Row>
      </Stack>
    </form>
  )
}

const usualOf = (label: string) => presets.find((preset) => preset.label === label) ?? presets[0]

function startSizes(label: string): Sizes {
  const usual = usualOf(label)
  return {
    xMm: '',
    yMm: String(usual?.yMm ?? ''),
    widthMm: String(usual?.widthMm ?? ''),
    heightMm: String(usual?.heightMm ?? ''),
  }
}

/** The thing being typed. Its usual sizes stand ready; where it begins is always measured. */
function useAskThing({ wall, put }: Put) {
  const [label, setLabel] = useState<string>(presets[0]?.label ?? '')
  const [sizes, setSizes] = useState(() => startSizes(label))
  const [tried, setTried] = useState(false)
  const read = (field: Field) => typedNumber(sizes[field])
  const wrong = (field: Field) => {
    const value = read(field)
    const least = field === 'xMm' ? -20_000 : 0
    return typeof value !== 'number' || value < least || value > 20_000
  }
  const start = (next: string) => {
    setLabel(next)
    setSizes(startSizes(next))
    setTried(false)
  }
  const submit = (event: FormEvent) => {
    event.preventDefault()
    if (sizes.xMm.trim() === '') return focusBox(emitterSearchId)
    const first = fields.find((field) => wrong(field))
    setTried(true)
    if (first !== undefined) return focusBox(`new-thing-${first}`)
    const usual = usualOf(label)
    if (usual !== undefined) {
      const typed = Object.fromEntries(fields.map((field) => [field, Number(read(field))]))
      put({ ...placedPreset(usual, wall), ...typed })
    }
    start(label)
    // Once the list has grown by it, so that the box is in sight.
    return focusWhenThere('new-thing')
  }
  return {
    label,
    sizes,
    tried,
    wrong,
    submit,
    choose: start,
    set: (next: Partial<Sizes>) => setSizes({ ...sizes, ...next }),
  }
}

function focusBox(id: string): void {
  const box = document.getElementById(id)
  if (box !== null) focusOn(box)
}
