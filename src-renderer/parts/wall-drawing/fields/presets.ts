import type { Obstacle } from '../../../../src-main/domain/wall.ts'
import { words } from './fields.words.ts'

const names = words.presets

/** Something often found on a wall, with its usual size; sizes and heights are practice, no published source, unless said. */
export type Preset = Omit<Obstacle, 'obstacleId' | 'xMm'> & { readonly label: string }

export const presets: readonly Preset[] = [
  { label: names.window, name: names.window, kind: 'window', yMm: 1000, widthMm: 1200, heightMm: 1050 },
  {
    label: names.windowBoard,
    name: names.windowBoard,
    kind: 'windowBoard',
    yMm: 970,
    widthMm: 1300,
    heightMm: 30,
  },
  // BS 1363 double plate, 146 x 86 mm (from memory); its middle 450 mm up, the lowest that Approved Document M asks (from memory).
  { label: names.socketPair, name: names.socketPair, kind: 'socket', yMm: 407, widthMm: 146, heightMm: 86 },
  { label: names.lightSwitch, name: names.lightSwitch, kind: 'switch', yMm: 1057, widthMm: 86, heightMm: 86 },
  {
    // A leaf of 762 x 1981 mm (2 ft 6 in by 6 ft 6 in), from memory.
    label: names.doorWithLeaf,
    name: names.door,
    kind: 'door',
    yMm: 0,
    widthMm: 826,
    heightMm: 2013,
    leaf: { in: 'thisWall', hinge: 'left', leafMm: 762, opensIntoRoom: true },
  },
  { label: names.basin, name: names.basin, kind: 'basin', yMm: 600, widthMm: 550, heightMm: 250 },
  { label: names.bathEdge, name: names.bath, kind: 'bath', yMm: 0, widthMm: 1700, heightMm: 550 },
]

/** A usual thing in the middle of the wall, to be moved from there; its name is counted on where it is taken. */
export function placedPreset(
  usual: Preset,
  wall: { readonly widthMm: number; readonly obstacles?: readonly Obstacle[] | undefined },
): Obstacle {
  const others = wall.obstacles ?? []
  const { label, ...preset } = usual
  return {
    obstacleId: freeObstacleId(others),
    ...preset,
    name: freeName(preset.name === '' ? label : preset.name, others),
    xMm: Math.max(0, Math.round((wall.widthMm - preset.widthMm) / 2)),
  }
}

export function freeObstacleId(others: readonly Pick<Obstacle, 'obstacleId'>[]): string {
  const taken = new Set(others.map(({ obstacleId }) => obstacleId))
  const free = Array.from({ length: others.length + 1 }, (_, nth) => `obstacle-${nth + 1}`)
  return free.find((id) => !taken.has(id)) ?? 'obstacle'
}

export function freeName(name: string, others: readonly Pick<Obstacle, 'name'>[]): string {
  const taken = new Set(others.map((one) => one.name))
  const names = [name, ...Array.from({ length: others.length + 1 }, (_, nth) => `${name} ${nth + 2}`)]
  return names.find((one) => !taken.has(one)) ?? name
}
