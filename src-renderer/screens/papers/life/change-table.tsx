import { money } from '../../../parts/figures-in-words.ts'
import styles from './life.module.css'
import { words as own } from './life.words.ts'

type Line = {
  readonly name: string
  readonly was: number | null
  readonly is: number | null
  readonly changePence: number
  readonly says: string
}

type Table = {
  /** What is compared, for a reader who does not see it. */
  readonly name: string
  readonly words: {
    readonly line: string
    readonly was: string
    readonly is: string
    readonly change: string
  }
  readonly lines: readonly Line[]
  readonly total?: Line
}

/** Lines of money before and after, with what changed. */
export function ChangeTable({ name, words, lines, total }: Table) {
  return (
    <div className={styles.scroll} tabIndex={0} role="group" aria-label={name}>
      <table className={styles.table}>
        <thead>
          <tr>
            <th scope="col">{words.line}</th>
            <th scope="col">{words.was}</th>
            <th scope="col">{words.is}</th>
            <th scope="col">{words.change}</th>
          </tr>
        </thead>
        <tbody>
          {lines.map((line, at) => (
            <ChangeRow key={`${line.name}${at}`} line={line} />
          ))}
        </tbody>
        {total === undefined ? null : (
          <tfoot>
            <ChangeRow line={total} />
          </tfoot>
        )}
      </table>
    </div>
  )
}

function ChangeRow({ line }: { readonly line: Line }) {
  const { name, was, is, changePence, says } = line
  return (
    <tr>
      <th scope="row">
        {name}
        {says === '' ? null : <span className={styles.says}>{says}</span>}
      </th>
      <td>{was === null ? own.notThere : money(was)}</td>
      <td>{is === null ? own.notThere : money(is)}</td>
      <td>{signed(changePence)}</td>
    </tr>
  )
}

/** A change in money with its sign, so that more and less are told without colour. */
function signed(pence: number): string {
  if (pence === 0) return '0'
  return `${pence > 0 ? '+' : '−'}${money(Math.abs(pence))}`
}
