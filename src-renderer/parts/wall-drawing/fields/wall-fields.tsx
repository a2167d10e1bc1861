import { Button } from '@mantine/core'
import type { Tiles, Wall } from '../../../../src-main/domain/wall.ts'
import { DraftCheck, DraftNumber } from '../../../draft/fields.tsx'
import { useOpenJob } from '../../../draft/use-draft.ts'
import { FieldGrid } from '../../card.tsx'
import styles from '../wall-drawing.module.css'

type WallAt = { readonly path: string; readonly wall: Wall }

/** Where studs usually stand: 400 mm apart, 47 mm wide (practice, no published source). */
const usualStuds = { firstMm: 0, spacingMm: 400, widthMm: 47 }
/** A common tile, laid from the left end and the floor (practice, no published source). */
const usualTiles: Tiles = { widthMm: 300, heightMm: 200, jointMm: 2, xMm: 0, yMm: 0 }

/** What is behind a board, and what is on a tiled wall. */
export function WallInside({ path, wall }: WallAt) {
  return (
    <>
      {wall.build === 'boardOnStuds' ? (
        <Studs path={`${path}.studs`} known={wall.studs !== undefined} wall={wall} />
      ) : null}
      {wall.finish === 'tile' ? <TileFields path={path} wall={wall} /> : null}
    </>
  )
}

type Part = { readonly path: string; readonly known: boolean; readonly wall: Wall }

function Studs({ path, known, wall }: Part) {
  const { change } = useOpenJob()
  if (!known) {
    return (
      <div className={styles.more}>
        <Button variant="default" onClick={() => change({ kind: 'set', path, value: usualStuds })}>
          Give the studs
        </Button>
      </div>
    )
  }
  return (
    <fieldset className={styles.part}>
      <legend>Studs of {wall.name}</legend>
      <FieldGrid>
        <DraftNumber path={`${path}.firstMm`} label="First stud’s middle (mm)" />
        <DraftNumber path={`${path}.spacingMm`} label="Stud spacing (mm)" />
        <DraftNumber path={`${path}.widthMm`} label="Stud width (mm)" />
      </FieldGrid>
      <Button variant="subtle" color="gray" onClick={() => change({ kind: 'remove', path })}>
        Leave the studs out
      </Button>
    </fieldset>
  )
}

function TileFields({ path, wall }: WallAt) {
  const { change } = useOpenJob()
  const tiles = `${path}.tiles`
  return (
    <fieldset className={styles.part}>
      <legend>Tiles of {wall.name}</legend>
      <FieldGrid>
        <DraftNumber path={`${path}.tiledToMm`} label="Tiled up to (mm)" hint="Empty if to the ceiling" />
      </FieldGrid>
      {wall.tiles === undefined ? (
        <Button
          mt="sm"
          variant="default"
          onClick={() => change({ kind: 'set', path: tiles, value: usualTiles })}
        >
          Give the size of the tiles
        </Button>
      ) : (
        <>
          <div className={styles.more}>
            <FieldGrid>
              <DraftNumber path={`${tiles}.widthMm`} label="Tile width (mm)" />
              <DraftNumber path={`${tiles}.heightMm`} label="Tile height (mm)" />
              <DraftNumber path={`${tiles}.jointMm`} label="Joint (mm)" />
              <DraftNumber path={`${tiles}.xMm`} label="A joint crossing, from the left (mm)" />
              <DraftNumber path={`${tiles}.yMm`} label="The same crossing, above the floor (mm)" />
            </FieldGrid>
          </div>
          <div className={styles.more}>
            <DraftCheck path={`${tiles}.halfBond`} label="Laid half over, like bricks" optional />
          </div>
          <Button variant="subtle" color="gray" onClick={() => change({ kind: 'remove', path: tiles })}>
            Leave the tile sizes out
          </Button>
        </>
      )}
    </fieldset>
  )
}
