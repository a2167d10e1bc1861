/** How the water runs: in layers, in eddies, or between the two. */
export type Regime = 'laminar' | 'transition' | 'turbulent'
export type Friction = { readonly frictionFactor: number; readonly regime: Regime }

const laminarToRe = 2300
const turbulentFromRe = 4000

/**
 * Colebrook-White is drawn up to this roughness over bore.
 * @source Moody chart, relative roughness 0 to 0.05
 * @example mostRelativeRoughness // => 0.05
 */
export const mostRelativeRoughness = 0.05

/**
 * Darcy's friction factor f of a pipe.
 * Laminar, Re <= 2300: 64 / Re. Turbulent, Re >= 4000: 1 / sqrt(f) = -2 log10(k / 3.7 + 2.51 / (Re sqrt(f))), solved until
 * it stands still. Between, `transition`: a straight line in Re from one to the other, so that f nowhere jumps and the loss
 * always rises with the flow.
 * Throws for Re not above 0 or a relative roughness outside 0 to 0.05: `pipeLoss` refuses those first.
 *
 * @param point Reynolds number, and roughness over bore
 * @source Hagen-Poiseuille; Colebrook 1939; the line between: practice, no published source
 * @example darcyFriction({ reynolds: 100000, relativeRoughness: 0.0001 }).frictionFactor // => 0.0185139
 */
export function darcyFriction(point: {
  readonly reynolds: number
  readonly relativeRoughness: number
}): Friction {
  const { reynolds, relativeRoughness } = point
  const known = reynolds >= 1e-300 && Number.isFinite(reynolds)
  if (!known || !(relativeRoughness >= 0 && relativeRoughness <= mostRelativeRoughness)) {
    throw new Error(`No friction factor at Re ${reynolds} and relative roughness ${relativeRoughness}`)
  }
  if (reynolds <= laminarToRe) return { frictionFactor: 64 / reynolds, regime: 'laminar' }
  if (reynolds >= turbulentFromRe) {
    return { frictionFactor: colebrookWhite(reynolds, relativeRoughness), regime: 'turbulent' }
  }
  const laminar = 64 / laminarToRe
  const turbulent = colebrookWhite(turbulentFromRe, relativeRoughness)
  const share = (reynolds - laminarToRe) / (turbulentFromRe - laminarToRe)
  return { frictionFactor: laminar + share * (turbulent - laminar), regime: 'transition' }
}

/** Newton's steps on x = 1 / sqrt(f): x + 2 log10(k / 3.7 + 2.51 x / Re) = 0. */
function colebrookWhite(reynolds: number, relativeRoughness: number): number {
  const rough = relativeRoughness / 3.7
  const smooth = 2.51 / reynolds
  let x = 7
  for (let step = 0; step < 50; step += 1) {
    const inside = rough + smooth * x
    const miss = x + 2 * Math.log10(inside)
    const slope = 1 + (2 / Math.LN10) * (smooth / inside)
    const next = x - miss / slope
    if (Math.abs(next - x) <= 1e-13 * next) return 1 / (next * next)
    x = next
  }
  throw new Error(
    `Colebrook-White did not settle at Re ${reynolds} and relative roughness ${relativeRoughness}`,
  )
}
