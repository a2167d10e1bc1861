/** A margin as a share of the price before tax, to a tenth of a percent: "27.4 %"; a dash where there is no price. */
export function marginShare(marginPence: number, netPence: number): string {
  return netPence === 0 ? '–' : `${((marginPence / netPence) * 100).toFixed(1)} %`
}
