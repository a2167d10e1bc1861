import { dayInWords, money } from '../../parts/figures-in-words.ts'
import styles from './prices.module.css'
import { words } from './prices.words.ts'

type Price = {
  readonly packHolds: number
  readonly listPence: number
  readonly validFrom: string
  readonly validTo?: string | undefined
}

const [widthPx, heightPx, edgePx] = [320, 90, 6] as const

/** Every price of a row: as a list, and as a small picture of its steps. */
export function PriceChart({ prices }: { readonly prices: readonly Price[] }) {
  const byDay = prices.toSorted((a, b) => (a.validFrom < b.validFrom ? -1 : 1))
  return (
    <div>
      <h3>{words.chart.title}</h3>
      {byDay.length < 2 ? null : (
        <svg className={styles.chart} viewBox={`0 0 ${widthPx} ${heightPx}`} aria-hidden>
          <path d={steps(byDay)} fill="none" stroke="currentcolor" strokeWidth="2.5" />
        </svg>
      )}
      <ol className={styles.history} aria-label={words.chart.name}>
        {byDay.toReversed().map((price) => (
          <li key={`${price.validFrom}/${price.packHolds}`}>
            <span>{words.chart.from(dayInWords(price.validFrom))}</span>
            <span className={styles.number}>
              {words.chart.forPack(money(price.listPence), price.packHolds)}
            </span>
          </li>
        ))}
      </ol>
    </div>
  )
}

/** Prices as steps: each holds until the next begins. Equal steps across, because days between changes vary a hundredfold. */
function steps(prices: readonly Price[]): string {
  const pence = prices.map(({ listPence, packHolds }) => listPence / packHolds)
  const [low, high] = [Math.min(...pence), Math.max(...pence)]
  const across = (index: number) => edgePx + (index * (widthPx - 2 * edgePx)) / prices.length
  const up = (value: number) =>
    high === low ? heightPx / 2 : heightPx - edgePx - ((value - low) * (heightPx - 2 * edgePx)) / (high - low)
  return pence
    .map((value, index) => `${index === 0 ? 'M' : 'L'}${across(index)} ${up(value)}H${across(index + 1)}`)
    .join('')
}
