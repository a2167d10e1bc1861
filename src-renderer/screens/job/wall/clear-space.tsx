import type { Wall } from '../../../../src-main/domain/wall.ts'
import { DraftNumber } from '../../../draft/fields.tsx'
import { FieldGrid } from '../../../parts/card.tsx'
import styles from '../job.module.css'
import { words } from './wall.words.ts'

/** Clear space that each thing on a wall asks all round, where it is not as set for its kind. */
export function ClearSpace({ path, wall }: { readonly path: string; readonly wall: Wall }) {
  const obstacles = wall.obstacles ?? []
  if (obstacles.length === 0) return null
  return (
    <details className={styles.more}>
      <summary>{words.clear.title(wall.name)}</summary>
      <div className={styles.more}>
        <FieldGrid>
          {obstacles.map((obstacle, at) => (
            <DraftNumber
              key={obstacle.obstacleId}
              path={`${path}[${at}].clearanceMm`}
              label={words.clear.round(obstacle.name)}
              hint={words.clear.hint}
            />
          ))}
        </FieldGrid>
      </div>
    </details>
  )
}
