import { OPS, getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'

/** One drawn path of a page, in points from its lower left corner. */
export type DrawnPath = {
  readonly left: number
  readonly right: number
  readonly low: number
  readonly high: number
  readonly curves: number
  readonly isStroked: boolean
  readonly colour: string
  readonly dash: readonly number[]
}

type Matrix = readonly [number, number, number, number, number, number]
type State = {
  readonly at: Matrix
  readonly stroke: string
  readonly fill: string
  readonly dash: readonly number[]
}

const whole: Matrix = [1, 0, 0, 1, 0, 0]

/** `inner` first, then `outer`: as a PDF joins what it transforms (ISO 32000-1, 8.3.4). */
function joined(outer: Matrix, [a, b, c, d, e, f]: Matrix): Matrix {
  const [A, B, C, D, E, F] = outer
  return [A * a + C * b, B * a + D * b, A * c + C * d, B * c + D * d, A * e + C * f + E, B * e + D * f + F]
}

/** Every stroked or filled path of one page, in the order in which it is drawn. */
export async function drawnPaths(bytes: Uint8Array, page: number): Promise<readonly DrawnPath[]> {
  const loading = getDocument({ data: new Uint8Array(bytes), useSystemFonts: false, verbosity: 0 })
  const { fnArray, argsArray } = await (await (await loading.promise).getPage(page)).getOperatorList()
  await loading.destroy()
  let state: State = { at: whole, stroke: '#000000', fill: '#000000', dash: [] }
  const kept: State[] = []
  return fnArray.flatMap((operator, nth) => {
    const given: unknown = argsArray[nth]
    const values = Array.isArray(given) ? (given as readonly unknown[]) : []
    if (operator === OPS.save) kept.push(state)
    else if (operator === OPS.restore) state = kept.pop() ?? state
    else if (operator === OPS.constructPath) return pathOf(values, state)
    else state = changed(state, operator, values)
    return []
  })
}

function changed(state: State, operator: number, values: readonly unknown[]): State {
  switch (operator) {
    case OPS.transform:
      return { ...state, at: joined(state.at, values as unknown as Matrix) }
    case OPS.setStrokeRGBColor:
      return { ...state, stroke: String(values[0]) }
    case OPS.setFillRGBColor:
      return { ...state, fill: String(values[0]) }
    case OPS.setDash:
      return { ...state, dash: [...(values[0] as readonly number[])] }
    default:
      return state
  }
}

const strokes: readonly number[] = [OPS.stroke, OPS.closeStroke, OPS.fillStroke, OPS.eoFillStroke]
const fills: readonly number[] = [OPS.fill, OPS.eoFill, OPS.fillStroke, OPS.eoFillStroke]
const lengths = { 0: 2, 1: 2, 2: 6, 3: 4, 4: 0 } as const
const curve = 2

function pathOf([paint, inside]: readonly unknown[], { at, stroke, fill, dash }: State): DrawnPath[] {
  const [data] = (inside ?? []) as readonly (Float32Array | null)[]
  const isStroked = strokes.includes(Number(paint))
  if (data === null || data === undefined || !(isStroked || fills.includes(Number(paint)))) return []
  const [xs, ys]: [number[], number[]] = [[], []]
  let curves = 0
  for (let from = 0; from < data.length;) {
    const kind = data[from] as keyof typeof lengths
    if (kind === curve) curves += 1
    for (let nth = from + 1; nth < from + 1 + lengths[kind]; nth += 2) {
      const [x, y] = [data[nth] ?? 0, data[nth + 1] ?? 0]
      xs.push(at[0] * x + at[2] * y + at[4])
      ys.push(at[1] * x + at[3] * y + at[5])
    }
    from += 1 + lengths[kind]
  }
  const box = { left: Math.min(...xs), right: Math.max(...xs), low: Math.min(...ys), high: Math.max(...ys) }
  return [{ ...box, curves, isStroked, colour: isStroked ? stroke : fill, dash }]
}
