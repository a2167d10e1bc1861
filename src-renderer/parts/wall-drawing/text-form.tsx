import type { ThingInWords } from './in-words.ts'
import styles from './wall-drawing.module.css'
import { words } from './wall-drawing.words.ts'

type TextForm = {
  readonly id: string
  readonly things: readonly ThingInWords[]
  readonly wallName: string
}

/** The drawing for whoever cannot see it: every thing with its place, size and clear space. */
export function TextForm({ id, things, wallName }: TextForm) {
  return (
    <details className={styles.words} id={id}>
      <summary>{words.list.title}</summary>
      <div className={styles.scroll} tabIndex={0} role="region" aria-label={words.list.titleOf(wallName)}>
        <table aria-label={words.list.things(wallName)}>
          <thead>
            <tr>
              {words.list.columns.map((column) => (
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
