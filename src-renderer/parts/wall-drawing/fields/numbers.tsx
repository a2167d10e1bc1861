import { Button, NativeSelect } from '@mantine/core'
import type { Swap } from '../../../../src-main/domain/job.ts'
import type { CentreChoice, Obstacle } from '../../../../src-main/domain/wall.ts'
import { DraftChoice, DraftNumber, DraftText } from '../../../draft/fields.tsx'
import { useOpenJob, useProblemsAt } from '../../../draft/use-draft.ts'
import { obstacleKinds } from '../../words.ts'
import type { Paths } from '../place/board-paths.ts'
import { LeafFields } from './leaf-fields.tsx'
import { centreInWords } from '../in-words.ts'
import { sameThing } from '../place/moving.ts'
import type { Thing } from '../place/moving.ts'
import { NumberBox } from './number-box.tsx'
import type { Board } from '../use-board.ts'
import type { Placed } from '../use-set-out-here.ts'
import styles from '../wall-drawing.module.css'

type Numbers = { readonly board: Board; readonly paths: Paths; readonly placed: Placed }

/** The exact numbers of the thing that is chosen. */
export function Numbers({ board, paths, placed }: Numbers) {
  const { swap, wall } = board.now
  const obstacles = wall.obstacles ?? []
  const things: readonly { readonly thing: Thing; readonly label: string }[] = [
    { thing: 'emitter', label: 'The new emitter' },
    ...(swap.existing === undefined ? [] : [{ thing: 'old' as const, label: 'What hangs there now' }]),
    ...obstacles.map(({ obstacleId, name }) => ({ thing: { obstacleId }, label: name })),
  ]
  const chosenAt = Math.max(
    0,
    things.findIndex(({ thing }) => sameThing(board.chosen, thing)),
  )
  const thing = things[chosenAt]?.thing ?? 'emitter'
  const nth =
    typeof thing === 'string' ? -1 : obstacles.findIndex((one) => one.obstacleId === thing.obstacleId)
  const obstacle = obstacles[nth]
  return (
    <section className={styles.numbers} aria-label="Numbers of what is chosen">
      <NativeSelect
        label="Chosen on the drawing"
        value={String(chosenAt)}
        data={things.map(({ label }, at) => ({ value: String(at), label }))}
        onChange={({ currentTarget }) => {
          const next = things[Number(currentTarget.value)]
          if (next !== undefined) board.choose(next.thing)
        }}
      />
      {thing === 'emitter' ? <EmitterNumbers swap={swap} path={paths.swap} placed={placed} /> : null}
      {thing === 'old' ? <OldNumbers path={`${paths.swap}.existing`} /> : null}
      {obstacle === undefined ? null : (
        <ObstacleNumbers
          key={obstacle.obstacleId}
          path={`${paths.wall}.obstacles[${nth}]`}
          obstacle={obstacle}
          removed={() => board.choose('emitter')}
        />
      )}
    </section>
  )
}

type EmitterAt = { readonly swap: Swap; readonly path: string; readonly placed: Placed }

function EmitterNumbers({ swap, path, placed }: EmitterAt) {
  const { change } = useOpenJob()
  const { centre } = swap
  const settle = () => change({ kind: 'settle' })
  return (
    <>
      <NumberBox
        label="Its centre from the left (mm)"
        value={centre.kind === 'at' ? centre.xMm : placed.setOut.centreMm}
        error={useProblemsAt(`${path}.centre.xMm`)}
        set={(xMm) => change({ kind: 'set', path: `${path}.centre`, value: { kind: 'at', xMm } })}
        settle={settle}
      />
      <NumberBox
        label="Its bottom edge above the floor (mm)"
        value={swap.bottomMm}
        error={useProblemsAt(`${path}.bottomMm`)}
        set={(value) => change({ kind: 'set', path: `${path}.bottomMm`, value })}
        settle={settle}
      />
      <p>{centreInWords(centre, placed.setOut.centreMm)}</p>
      {centre.kind === 'at' ? <WaysBack swap={swap} path={path} /> : null}
    </>
  )
}

/** A centre that was put by hand goes back to the pipes or the wall. */
function WaysBack({ swap, path }: { readonly swap: Swap; readonly path: string }) {
  const { change } = useOpenJob()
  const has = (side: 'left' | 'right') => swap.pipes.some((pipe) => pipe.side === side)
  const ways: readonly { readonly label: string; readonly centre: CentreChoice; readonly there: boolean }[] =
    [
      {
        label: 'Back between the pipes',
        centre: { kind: 'betweenPipes' },
        there: has('left') && has('right'),
      },
      { label: 'Back to the left pipe', centre: { kind: 'fromPipe', side: 'left' }, there: has('left') },
      { label: 'Back to the right pipe', centre: { kind: 'fromPipe', side: 'right' }, there: has('right') },
      { label: 'Back to the middle of the wall', centre: { kind: 'middleOfWall' }, there: true },
    ]
  return (
    <div className={styles.ways}>
      {ways
        .filter(({ there }) => there)
        .map(({ label, centre }) => (
          <Button
            key={label}
            variant="default"
            onClick={() => {
              change({ kind: 'set', path: `${path}.centre`, value: centre })
              change({ kind: 'settle' })
            }}
          >
            {label}
          </Button>
        ))}
    </div>
  )
}

function OldNumbers({ path }: { readonly path: string }) {
  return (
    <>
      <DraftNumber
        path={`${path}.leftMm`}
        label="Its left edge from the left (mm)"
        hint="Empty if not measured"
      />
      <DraftNumber
        path={`${path}.bottomMm`}
        label="Its bottom above the floor (mm)"
        hint="Empty if not measured"
      />
    </>
  )
}

type ObstacleAt = { readonly path: string; readonly obstacle: Obstacle; readonly removed: () => void }

function ObstacleNumbers({ path, obstacle, removed }: ObstacleAt) {
  const { change } = useOpenJob()
  return (
    <>
      <DraftText path={`${path}.name`} label="Its name" />
      <DraftChoice path={`${path}.kind`} label="Its kind" choices={obstacleKinds} />
      <div className={styles.four}>
        <DraftNumber path={`${path}.xMm`} label="Its place from the left (mm)" />
        <DraftNumber path={`${path}.yMm`} label="Its height above the floor (mm)" />
        <DraftNumber path={`${path}.widthMm`} label="Its width (mm)" />
        <DraftNumber path={`${path}.heightMm`} label="Its height (mm)" />
      </div>
      <DraftNumber
        path={`${path}.clearanceMm`}
        label="Clear space it asks (mm)"
        hint="Empty for your usual"
      />
      <LeafFields path={path} obstacle={obstacle} />
      <Button
        variant="subtle"
        color="gray"
        onClick={() => {
          removed()
          change({ kind: 'remove', path })
        }}
      >
        Take {obstacle.name} off the wall
      </Button>
    </>
  )
}
