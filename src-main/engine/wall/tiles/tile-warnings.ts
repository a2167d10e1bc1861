import type { Figures } from '../../../domain/figures.ts'
import type { SetOutHole } from '../../../domain/set-out.ts'
import type { Wall } from '../../../domain/wall.ts'
import { listInWords, mmInWords } from '../in-words.ts'
import { finishAt, leastTileEdgeMm, tileEdgeMm, tileMoves } from './tile-grid.ts'
import type { TileMoves } from './tile-grid.ts'

type Hole = Pick<SetOutHole, 'id' | 'xMm' | 'yMm'>
type Tiled = Pick<Wall, 'finish' | 'tiles' | 'tiledToMm'>

/**
 * What a hole meets at the surface: its finish, where the wall is part tiled, and its distance from the edge of its tile, where the grid
 * is known.
 * @param hole its middle, mm
 * @param wall its finish, tiles and how high they go, mm
 * @source practice, no published source
 * @example surfaceAt({ xMm: 230, yMm: 100 }, { finish: 'tile', tiles: { widthMm: 198, heightMm: 198, jointMm: 2, xMm: 0, yMm: 0 } }).tileEdgeMm // => 29
 */
export function surfaceAt(
  { xMm, yMm }: Pick<Hole, 'xMm' | 'yMm'>,
  wall: Tiled,
): Pick<SetOutHole, 'finish' | 'tileEdgeMm'> {
  const { finish, tiles, tiledToMm } = wall
  if (finish !== 'tile') return {}
  const here = finishAt(yMm, wall)
  return {
    ...(tiledToMm === undefined ? {} : { finish: here }),
    ...(tiles === undefined || here !== 'tile'
      ? {}
      : { tileEdgeMm: tileEdgeMm({ xMm, yMm }, tiles, tiledToMm) }),
  }
}

/**
 * What to mind about tiles: each hole nearer the edge of its tile than the firm allows, with its distance, and the least moves along
 * the wall that bring all holes clear at once, within the emitter's room; holes through tile and through plaster on a wall that is part
 * tiled; and the depth, which is into the wall itself.
 *
 * @param holes on the wall, mm
 * @param wall its finish, tiles and how high they go, mm
 * @param rules the firm's figures: wall.tileEdgeMm; whether the emitter may be moved so far, mm, to the right positive
 * @source practice, no published source
 * @example tileWarnings([{ id: 'A1', xMm: 5, yMm: 5 }], { finish: 'paint' }, { figures: { settings: {} }, mayMove: () => true }) // => []
 */
export function tileWarnings(
  holes: readonly Hole[],
  wall: Tiled,
  { figures, mayMove }: { readonly figures: Figures; readonly mayMove: (byMm: number) => boolean },
): readonly string[] {
  const inTile = holes.filter((hole) => finishAt(hole.yMm, wall) === 'tile')
  if (inTile.length === 0) return []
  const part =
    inTile.length === holes.length
      ? []
      : [
          `Part tiled: ${named(inTile)} ${inTile.length === 1 ? 'goes' : 'go'} through tile, ${named(holes.filter((hole) => !inTile.includes(hole)))} through plaster.`,
        ]
  const depth =
    'Tiled wall: depths are into the wall itself, so add the thickness of the tile, and push each plug in behind it.'
  return [...nearEdge(inTile, wall, { figures, mayMove }), ...part, depth]
}

type Rules = Parameters<typeof tileWarnings>[2]

function nearEdge(holes: readonly Hole[], wall: Tiled, { figures, mayMove }: Rules): readonly string[] {
  const { tiles, tiledToMm } = wall
  if (tiles === undefined) return []
  const needMm = leastTileEdgeMm(figures)
  const near = holes.flatMap((hole) => {
    const edgeMm = tileEdgeMm(hole, tiles, tiledToMm)
    return edgeMm < needMm - 1e-6 ? [{ hole, edgeMm }] : []
  })
  if (near.length === 0) return []
  const each = near.map(({ hole, edgeMm }) =>
    edgeMm < 0 ? `${hole.id} in a joint` : `${hole.id} ${mmInWords(edgeMm)}`,
  )
  const moves = movesInWords(tileMoves(holes, { tiles, tiledToMm }, { needMm, mayMove }))
  return [`Too near the edge of a tile (${mmInWords(needMm)} is needed): ${listInWords(each)}. ${moves}`]
}

function movesInWords({ leftMm, rightMm }: TileMoves): string {
  const ways = [
    ...(leftMm === null ? [] : [`${mmInWords(leftMm)} to the left`]),
    ...(rightMm === null ? [] : [`${mmInWords(rightMm)} to the right`]),
  ]
  if (ways.length === 0) return 'No move along the wall clears them all.'
  return `A move of ${ways.join(' or ')} clears them all, but the pipes move away by as much or come nearer.`
}

function named(holes: readonly Hole[]): string {
  return `${holes.length === 1 ? 'hole' : 'holes'} ${listInWords(holes.map((hole) => hole.id))}`
}
