import { Card } from '../../../parts/card.tsx'
import type { Picking } from '../../../../src-main/domain/follow-up/van.ts'
import styles from '../van.module.css'
import { words } from '../van.words.ts'
import pickStyles from './pick.module.css'
import { PickLine } from './pick-line.tsx'
import { progressOf } from './pick-words.ts'
import type { Source } from './pick-words.ts'
import type { Pick } from './use-pick.ts'

type Props = { readonly source: Source; readonly picking: Picking; readonly pick: Pick }

/** All that comes from one place. */
export function PickSource({ source, picking, pick }: Props) {
  const { title, says, lines } = source
  const { ticked, short } = progressOf(lines)
  const heavy = new Set(picking.body.lifts.map(({ name }) => name))
  return (
    <Card
      title={title}
      says={says}
      aside={<span className={pickStyles.tally}>{words.pick.progress(ticked, lines.length, short)}</span>}
    >
      <ul className={styles.plain} aria-label={title}>
        {lines.map((line) => (
          <PickLine
            key={line.lineNo}
            line={line}
            heavy={heavy.has(line.name)}
            closed={picking.closedOn !== undefined}
            pick={pick}
          />
        ))}
      </ul>
    </Card>
  )
}
