import { Button } from '@mantine/core'
import type { Wall } from '../../../src-main/domain/wall.ts'
import { DraftChoice, DraftNumber, DraftText } from '../../draft/fields.tsx'
import { useOpenJob } from '../../draft/use-draft.ts'
import { Card, FieldGrid, Row } from '../../parts/card.tsx'
import { AddThings } from '../../parts/wall-drawing/fields/add-things.tsx'
import { LeafFields } from '../../parts/wall-drawing/fields/leaf-fields.tsx'
import { WallInside } from '../../parts/wall-drawing/fields/wall-fields.tsx'
import { obstacleKinds, wallBuilds, wallFinishes } from '../../parts/words.ts'
import styles from './job.module.css'
import { freeId } from './new-things.ts'
import { ClearSpace } from './wall/clear-space.tsx'
import { words } from './job.words.ts'

type WallAt = { readonly path: string; readonly wall: Wall; readonly roomId: string }

/** One wall, and what stands in the way on it. */
export function WallCard({ path, wall, roomId }: WallAt) {
  const { job, change } = useOpenJob()
  const used = job.swaps.some((swap) => swap.roomId === roomId && swap.wallId === wall.wallId)
  const board = wall.build === 'boardOnStuds' || wall.build === 'boardOnDabs'
  return (
    <Card
      title={wall.name === '' ? words.wall.unnamed : wall.name}
      says={words.wall.says}
      aside={
        used ? null : (
          <Button variant="subtle" color="gray" onClick={() => change({ kind: 'remove', path })}>
            {words.wall.removeNamed(wall.name)}
          </Button>
        )
      }
    >
      <FieldGrid>
        <DraftText path={`${path}.name`} label={words.wall.name} />
        <DraftNumber path={`${path}.widthMm`} label={words.wall.width} />
        <DraftNumber path={`${path}.heightMm`} label={words.wall.height} />
        <DraftChoice path={`${path}.build`} label={words.wall.build} choices={wallBuilds} />
        <DraftChoice path={`${path}.finish`} label={words.wall.finish} choices={wallFinishes} />
        <DraftNumber path={`${path}.skirtingHeightMm`} label={words.wall.skirting} />
        {board ? <DraftNumber path={`${path}.boardMm`} label={words.wall.board} /> : null}
        <DraftNumber
          path={`${path}.thicknessMm`}
          label={words.wall.thickness}
          hint={words.wall.thicknessHint}
        />
      </FieldGrid>
      <WallInside path={path} wall={wall} />
      <Obstacles path={`${path}.obstacles`} wall={wall} />
      <ClearSpace path={`${path}.obstacles`} wall={wall} />
    </Card>
  )
}

function Obstacles({ path, wall }: { readonly path: string; readonly wall: Wall }) {
  const { change } = useOpenJob()
  const obstacles = wall.obstacles ?? []
  const add = () => {
    const obstacleId = freeId(
      'obstacle',
      obstacles.map((one) => one.obstacleId),
    )
    const value = {
      obstacleId,
      name: words.inWay.fresh,
      kind: 'window',
      xMm: 0,
      yMm: 900,
      widthMm: 1000,
      heightMm: 1000,
    }
    change({ kind: 'add', path, value })
  }
  return (
    <div className={styles.more}>
      <h3>{words.inWay.title}</h3>
      {obstacles.length === 0 ? <p>{words.inWay.none}</p> : null}
      {obstacles.length === 0 ? null : (
        <div className={styles.scroll}>
          <table className={styles.table} aria-label={words.inWay.table(wall.name)}>
            <thead>
              <tr>
                {words.inWay.columns.map((column) => (
                  <th key={column} scope="col">
                    {column}
                  </th>
                ))}
                <td />
              </tr>
            </thead>
            <tbody>
              {obstacles.map((obstacle, at) => (
                <ObstacleRow key={obstacle.obstacleId} path={`${path}[${at}]`} name={obstacle.name} />
              ))}
            </tbody>
          </table>
        </div>
      )}
      {obstacles.map((obstacle, at) => (
        <LeafFields key={obstacle.obstacleId} path={`${path}[${at}]`} obstacle={obstacle} />
      ))}
      <Row>
        <Button variant="default" onClick={add}>
          {words.inWay.add}
        </Button>
      </Row>
      <AddThings wall={wall} add={(value) => change({ kind: 'add', path, value })} />
    </div>
  )
}

function ObstacleRow({ path, name }: { readonly path: string; readonly name: string }) {
  const { change } = useOpenJob()
  return (
    <tr>
      <td className={styles.chosen}>
        <DraftText bare path={`${path}.name`} label={words.inWay.name(name)} />
      </td>
      <td className={styles.chosen}>
        <DraftChoice bare path={`${path}.kind`} label={words.inWay.kind(name)} choices={obstacleKinds} />
      </td>
      <td className={styles.narrow}>
        <DraftNumber bare path={`${path}.xMm`} label={words.inWay.fromLeft(name)} />
      </td>
      <td className={styles.narrow}>
        <DraftNumber bare path={`${path}.yMm`} label={words.inWay.aboveFloor(name)} />
      </td>
      <td className={styles.narrow}>
        <DraftNumber bare path={`${path}.widthMm`} label={words.inWay.width(name)} />
      </td>
      <td className={styles.narrow}>
        <DraftNumber bare path={`${path}.heightMm`} label={words.inWay.height(name)} />
      </td>
      <td>
        <Button
          variant="subtle"
          color="gray"
          aria-label={words.inWay.removeNamed(name)}
          onClick={() => change({ kind: 'remove', path })}
        >
          {words.inWay.remove}
        </Button>
      </td>
    </tr>
  )
}
