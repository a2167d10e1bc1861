import { Button, NativeSelect } from '@mantine/core'
import { useState } from 'react'
import { typedNumber } from '../../../draft/typed-number.ts'
import type { Obstacle, ObstacleKind } from '../../../../src-main/domain/wall.ts'
import { obstacleKinds } from '../../words.ts'
import { words } from './fields.words.ts'
import { NumberBox } from './number-box.tsx'
import { freeName, freeObstacleId, placedPreset, presets } from './presets.ts'
import styles from '../wall-drawing.module.css'

type Add = {
  readonly wall: { readonly widthMm: number; readonly obstacles?: readonly Obstacle[] | undefined }
  readonly add: (obstacle: Obstacle) => void
  /** Begins to draw a rectangle of a kind; absent where there is no drawing. */
  readonly draw?: (kind: ObstacleKind) => void
  readonly drawing?: ObstacleKind | null
}

/** Usual things by one press, and any other by its kind with four numbers or by drawing it. */
export function AddThings({ wall, add, draw, drawing }: Add) {
  return (
    <details className={styles.words}>
      <summary>{words.add.title}</summary>
      <div className={styles.adding}>
        <div role="group" aria-label={words.add.usual} className={styles.presets}>
          {presets.map((preset) => (
            <Button key={preset.label} variant="default" onClick={() => add(placedPreset(preset, wall))}>
              {words.add.preset(preset.label, preset.widthMm, preset.heightMm)}
            </Button>
          ))}
        </div>
        <p>{words.add.says}</p>
        <ByNumbers
          wall={wall}
          add={add}
          {...(draw === undefined ? {} : { draw })}
          drawing={drawing ?? null}
        />
      </div>
    </details>
  )
}

const fields = [
  ['xMm', words.add.fromLeft],
  ['yMm', words.add.aboveFloor],
  ['widthMm', words.add.width],
  ['heightMm', words.add.height],
] as const
type Field = (typeof fields)[number][0]
const empty: Readonly<Record<Field, string>> = { xMm: '', yMm: '', widthMm: '', heightMm: '' }

function ByNumbers({ wall, add, draw, drawing }: Add) {
  const [kind, setKind] = useState<ObstacleKind>('other')
  const [text, setText] = useState(empty)
  const [tried, setTried] = useState(false)
  const number = (field: Field) => {
    const value = typedNumber(text[field])
    const least = field === 'xMm' ? -20_000 : 0
    return typeof value === 'number' && value >= least && value <= 20_000 ? value : null
  }
  const put = () => {
    const [xMm = null, yMm = null, widthMm = null, heightMm = null] = fields.map(([field]) => number(field))
    setTried(true)
    if (xMm === null || yMm === null || widthMm === null || heightMm === null) return
    const others = wall.obstacles ?? []
    add({ obstacleId: freeObstacleId(others), name: nameOf(kind, others), kind, xMm, yMm, widthMm, heightMm })
    setText(empty)
    setTried(false)
  }
  return (
    <div className={styles.byNumbers}>
      <NativeSelect
        label={words.add.kind}
        value={kind}
        data={obstacleKinds.map(({ value, label }) => ({ value: String(value), label }))}
        onChange={({ currentTarget }) => setKind(currentTarget.value as ObstacleKind)}
      />
      {fields.map(([field, label]) => (
        <NumberBox
          key={field}
          label={label}
          value={typedNumber(text[field])}
          set={(value) => setText({ ...text, [field]: value === undefined ? '' : String(value) })}
          error={tried && number(field) === null ? words.add.wrong : undefined}
        />
      ))}
      <Button variant="default" onClick={put}>
        {words.add.put}
      </Button>
      {draw === undefined ? null : (
        <Button variant="default" aria-pressed={drawing !== null} onClick={() => draw(kind)}>
          {drawing === null ? words.add.draw : words.add.drawing}
        </Button>
      )}
    </div>
  )
}

/** What a new thing of a kind is called. */
export function nameOf(kind: ObstacleKind, others: readonly Pick<Obstacle, 'name'>[]): string {
  const label = kind === 'other' ? words.add.other : obstacleKinds.find(({ value }) => value === kind)?.label
  return freeName(label ?? kind, others)
}
