import { money } from '../../parts/figures-in-words.ts'
import styles from './prices.module.css'
import { words } from './prices.words.ts'

type Shown = {
  readonly breaks: readonly { readonly fromPacks: number; readonly packPence: number }[] | undefined
}

/** Price breaks below the price that they are breaks of. */
export function Breaks({ breaks = [] }: Shown) {
  return breaks.map(({ fromPacks, packPence }) => (
    <span key={fromPacks} className={styles.break}>
      {words.breakFrom(money(packPence), fromPacks)}
    </span>
  ))
}
