import { Button, TextInput } from '@mantine/core'
import { figureSaid, figureText, unitTyped } from './figure-text.ts'
import type { OwnFigure } from './figure-groups.ts'
import styles from './firm.module.css'
import { words } from './firm.words.ts'

type Row = {
  readonly figure: OwnFigure
  /** What was typed and is not saved; undefined when nothing was. */
  readonly typed: string | null | undefined
  readonly error: string | undefined
  readonly set: (typed: string) => void
  readonly reset: () => void
}

/** One figure: what it is, its box, the usual value with its source, and the way back to it. */
export function FigureRow({ figure, typed, error, set, reset }: Row) {
  const { says, unit, usual, own, source } = figure
  const inForce = figureText(own ?? usual, unit)
  const shown = typed === undefined ? inForce : (typed ?? figureText(usual, unit))
  return (
    <li className={styles.figure}>
      <TextInput
        label={says}
        id={`figures.${figure.id}`}
        {...(unitTyped(unit) === '' ? {} : { description: unitTyped(unit) })}
        error={error}
        inputMode="decimal"
        value={shown}
        onChange={({ currentTarget }) => set(currentTarget.value)}
      />
      <div className={styles.source}>
        <p>
          {words.figures.usual(figureSaid(usual, unit))}
          {own === null ? null : <strong className={styles.own}>{words.figures.yours}</strong>}
        </p>
        <p className={styles.under}>{words.figures.source(source)}</p>
        {own === null ? null : (
          <Button variant="subtle" px={0} aria-label={words.figures.resetOf(says)} onClick={reset}>
            {words.figures.reset}
          </Button>
        )}
      </div>
    </li>
  )
}
