import { Button } from '@mantine/core'
import type { Tiles, Wall } from '../../../../src-main/domain/wall.ts'
import { DraftCheck, DraftNumber } from '../../../draft/fields.tsx'
import { useOpenJob } from '../../../draft/use-draft.ts'
import { FieldGrid } from '../../card.tsx'
import styles from '../wall-drawing.module.css'
import { words } from './fields.words.ts'

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
          {words.studs.give}
        </Button>
      </div>
    )
  }
  return (
    <fieldset className={styles.part}>
      <legend>{words.studs.title(wall.name)}</legend>
      <FieldGrid>
        <DraftNumber path={`${path}.firstMm`} label={words.studs.first} />
        <DraftNumber path={`${path}.spacingMm`} label={words.studs.spacing} />
        <DraftNumber path={`${path}.widthMm`} label={words.studs.width} />
      </FieldGrid>
      <Button variant="subtle" color="gray" onClick={() => change({ kind: 'remove', path })}>
        {words.studs.leaveOut}
      </Button>
    </fieldset>
  )
}

function TileFields({ path, wall }: WallAt) {
  const { change } = useOpenJob()
  const tiles = `${path}.tiles`
  return (
    <fieldset className={styles.part}>
      <legend>{words.tiles.title(wall.name)}</legend>
      <FieldGrid>
        <DraftNumber path={`${path}.tiledToMm`} label={words.tiles.upTo} hint={words.tiles.upToSays} />
      </FieldGrid>
      {wall.tiles === undefined ? (
        <Button
          mt="sm"
          variant="default"
          onClick={() => change({ kind: 'set', path: tiles, value: usualTiles })}
        >
          {words.tiles.give}
        </Button>
      ) : (
        <>
          <div className={styles.more}>
            <FieldGrid>
              <DraftNumber path={`${tiles}.widthMm`} label={words.tiles.width} />
              <DraftNumber path={`${tiles}.heightMm`} label={words.tiles.height} />
              <DraftNumber path={`${tiles}.jointMm`} label={words.tiles.joint} />
              <DraftNumber path={`${tiles}.xMm`} label={words.tiles.crossingX} />
              <DraftNumber path={`${tiles}.yMm`} label={words.tiles.crossingY} />
            </FieldGrid>
          </div>
          <div className={styles.more}>
            <DraftCheck path={`${tiles}.halfBond`} label={words.tiles.halfBond} optional />
          </div>
          <Button variant="subtle" color="gray" onClick={() => change({ kind: 'remove', path: tiles })}>
            {words.tiles.leaveOut}
          </Button>
        </>
      )}
    </fieldset>
  )
}
