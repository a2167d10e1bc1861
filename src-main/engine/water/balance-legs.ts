import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import { accept } from '../../domain/outcome.ts'
import type { Outcome, Problem } from '../../domain/outcome.ts'
import { legsUpward } from './balance-input.ts'
import type { BalanceInput, BalanceLeg } from './balance-input.ts'
import { pipeLoss } from './pipe-loss.ts'
import { waterFlow } from './water-flow.ts'

export type CircuitFlow = { readonly litresPerMinute: number; readonly why: Derivation }
export type WorkedLeg = {
  readonly id: string
  /** Places of the circuits whose water it carries. */
  readonly carries: readonly number[]
  readonly litresPerMinute: number
  readonly velocityMPerS: number
  readonly perMetrePa: number
  readonly lossPa: number
  readonly why: Derivation
}

/**
 * The water each circuit needs, in the circuits' order, by `waterFlow`.
 * Refuses what `waterFlow` refuses, under the circuit's own path.
 *
 * @param input circuits with their watts; flow and return in degrees Celsius
 * @source heat balance of a heating circuit; water by `waterProperties`
 * @example circuitFlows({ circuits: [{ id: 'a', watts: 1000 }], flowC: 75, returnC: 65 }).value[0].litresPerMinute // => 1.465
 */
export function circuitFlows(
  input: Pick<BalanceInput, 'circuits' | 'flowC' | 'returnC'>,
): Outcome<readonly CircuitFlow[]> {
  const { circuits, flowC, returnC } = input
  const flows: CircuitFlow[] = []
  const problems: Problem[] = []
  for (const [index, { watts }] of circuits.entries()) {
    const flow = waterFlow({ watts, flowC, returnC })
    if (flow.ok) flows.push(flow.value)
    else {
      problems.push(
        ...flow.problems.map(({ path, ...rest }) => ({
          ...rest,
          path: path === 'flowC' || path === 'returnC' ? path : `circuits[${index}].watts`,
        })),
      )
    }
  }
  // What is wrong with flow or return is wrong for every circuit: it is said once.
  const once = problems.filter(({ path }, index) => problems.findIndex((one) => one.path === path) === index)
  return once.length > 0 ? { ok: false, problems: once } : accept(flows)
}

/**
 * Each leg with the water of all that hangs on it, and what it loses by `pipeLoss`; a leg on which nothing hangs loses nothing.
 * Refuses what `pipeLoss` refuses, under the leg's own path.
 *
 * @param input a tree of legs and circuits without problems
 * @param flows each circuit's flow, in the circuits' order
 * @source conservation of mass at each branch; Darcy-Weisbach by `pipeLoss`
 * @example legLosses({ legs: [{ id: 'a', from: null, pipe: { insideMm: 13.6, lengthM: 10, roughnessMm: 0.0015 } }], circuits: [{ id: 'c', legId: 'a' }], flowC: 65, returnC: 55 }, [{ litresPerMinute: 5 }]).value[0].lossPa // => 3257
 */
export function legLosses(input: BalanceInput, flows: readonly CircuitFlow[]): Outcome<readonly WorkedLeg[]> {
  const upward = legsUpward(input.legs)
  const carried: number[][] = input.legs.map(() => [])
  for (const [index, { legId }] of input.circuits.entries()) {
    for (const place of upward.get(legId) ?? []) carried[place]?.push(index)
  }
  const worked: WorkedLeg[] = []
  const problems: Problem[] = []
  for (const [index, leg] of input.legs.entries()) {
    const one = workedLeg(leg, carried[index] ?? [], { input, flows })
    if (one.ok) worked.push(one.value)
    else
      problems.push(
        ...one.problems.map((problem) => ({ ...problem, path: pathInLeg(index, problem.path ?? '') })),
      )
  }
  return problems.length > 0 ? { ok: false, problems } : accept(worked)
}

function workedLeg(
  leg: BalanceLeg,
  carries: readonly number[],
  { input, flows }: { readonly input: BalanceInput; readonly flows: readonly CircuitFlow[] },
): Outcome<WorkedLeg> {
  const { id, pipe, zetas } = leg
  if (carries.length === 0) {
    const why = given(`Leg ${id}: nothing hangs on it`, 0, 'Pa')
    return accept({ id, carries, litresPerMinute: 0, velocityMPerS: 0, perMetrePa: 0, lossPa: 0, why })
  }
  const litresPerMinute = carries.reduce((sum, index) => sum + (flows[index]?.litresPerMinute ?? 0), 0)
  const meanC = (input.flowC + input.returnC) / 2
  const loss = pipeLoss({ ...pipe, zetas, meanC, litresPerMinute })
  if (!loss.ok) return loss
  const flowWhy = because(`Flow in leg ${id}: of all the circuits that hang on it`, litresPerMinute, {
    unit: 'L/min',
    from: carries.map((index) =>
      given(`Flow of circuit ${input.circuits[index]?.id}`, flows[index]?.litresPerMinute ?? 0, 'L/min'),
    ),
  })
  const { velocityMPerS, perMetrePa, totalPa } = loss.value
  const why = because(`Leg ${id}`, totalPa, { unit: 'Pa', from: [flowWhy, loss.value.why] })
  return accept({ id, carries, litresPerMinute, velocityMPerS, perMetrePa, lossPa: totalPa, why })
}

function pathInLeg(index: number, path: string): string {
  if (path.startsWith('zetas')) return `legs[${index}].${path}`
  if (path === 'insideMm' || path === 'lengthM' || path === 'roughnessMm')
    return `legs[${index}].pipe.${path}`
  return `legs[${index}]`
}
