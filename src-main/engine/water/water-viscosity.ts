const atNoDensity = [1.67752, 2.20462, 0.6366564, -0.241605] as const

/** A power of temperature, a power of density, and a factor: a row of table 2 of IAPWS R12-08. */
type Term = readonly [temperaturePower: number, densityPower: number, factor: number]

const withDensity: readonly Term[] = [
  [0, 0, 0.520094],
  [1, 0, 0.0850895],
  [2, 0, -1.08374],
  [3, 0, -0.289555],
  [0, 1, 0.222531],
  [1, 1, 0.999115],
  [2, 1, 1.88797],
  [3, 1, 1.26613],
  [5, 1, 0.120573],
  [0, 2, -0.281378],
  [1, 2, -0.906851],
  [2, 2, -0.772479],
  [3, 2, -0.489837],
  [4, 2, -0.25704],
  [0, 3, 0.161913],
  [1, 3, 0.257399],
  [0, 4, -0.0325372],
  [3, 4, 0.0698452],
  [4, 5, 0.00872102],
  [3, 6, -0.00435673],
  [5, 6, -0.000593264],
]

/**
 * The viscosity of water, Pa s, without the part that matters only near the critical point: with t = T / 647.096 K and
 * r = rho / 322: 100 sqrt(t) / sum(H / t^i) x exp(r sum H (1 / t - 1)^i (r - 1)^j) micropascal seconds.
 * Throws outside 273.15 to 1173.15 K and above 0 to 1300 kg/m3.
 *
 * @param state kelvin 273.15 to 1173.15; density in kg/m3, up to 1300
 * @source IAPWS R12-08, formulation 2008 for viscosity, equations 10 to 12, recommended for industrial use
 * @example waterViscosityPaS({ kelvin: 298.15, densityKgPerM3: 998 }) // => 0.0008897351
 */
export function waterViscosityPaS(state: {
  readonly kelvin: number
  readonly densityKgPerM3: number
}): number {
  const { kelvin, densityKgPerM3 } = state
  const known = kelvin >= 273.15 && kelvin <= 1173.15 && densityKgPerM3 > 0 && densityKgPerM3 <= 1300
  if (!known) throw new Error(`No viscosity of water at ${kelvin} K and ${densityKgPerM3} kg/m3`)
  const t = kelvin / 647.096
  const r = densityKgPerM3 / 322
  const thin = atNoDensity.reduce((sum, factor, power) => sum + factor / t ** power, 0)
  const thick = withDensity.reduce((sum, [i, j, factor]) => sum + factor * (1 / t - 1) ** i * (r - 1) ** j, 0)
  return ((100 * Math.sqrt(t)) / thin) * Math.exp(r * thick) * 1e-6
}
