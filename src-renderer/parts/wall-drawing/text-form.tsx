import type { ThingInWords } from './in-words.ts'
import styles from './wall-drawing.module.css'

type TextForm = {
  readonly id: string
  readonly things: readonly ThingInWords[]
  readonly wallName: string
}

const columns = ['What', 'From the left end', 'From the floor', 'Size', 'Clear space']

/** The drawing for whoever cannot see it: every thing with its place, size and clear space. */
export function TextForm({ id, things, wallName }: TextForm) {
  return (
    <details className={styles.words} id={id}>
      <summary>The drawing in words</summary>
      <div
        className={styles.scroll}
        tabIndex={0}
        role="region"
        aria-label={`The drawing in words, ${wallName}`}
      >
        <table aria-label={`Things on ${wallName}`}>
          <thead>
            <tr>
              {columns.map((column) => (
                <th key={column} scope="col">
                  {column}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {things.map(({ id: key, what, fromLeft, fromFloor, size, room }) => (
              <tr key={key}>
                <th scope="row">{what}</th>
                <td>{fromLeft}</td>
                <td>{fromFloor}</td>
                <td>{size}</td>
                <td>{room}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  )
}
