import { Button, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { Fill } from '../../../src-main/domain/job.ts'
import type { Gap } from '../../../src-main/domain/quote.ts'
import { typedPence } from '../../draft/typed-number.ts'
import { Row } from '../../parts/card.tsx'
import { FindPart } from '../../parts/find-part.tsx'
import styles from './price.module.css'
import { words as all } from './price.words.ts'

const words = all.fill

type FillWith = { readonly gap: Gap; readonly fill: (what: Fill) => void }

/** Two ways to fill a gap: an item of the catalogue, or a thing by its name and cost. */
export function FillGap({ gap, fill }: FillWith) {
  const { gapKey, itemKind } = gap
  return (
    <div className={styles.ways}>
      <div>
        <p className={styles.emitterName}>{words.ofCatalogue}</p>
        <FindPart kind={itemKind} label={words.find} choose={({ itemId }) => fill({ gapKey, itemId })} />
      </div>
      <div>
        <p className={styles.emitterName}>{words.other}</p>
        <OneOff gap={gap} fill={fill} />
      </div>
    </div>
  )
}

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
        label={words.name}
        value={name}
        error={tried && noName ? words.noName : undefined}
        onChange={({ currentTarget }) => setName(currentTarget.value)}
      />
      <TextInput
        label={words.cost(words.units[gap.unit ?? 'each'])}
        inputMode="decimal"
        value={cost}
        error={tried && noCost ? words.noCost : undefined}
        onChange={({ currentTarget }) => setCost(currentTarget.value)}
      />
      <Row>
        <Button type="submit">{words.fill}</Button>
      </Row>
    </form>
  )
}
