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
import { words } from './fields.words.ts'

type Numbers = { readonly board: Board; readonly paths: Paths; readonly placed: Placed }

/** The exact numbers of the thing that is chosen. */
export function Numbers({ board, paths, placed }: Numbers) {
  const { swap, wall } = board.now
  const obstacles = wall.obstacles ?? []
  const things: readonly { readonly thing: Thing; readonly label: string }[] = [
    { thing: 'emitter', label: words.numbers.emitter },
    ...(swap.existing === undefined ? [] : [{ thing: 'old' as const, label: words.numbers.old }]),
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
    <section className={styles.numbers} aria-label={words.numbers.name}>
      <NativeSelect
        label={words.numbers.chosen}
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
        label={words.numbers.centre}
        value={centre.kind === 'at' ? centre.xMm : placed.setOut.centreMm}
        error={useProblemsAt(`${path}.centre.xMm`)}
        set={(xMm) => change({ kind: 'set', path: `${path}.centre`, value: { kind: 'at', xMm } })}
        settle={settle}
      />
      <NumberBox
        label={words.numbers.bottomEdge}
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
        label: words.numbers.backBetween,
        centre: { kind: 'betweenPipes' },
        there: has('left') && has('right'),
      },
      { label: words.numbers.backLeft, centre: { kind: 'fromPipe', side: 'left' }, there: has('left') },
      { label: words.numbers.backRight, centre: { kind: 'fromPipe', side: 'right' }, there: has('right') },
      { label: words.numbers.backMiddle, centre: { kind: 'middleOfWall' }, there: true },
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
      <DraftNumber path={`${path}.leftMm`} label={words.numbers.leftEdge} hint={words.numbers.notMeasured} />
      <DraftNumber path={`${path}.bottomMm`} label={words.numbers.bottom} hint={words.numbers.notMeasured} />
    </>
  )
}

type ObstacleAt = { readonly path: string; readonly obstacle: Obstacle; readonly removed: () => void }

function ObstacleNumbers({ path, obstacle, removed }: ObstacleAt) {
  const { change } = useOpenJob()
  return (
    <>
      <DraftText path={`${path}.name`} label={words.numbers.itsName} />
      <DraftChoice path={`${path}.kind`} label={words.numbers.itsKind} choices={obstacleKinds} />
      <div className={styles.four}>
        <DraftNumber path={`${path}.xMm`} label={words.numbers.fromLeft} />
        <DraftNumber path={`${path}.yMm`} label={words.numbers.aboveFloor} />
        <DraftNumber path={`${path}.widthMm`} label={words.numbers.width} />
        <DraftNumber path={`${path}.heightMm`} label={words.numbers.height} />
      </div>
      <DraftNumber path={`${path}.clearanceMm`} label={words.numbers.clear} hint={words.numbers.clearSays} />
      <LeafFields path={path} obstacle={obstacle} />
      <Button
        variant="subtle"
        color="gray"
        onClick={() => {
          removed()
          change({ kind: 'remove', path })
        }}
      >
        {words.numbers.takeOff(obstacle.name)}
      </Button>
    </>
  )
}
