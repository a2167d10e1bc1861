import { TextInput } from '@mantine/core'
import { useState } from 'react'
import { typedNumber } from '../../../draft/typed-number.ts'
import { words } from './bring-in.words.ts'

type Box = {
  readonly column: number
  readonly fromPacks: number | undefined
  readonly change: (fromPacks: number | undefined) => void
}

/** From how many packs the prices of a column hold; left empty where the file has a column of quantities beside it. */
export function BreakBox({ column, fromPacks, change }: Box) {
  const [text, setText] = useState(fromPacks === undefined ? '' : String(fromPacks))
  const [error, setError] = useState<string | null>(null)
  const take = () => {
    const packs = typedNumber(text)
    if (packs === fromPacks) return setError(null)
    if (packs === undefined) return change(undefined)
    if (typeof packs === 'string' || !Number.isInteger(packs) || packs < 2 || packs > 100_000)
      return setError(words.breakBox.wrong)
    setError(null)
    change(packs)
  }
  return (
    <TextInput
      aria-label={words.breakBox.name(column)}
      leftSection={words.breakBox.from}
      leftSectionWidth={56}
      rightSection={words.breakBox.packs}
      rightSectionWidth={62}
      inputMode="numeric"
      mt={4}
      value={text}
      error={error}
      onChange={({ currentTarget }) => setText(currentTarget.value)}
      onBlur={take}
      onKeyDown={({ key }) => (key === 'Enter' ? take() : undefined)}
    />
  )
}

/** The quantity that a heading such as "10+", "25 off" or "Qty 50" seems to state, to start from. */
export function quantitySeen(heading: string): number | undefined {
  const found =
    /(\d[\d,]*) ?(?:\+|off\b|[-–]|or more|and over|up\b)/i.exec(heading) ??
    /(?:qty|quantity|from) ?(\d[\d,]*)/i.exec(heading)
  const packs = Number((found?.[1] ?? '').replaceAll(',', ''))
  return packs >= 2 && packs <= 100_000 ? packs : undefined
}
