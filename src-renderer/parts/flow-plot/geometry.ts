export type Point = { readonly flowC: number; readonly watts: number }
export type Plot = {
  readonly width: number
  readonly height: number
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
  readonly fromC: number
  readonly toC: number
  readonly mostW: number
}

/** The least flow that can be tried: the return must lie above the room. */
export function flowSpan({ roomC, spreadK, flowC }: Span): { readonly fromC: number; readonly toC: number } {
  const fromC = Math.ceil(roomC + spreadK + 1)
  const toC = Math.max(80, Math.ceil(flowC), fromC + 20)
  return { fromC: Math.min(fromC, Math.floor(flowC)), toC: Math.min(110, toC) }
}
type Span = { readonly roomC: number; readonly spreadK: number; readonly flowC: number }

/** A step of 1, 2 or 5 times a power of ten that divides the height into at most five. */
export function stepOf(most: number): number {
  if (!(most > 0)) return 1
  const power = 10 ** Math.floor(Math.log10(most / 5))
  const times = [1, 2, 5, 10].find((one) => one * power * 5 >= most * (1 - 1e-9)) ?? 10
  return times * power
}

/** The top of the scale: the first whole step at or above the largest value. */
export function topOf(most: number): number {
  const step = stepOf(most)
  return Math.max(1, Math.ceil(most / step - 1e-9)) * step
}

export function ticksOf(most: number): readonly number[] {
  const step = stepOf(most)
  return Array.from({ length: Math.round(topOf(most) / step) + 1 }, (_, at) => at * step)
}

/** Whole tens between the ends of the scale. */
export function tensBetween(fromC: number, toC: number): readonly number[] {
  const first = Math.ceil(fromC / 10) * 10
  return Array.from({ length: Math.floor((toC - first) / 10) + 1 }, (_, at) => first + at * 10)
}

export function xAt(plot: Plot, flowC: number): number {
  const share = (flowC - plot.fromC) / (plot.toC - plot.fromC)
  return plot.left + share * (plot.width - plot.left - plot.right)
}

export function yAt(plot: Plot, watts: number): number {
  const share = watts / plot.mostW
  return plot.height - plot.bottom - share * (plot.height - plot.top - plot.bottom)
}

/** Points each whole degree from end to end, the ends included. */
export function curve(fromC: number, toC: number, wattsAt: (flowC: number) => number): readonly Point[] {
  const whole = Array.from({ length: Math.max(0, Math.ceil(toC) - Math.floor(fromC) - 1) }, (_, at) =>
    Math.floor(fromC + 1 + at),
  )
  return [fromC, ...whole, toC].map((flowC) => ({ flowC, watts: wattsAt(flowC) }))
}

/** The points as the path of a line. */
export function pathOf(plot: Plot, points: readonly Point[]): string {
  return points
    .map(
      ({ flowC, watts }, at) =>
        `${at === 0 ? 'M' : 'L'}${tenth(xAt(plot, flowC))} ${tenth(yAt(plot, watts))}`,
    )
    .join('')
}

function tenth(value: number): number {
  return Math.round(value * 10) / 10
}

/** A flow temperature moved by whole kelvins, kept between the ends. */
export function moved(flowC: number, byK: number, { fromC, toC }: { fromC: number; toC: number }): number {
  return Math.min(toC, Math.max(fromC, Math.round((flowC + byK) * 10) / 10))
}
