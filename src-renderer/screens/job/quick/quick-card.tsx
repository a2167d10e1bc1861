import { Button } from '@mantine/core'
import type { Room } from '../../../../src-main/domain/job.ts'
import { useAsk } from '../../../bridge/use-ask.ts'
import { useOpenJob } from '../../../draft/use-draft.ts'
import { Card } from '../../../parts/card.tsx'
import { Waiting } from '../../../parts/notice.tsx'
import styles from '../job.module.css'
import { LoadLine } from './load-line.tsx'
import { QuickFields } from './quick-fields.tsx'
import { roomWith, workedOut } from './worked-out.ts'
import type { QuickTyped } from './worked-out.ts'
import { words } from './quick.words.ts'

export const assumedSays = words.assumed

/** A room's quick answers; its walls, floor and ceiling are made from them anew at each change. */
export function QuickCard({ path, room }: { readonly path: string; readonly room: Room }) {
  const { job, change } = useOpenJob()
  const tables = useAsk('heat.tables', {}, { staleMs: Infinity })
  if (tables.data === undefined || room.quick === undefined) return <Waiting what={words.reading} />
  const { data } = tables
  const { outsideC } = job.survey
  const typed: QuickTyped = { use: room.use, roomC: room.roomC, entry: { ...room.quick.entry } }
  const worked = workedOut(typed, data, outsideC)
  const problems = worked.ok ? [] : worked.problems
  /** A temperature that was left empty becomes the usual one once the box is left. */
  const settle = () => {
    if (typed.roomC === undefined && worked.ok)
      change({ kind: 'set', path: `${path}.roomC`, value: worked.made.roomC })
    change({ kind: 'settle' })
  }
  const set = (next: QuickTyped) => {
    const moved = next.use === typed.use ? next : { ...next, roomC: undefined }
    const again = workedOut(moved, data, outsideC)
    const roomC = next.use === typed.use ? next.roomC : again.ok ? again.made.roomC : typed.roomC
    change({ kind: 'set', path, value: roomWith(room, { ...next, roomC }, again) })
  }
  const showElements = () => {
    change({ kind: 'set', path: `${path}.quick.byHand`, value: true })
    settle()
  }
  return (
    <Card
      title={words.title}
      says={words.says}
      aside={
        <Button variant="default" onClick={showElements}>
          {words.showElements}
        </Button>
      }
    >
      <QuickFields
        typed={typed}
        tables={data}
        at={`${path}.quick.entry`}
        set={set}
        settle={settle}
        errorAt={(field) => problems.find((one) => one.path === field)?.message}
      />
      <div className={styles.more}>
        <LoadLine
          load={worked.ok ? worked.load : null}
          says={worked.ok ? assumedSays : words.putRight}
          {...(worked.ok ? { made: worked.made.why } : {})}
        />
      </div>
    </Card>
  )
}
