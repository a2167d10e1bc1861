/** A power of pressure, a power of temperature, and a factor: a row of table 2 of IAPWS R7-97(2012), region 1. */
type Term = readonly [pressurePower: number, temperaturePower: number, factor: number]

const terms: readonly Term[] = [
  [0, -2, 0.14632971213167],
  [0, -1, -0.84548187169114],
  [0, 0, -3.756360367204],
  [0, 1, 3.3855169168385],
  [0, 2, -0.95791963387872],
  [0, 3, 0.15772038513228],
  [0, 4, -0.016616417199501],
  [0, 5, 0.00081214629983568],
  [1, -9, 0.00028319080123804],
  [1, -7, -0.00060706301565874],
  [1, -1, -0.018990068218419],
  [1, 0, -0.032529748770505],
  [1, 1, -0.021841717175414],
  [1, 3, -5.283835796993e-5],
  [2, -3, -0.00047184321073267],
  [2, 0, -0.00030001780793026],
  [2, 1, 4.7661393906987e-5],
  [2, 3, -4.4141845330846e-6],
  [2, 17, -7.2694996297594e-16],
  [3, -4, -3.1679644845054e-5],
  [3, 0, -2.8270797985312e-6],
  [3, 6, -8.5205128120103e-10],
  [4, -5, -2.2425281908e-6],
  [4, -2, -6.5171222895601e-7],
  [4, 10, -1.4341729937924e-13],
  [5, -8, -4.0516996860117e-7],
  [8, -11, -1.2734301741641e-9],
  [8, -6, -1.7424871230634e-10],
  [21, -29, -6.8762131295531e-19],
  [23, -31, 1.4478307828521e-20],
  [29, -38, 2.6335781662795e-23],
  [30, -39, -1.1947622640071e-23],
  [31, -40, 1.8228094581404e-24],
  [32, -41, -9.3537087292458e-26],
]
const gasConstantJPerKgK = 461.526

export type CompressedWater = { readonly densityKgPerM3: number; readonly heatCapacityJPerKgK: number }

/**
 * Density and heat capacity of liquid water, from g = R T sum n (7.1 - pi)^I (tau - 1.222)^J with pi = p / 16.53 MPa and
 * tau = 1386 K / T: rho = p / (R T pi g_pi), c = -R tau^2 g_tautau.
 * Throws outside 273.15 to 623.15 K and above 0 to 100 MPa, where the equation does not hold.
 *
 * @param state kelvin 273.15 to 623.15; pressure in MPa, up to 100; the state must be liquid, or within a degree or two of it
 * @source IAPWS R7-97(2012), industrial formulation, region 1, equation 7
 * @example compressedWater({ kelvin: 300, pressureMPa: 3 }).heatCapacityJPerKgK // => 4173.01218
 */
export function compressedWater(state: {
  readonly kelvin: number
  readonly pressureMPa: number
}): CompressedWater {
  const { kelvin, pressureMPa } = state
  const known = kelvin >= 273.15 && kelvin <= 623.15 && pressureMPa > 0 && pressureMPa <= 100
  if (!known) throw new Error(`No liquid water at ${kelvin} K and ${pressureMPa} MPa`)
  const tau = 1386 / kelvin
  const pressure = 7.1 - pressureMPa / 16.53
  const temperature = tau - 1.222
  const slope = terms.reduce((sum, [i, j, n]) => sum - n * i * pressure ** (i - 1) * temperature ** j, 0)
  const bend = terms.reduce(
    (sum, [i, j, n]) => sum + n * pressure ** i * j * (j - 1) * temperature ** (j - 2),
    0,
  )
  return {
    densityKgPerM3: 16.53e6 / (gasConstantJPerKgK * kelvin * slope),
    heatCapacityJPerKgK: -gasConstantJPerKgK * tau * tau * bend,
  }
}
