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

type WallAt = { readonly path: string; readonly wall: Wall; readonly roomId: string }

/** One wall, and what stands in the way on it. */
export function WallCard({ path, wall, roomId }: WallAt) {
  const { job, change } = useOpenJob()
  const used = job.swaps.some((swap) => swap.roomId === roomId && swap.wallId === wall.wallId)
  const board = wall.build === 'boardOnStuds' || wall.build === 'boardOnDabs'
  return (
    <Card
      title={wall.name === '' ? 'A wall without a name' : wall.name}
      says="Everything is measured from the wall’s left end and from finished floor, looking at the wall."
      aside={
        used ? null : (
          <Button variant="subtle" color="gray" onClick={() => change({ kind: 'remove', path })}>
            Remove {wall.name}
          </Button>
        )
      }
    >
      <FieldGrid>
        <DraftText path={`${path}.name`} label="Name of the wall" />
        <DraftNumber path={`${path}.widthMm`} label="Width (mm)" />
        <DraftNumber path={`${path}.heightMm`} label="Height (mm)" />
        <DraftChoice path={`${path}.build`} label="Built of" choices={wallBuilds} />
        <DraftChoice path={`${path}.finish`} label="Finish" choices={wallFinishes} />
        <DraftNumber path={`${path}.skirtingHeightMm`} label="Skirting height (mm)" />
        {board ? <DraftNumber path={`${path}.boardMm`} label="Board thickness (mm)" /> : null}
        <DraftNumber
          path={`${path}.thicknessMm`}
          label="Thickness from room to room (mm)"
          hint="Empty if not measured"
        />
      </FieldGrid>
      <WallInside path={path} wall={wall} />
      <Obstacles path={`${path}.obstacles`} wall={wall} />
      <ClearSpace path={`${path}.obstacles`} wall={wall} />
    </Card>
  )
}

const columns = ['Name', 'Kind', 'From the left (mm)', 'Above the floor (mm)', 'Width (mm)', 'Height (mm)']

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
      name: 'Window',
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
      <h3>In the way on this wall</h3>
      {obstacles.length === 0 ? (
        <p>Nothing yet: windows, sills, sockets, basins and doors belong here.</p>
      ) : null}
      {obstacles.length === 0 ? null : (
        <div className={styles.scroll}>
          <table className={styles.table} aria-label={`In the way on ${wall.name}`}>
            <thead>
              <tr>
                {columns.map((column) => (
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
          Add something in the way
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
        <DraftText bare path={`${path}.name`} label={`Name of ${name}`} />
      </td>
      <td className={styles.chosen}>
        <DraftChoice bare path={`${path}.kind`} label={`Kind of ${name}`} choices={obstacleKinds} />
      </td>
      <td className={styles.narrow}>
        <DraftNumber bare path={`${path}.xMm`} label={`${name} from the left (mm)`} />
      </td>
      <td className={styles.narrow}>
        <DraftNumber bare path={`${path}.yMm`} label={`${name} above the floor (mm)`} />
      </td>
      <td className={styles.narrow}>
        <DraftNumber bare path={`${path}.widthMm`} label={`Width of ${name} (mm)`} />
      </td>
      <td className={styles.narrow}>
        <DraftNumber bare path={`${path}.heightMm`} label={`Height of ${name} (mm)`} />
      </td>
      <td>
        <Button
          variant="subtle"
          color="gray"
          aria-label={`Remove ${name}`}
          onClick={() => change({ kind: 'remove', path })}
        >
          Remove
        </Button>
      </td>
    </tr>
  )
}
