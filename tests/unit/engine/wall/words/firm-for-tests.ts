import type { Figures, Fixing } from '../../../../../src-main/domain/figures.ts'

/** Lengths of the tests' own, each named by its setting alone, so that reasons are read and sums are worked by hand. */
const lengths = {
  clearFloorMm: 100,
  clearSkirtingMm: 20,
  clearCeilingMm: 90,
  clearSideMm: 50,
  clearWindowMm: 51,
  clearWindowBoardMm: 52,
  clearDoorMm: 53,
  clearDoorSwingMm: 10,
  clearSocketMm: 54,
  clearSwitchMm: 55,
  clearMirrorMm: 21,
  clearBasinMm: 56,
  clearBathMm: 57,
  clearShelfMm: 58,
  clearOtherMm: 22,
  clearCableMm: 59,
  clearPipeInWallMm: 31,
  valveSideMm: 60,
  valveBodyHalfMm: 20,
  valveDropBesideMm: 25,
  valveDropUnderMm: 65,
  curvedExtraMm: 6,
  valveReachMm: 3,
  riseReachMm: 5,
  tailReachMm: 40,
  pullCopperMm: 15,
  pullPlasticMm: 30,
  pullSteelMm: 0,
  stubMm: 45,
  leastPieceMm: 50,
  clipSpacingCopper15Mm: 500,
  clipSpacingCopper22Mm: 900,
  clipSpacingPlastic15Mm: 300,
  cableZoneMm: 150,
  cableBandHalfMm: 43,
  leanKg: 10,
  studEdgeMm: 10,
  bracketFootMm: 40,
  boardPilotMm: 3,
  boardPilotDepthMm: 18,
  tileEdgeMm: 20,
  thinWallMm: 100,
  longEmitterMm: 1800,
} as const

/** A firm with the tests' own lengths and the fixings that a test brings. */
export function firmOf(...fixings: readonly Fixing[]): Figures {
  const settings = Object.fromEntries(
    Object.entries(lengths).map(([name, value]) => [
      `wall.${name}`,
      { says: name, value, unit: 'Mm', source: 'the firm' },
    ]),
  )
  return { settings, tasks: {}, fixings }
}

/** A plug that carries 100 N each way in masonry, unless a test says otherwise. */
export function plugOf(name: string, more: Partial<Fixing> = {}): Fixing {
  return {
    fixingId: name,
    name,
    builds: ['solidMasonry'],
    holeMm: 8,
    depthMm: 60,
    allowedShearN: 100,
    allowedPullN: 100,
    source: 'the maker',
    ...more,
  }
}
