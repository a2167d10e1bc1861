import { Button, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { Fill } from '../../../src-main/domain/job.ts'
import type { Gap } from '../../../src-main/domain/quote.ts'
import { typedPence } from '../../draft/typed-number.ts'
import { Row } from '../../parts/card.tsx'
import { FindPart } from '../../parts/find-part.tsx'
import styles from './price.module.css'

type FillWith = { readonly gap: Gap; readonly fill: (what: Fill) => void }

/** Two ways to fill a gap: an item of the catalogue, or a thing by its name and cost. */
export function FillGap({ gap, fill }: FillWith) {
  const { gapKey, itemKind } = gap
  return (
    <div className={styles.ways}>
      <div>
        <p className={styles.emitterName}>With an item of the catalogue</p>
        <FindPart
          kind={itemKind}
          label="Find a part of this kind"
          choose={({ itemId }) => fill({ gapKey, itemId })}
        />
      </div>
      <div>
        <p className={styles.emitterName}>With something else</p>
        <OneOff gap={gap} fill={fill} />
      </div>
    </div>
  )
}

const units = { each: 'one', m: 'a metre', m2: 'a square metre', ml: 'a millilitre', L: 'a litre' } as const

function OneOff({ gap, fill }: FillWith) {
  const [name, setName] = useState('')
  const [cost, setCost] = useState('')
  const [tried, setTried] = useState(false)
  const pence = typedPence(cost)
  const noName = name.trim() === ''
  const noCost = typeof pence !== 'number' || pence < 0
  const keep = () => {
    setTried(true)
    if (!noName && !noCost) fill({ gapKey: gap.gapKey, name: name.trim(), netCostPence: pence })
  }
  return (
    <form
      className={styles.find}
      onSubmit={(event) => {
        event.preventDefault()
        keep()
      }}
    >
      <TextInput
        label="What it is"
        value={name}
        error={tried && noName ? 'Name it as it is to stand on the parts list.' : undefined}
        onChange={({ currentTarget }) => setName(currentTarget.value)}
      />
      <TextInput
        label={`What ${units[gap.unit ?? 'each']} costs you, before VAT (£)`}
        inputMode="decimal"
        value={cost}
        error={tried && noCost ? 'Give pounds and pence, such as 12.50.' : undefined}
        onChange={({ currentTarget }) => setCost(currentTarget.value)}
      />
      <Row>
        <Button type="submit">Fill the gap with this</Button>
      </Row>
    </form>
  )
}
