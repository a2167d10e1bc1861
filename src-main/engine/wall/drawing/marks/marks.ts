import type { Looked } from './looked.ts'
import type { CableZone } from './cable-zones.ts'

/** What a drawing shows for whoever places the emitter, besides what is on the sheet for the wall. */
export type Marks = {
  /** Where cables may run in the wall. */
  readonly zones?: readonly CableZone[] | undefined
  /** Every clearance that was looked at: clashes are always drawn. */
  readonly looked?: readonly Looked[] | undefined
  /** The clear space that each thing asks, drawn where it is kept too. */
  readonly showsAsked?: boolean | undefined
  /** The joints of a tiled wall. */
  readonly showsTiles?: boolean | undefined
  /** Emitter and door leaves seen from above, under the floor line. */
  readonly showsPlan?: boolean | undefined
  /** What stands beside each hole in place of its bare id. */
  readonly holeNames?: Readonly<Record<string, string>> | undefined
}
