import { z } from 'zod'
import { count, distanceMm, key, line, list, optionalLine, placeMm, record, sizeMm } from './schema.ts'

/** What a wall is made of, as far as a fixing minds. */
export const wallBuild = z.enum([
  'solidMasonry',
  'hollowBlock',
  'aeratedBlock',
  'boardOnStuds',
  'boardOnDabs',
])
export type WallBuild = z.infer<typeof wallBuild>

export const wallFinish = z.enum(['paint', 'paper', 'tile', 'bare'])
export type WallFinish = z.infer<typeof wallFinish>

export const obstacleKind = z.enum([
  'window',
  'windowBoard',
  'door',
  'doorSwing',
  'socket',
  'switch',
  'mirror',
  'basin',
  'bath',
  'shelf',
  'cable',
  'pipeInWall',
  'other',
])
export type ObstacleKind = z.infer<typeof obstacleKind>

export const side = z.enum(['left', 'right'])
export type Side = z.infer<typeof side>

/** How wide a leaf opens, in degrees from closed; a quarter circle where nobody measured it. */
const opensDeg = z.number().gte(1).lte(180)

/**
 * A door's leaf and its hinges. In this wall they are at the left or right end of the door's rectangle. In the wall that meets this
 * one at a corner they are on the near or the far upright of its frame; `jambMm` is the near one's distance from this wall.
 */
export const doorLeaf = z.discriminatedUnion('in', [
  record({
    in: z.literal('thisWall'),
    hinge: side,
    leafMm: sizeMm,
    opensIntoRoom: z.boolean(),
    opensDeg: opensDeg.optional(),
  }),
  record({
    in: z.literal('wallAtCorner'),
    corner: side,
    hinge: z.enum(['near', 'far']),
    jambMm: distanceMm,
    leafMm: sizeMm,
    opensIntoRoom: z.boolean(),
    opensDeg: opensDeg.optional(),
  }),
])
export type DoorLeaf = z.infer<typeof doorLeaf>

/** A rectangle on the wall; `xMm`, `yMm` is its bottom left corner, from the wall's left end and finished floor. */
export const obstacle = record({
  obstacleId: key,
  name: line,
  kind: obstacleKind,
  xMm: placeMm,
  yMm: placeMm,
  widthMm: distanceMm,
  heightMm: distanceMm,
  /** Clear space it asks all round; when absent, the firm's setting for its kind. */
  clearanceMm: distanceMm.optional(),
  /** A door's leaf: with it the swing is worked out; of a door in the wall at a corner, only the heights of the rectangle count. */
  leaf: doorLeaf.optional(),
})
export type Obstacle = z.infer<typeof obstacle>

/** Upright timbers behind a board wall: the first one's middle, then one at each spacing. */
export const studs = record({ firstMm: placeMm, spacingMm: sizeMm, widthMm: sizeMm })
export type Studs = z.infer<typeof studs>

/**
 * The grid of a tiled wall. `xMm`, `yMm` is the middle of a grout crossing, from the wall's left end and finished floor; in half bond
 * every second row, counted from that crossing up, is half a tile over.
 */
export const tiles = record({
  widthMm: sizeMm,
  heightMm: sizeMm,
  jointMm: distanceMm.lte(50),
  xMm: placeMm,
  yMm: placeMm,
  halfBond: z.boolean().optional(),
})
export type Tiles = z.infer<typeof tiles>

export const wall = record({
  wallId: key,
  name: line,
  widthMm: sizeMm,
  heightMm: sizeMm,
  build: wallBuild,
  finish: wallFinish,
  boardMm: distanceMm.optional(),
  skirtingHeightMm: distanceMm.optional(),
  studs: studs.optional(),
  tiles: tiles.optional(),
  /** How high a tiled wall is tiled; plaster above. When absent, to the ceiling. */
  tiledToMm: distanceMm.optional(),
  /** From face to face, of a wall between rooms. */
  thicknessMm: sizeMm.optional(),
  obstacles: list(obstacle, 100).optional(),
})
export type Wall = z.infer<typeof wall>

export const pipeMaterial = z.enum(['copper', 'plastic', 'steel'])
export const pipeSizeMm = z.union([z.literal(8), z.literal(10), z.literal(15), z.literal(22)])
export type PipeSizeMm = z.infer<typeof pipeSizeMm>

/** A pipe end as found at the wall. */
export const pipe = record({
  side,
  xMm: placeMm,
  from: z.enum(['floor', 'wall']),
  /** How far the pipe's middle stands off the finished wall. */
  offWallMm: distanceMm.optional(),
  /** Height at which a pipe comes out of the wall. */
  yMm: placeMm.optional(),
  material: pipeMaterial,
  outsideMm: pipeSizeMm,
  carries: z.enum(['flow', 'return', 'unknown']),
  /** True where the pipe cannot be moved (in a screed, behind tiles that stay). */
  fixed: z.boolean().optional(),
  /** Length that runs through an unheated void on its way, for insulation. */
  coldVoidMm: distanceMm.optional(),
})
export type Pipe = z.infer<typeof pipe>

export const centreChoice = z.discriminatedUnion('kind', [
  record({ kind: z.literal('betweenPipes') }),
  record({ kind: z.literal('fromPipe'), side }),
  record({ kind: z.literal('middleOfWall') }),
  record({ kind: z.literal('at'), xMm: placeMm }),
])
export type CentreChoice = z.infer<typeof centreChoice>

/**
 * Where an old fixing sits: its middle, from the wall's left end and finished floor. `count` is how many holes are there close
 * together; one when absent.
 */
export const oldHolePlace = record({ xMm: placeMm, yMm: placeMm, count: z.int().gte(1).lte(20).optional() })

export type OldHolePlace = z.infer<typeof oldHolePlace>

/** An emitter on a wall now. */
export const existingEmitter = record({
  name: line,
  widthMm: sizeMm,
  heightMm: sizeMm,
  /** Its left edge from the wall's left end, and its bottom edge above finished floor, where they were measured. */
  leftMm: placeMm.optional(),
  bottomMm: distanceMm.optional(),
  ratedW: z.number().gt(0).lte(100_000).optional(),
  dryKg: z.number().gt(0).lte(500).optional(),
  waterLitres: z.number().gte(0).lte(200).optional(),
  oldHoles: record({
    /** All of them, where nobody measured where they are; `at` counts in its place once it has any. */
    count,
    diameterMm: sizeMm.lte(100),
    depthMm: sizeMm.lte(300),
    at: list(oldHolePlace, 40).optional(),
  }).optional(),
  /** Brackets whose marks on the wall want touching up. */
  brackets: count.optional(),
  note: optionalLine.optional(),
})
export type ExistingEmitter = z.infer<typeof existingEmitter>

/** The places where old holes were measured; none where they were only counted. */
export function measuredOldHoles(existing: ExistingEmitter | undefined): readonly OldHolePlace[] {
  return existing?.oldHoles?.at ?? []
}

/** How many old holes there are: those measured one by one, otherwise as many as were counted. */
export function oldHoleCount(existing: ExistingEmitter | undefined): number {
  const measured = measuredOldHoles(existing)
  if (measured.length === 0) return existing?.oldHoles?.count ?? 0
  return measured.reduce((sum, place) => sum + (place.count ?? 1), 0)
}
