import { figure } from '../../../domain/figures.ts'
import type { Figures } from '../../../domain/figures.ts'
import type { Tiles, Wall } from '../../../domain/wall.ts'

type Place = { readonly xMm: number; readonly yMm: number }
type Tiled = Pick<Wall, 'finish' | 'tiles' | 'tiledToMm'>

/**
 * What a hole is drilled through: tile up to where a tiled wall is tiled, plaster with its paint above; else the wall's own finish.
 * @param yMm height of the hole above finished floor, mm
 * @param wall its finish and how high it is tiled, mm
 * @source practice, no published source
 * @example finishAt(1210, { finish: 'tile', tiledToMm: 1200 }) // => "paint"
 */
export function finishAt(yMm: number, { finish, tiledToMm }: Tiled): Wall['finish'] {
  return finish === 'tile' && tiledToMm !== undefined && yMm > tiledToMm ? 'paint' : finish
}

/**
 * From the middle of a hole to the nearest edge of its tile, mm: with pitch p = tile + joint and u = place - datum, past the nearest
 * grout line to the left (below): the lesser of u - joint/2 and p - joint/2 - u, sideways and in height; the top of the tiling is an
 * edge too. Negative in a joint. In half bond every second row is p/2 over.
 *
 * @param hole its middle, mm from the wall's left end and finished floor, no higher than the tiling
 * @param tiles tile and joint (mm), datum at a grout crossing
 * @param tiledToMm top of the tiling, mm; absent: tiled to the ceiling
 * @source plane geometry
 * @example tileEdgeMm({ xMm: 230, yMm: 100 }, { widthMm: 198, heightMm: 198, jointMm: 2, xMm: 0, yMm: 0 }) // => 29
 */
export function tileEdgeMm({ xMm, yMm }: Place, tiles: Tiles, tiledToMm?: number): number {
  const top = tiledToMm === undefined ? Number.MAX_VALUE : tiledToMm - yMm
  return Math.min(sidewaysMm(xMm, yMm, tiles), upMm(yMm, tiles), top)
}

/** How far the emitter may be moved along the wall until every hole is well inside its tile. */
export type TileMoves = { readonly leftMm: number | null; readonly rightMm: number | null }

/**
 * The least move to each side that brings every hole well inside its tile, all at once; null where no move within one tile does, or
 * where the emitter may not go there. It must be tried only where some hole is too near an edge. Each hole asks that it lands between
 * joint/2 + t and pitch - joint/2 - t past a grout line; the least move is one at which some hole only just does.
 *
 * @param holes those in tile, mm
 * @param grid the tiles, and where their top is (mm), if not at the ceiling
 * @param rules t = least distance from an edge (mm, 0 or above); whether the emitter may go that far, mm, to the right positive
 * @source plane geometry
 * @example tileMoves([{ xMm: 195, yMm: 100 }], { tiles: { widthMm: 198, heightMm: 198, jointMm: 2, xMm: 0, yMm: 0 } }, { needMm: 20, mayMove: () => true }) // => { leftMm: 16, rightMm: 26 }
 */
export function tileMoves(
  holes: readonly Place[],
  { tiles, tiledToMm }: { readonly tiles: Tiles; readonly tiledToMm?: number | undefined },
  { needMm, mayMove }: { readonly needMm: number; readonly mayMove: (byMm: number) => boolean },
): TileMoves {
  const clears = (byMm: number) =>
    holes.every(
      ({ xMm, yMm }) => tileEdgeMm({ xMm: xMm + byMm, yMm }, tiles, tiledToMm) >= needMm - roundingMm,
    )
  const pitch = tiles.widthMm + tiles.jointMm
  const past = holes.map(({ xMm, yMm }) => pastJoint(xMm, offsetOf(yMm, tiles), pitch))
  const low = tiles.jointMm / 2 + needMm
  const least = (ways: readonly number[]) =>
    ways.toSorted((a, b) => Math.abs(a) - Math.abs(b)).find((by) => clears(by) && mayMove(by)) ?? null
  const rightMm = least(past.map((at) => (low - at + pitch) % pitch))
  const left = least(past.map((at) => -((at - (pitch - low) + pitch) % pitch)))
  return { leftMm: left === null ? null : Math.abs(left), rightMm }
}

/**
 * The least distance of a hole from the edge of its tile, by the firm's figures, mm.
 * @param figures the firm's figures: wall.tileEdgeMm
 * @source practice, no published source
 * @example leastTileEdgeMm({ settings: { 'wall.tileEdgeMm': { value: 20 } } }) // => 20
 */
export function leastTileEdgeMm(figures: Figures): number {
  return figure(figures, 'wall.tileEdgeMm')
}

/** Sums of measured tenths come out this near. */
const roundingMm = 1e-6

function sidewaysMm(xMm: number, yMm: number, tiles: Tiles): number {
  return betweenJoints(pastJoint(xMm, offsetOf(yMm, tiles), tiles.widthMm + tiles.jointMm), {
    pitch: tiles.widthMm + tiles.jointMm,
    jointMm: tiles.jointMm,
  })
}

function upMm(yMm: number, { heightMm, jointMm, yMm: datum }: Tiles): number {
  const pitch = heightMm + jointMm
  return betweenJoints(pastJoint(yMm, datum, pitch), { pitch, jointMm })
}

function betweenJoints(
  past: number,
  { pitch, jointMm }: { readonly pitch: number; readonly jointMm: number },
): number {
  return Math.min(past, pitch - past) - jointMm / 2
}

/** Where the upright grout lines of the row at some height start from. */
function offsetOf(yMm: number, { xMm, yMm: datum, widthMm, heightMm, jointMm, halfBond }: Tiles): number {
  const row = Math.floor((yMm - datum) / (heightMm + jointMm))
  return halfBond === true && row % 2 !== 0 ? xMm + (widthMm + jointMm) / 2 : xMm
}

/** How far a place lies past the middle of the last grout line before it: 0 up to the pitch. */
function pastJoint(placeMm: number, datumMm: number, pitch: number): number {
  const past = (placeMm - datumMm) % pitch
  return past < 0 ? past + pitch : past
}
