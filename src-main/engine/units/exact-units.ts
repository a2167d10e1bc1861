/**
 * One Btu (International Table) in joules, exact by definition.
 * @source 5th International Conference on the Properties of Steam, 1956; NIST SP 811 Appendix B
 * @example btuJ // => 1055.05585262
 */
export const btuJ = 1055.05585262

/**
 * 0 degrees Celsius in kelvin, exact by definition.
 * @source SI Brochure, 9th edition, 2.3.1
 * @example zeroCInK // => 273.15
 */
export const zeroCInK = 273.15

/**
 * One inch in millimetres, exact by definition.
 * @source NIST SP 811 Appendix B; Weights and Measures Act 1985, Schedule 1 (the latter from memory)
 * @example inchMm // => 25.4
 */
export const inchMm = 25.4

/**
 * One bar in pascals, exact by definition.
 * @source NIST SP 811 Appendix B (from memory)
 * @example barPa // => 100000
 */
export const barPa = 100_000

const secondsInHour = 3600

/**
 * Heat in Btu an hour from watts: W x 3600 / 1055.05585262.
 * @param watts any finite number of watts
 * @source NIST SP 811 Appendix B
 * @example btuPerHourFromW(1) // => 3.412142
 */
export function btuPerHourFromW(watts: number): number {
  return finite(watts * (secondsInHour / btuJ))
}

/**
 * Heat in watts from Btu an hour: Btu/h x 1055.05585262 / 3600.
 * @param btuPerHour any finite number of Btu an hour
 * @source NIST SP 811 Appendix B
 * @example wFromBtuPerHour(1) // => 0.2930711
 */
export function wFromBtuPerHour(btuPerHour: number): number {
  return finite(btuPerHour * (btuJ / secondsInHour))
}

/** A rule refuses what is not finite before it converts: anything else here is our mistake. */
function finite(quantity: number): number {
  if (!Number.isFinite(quantity)) throw new Error(`A quantity to convert must be finite, not ${quantity}`)
  return quantity
}
