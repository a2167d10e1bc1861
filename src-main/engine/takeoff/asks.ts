import type { Derivation } from '../../domain/derivation.ts'
import type { Fixing } from '../../domain/figures.ts'
import type { Thread } from '../../domain/item.ts'
import type { Job, Room, Swap, ValveChoice } from '../../domain/job.ts'
import type { PipeRemedy } from '../../domain/set-out.ts'
import type { PipeSizeMm, Pipe, Side, Wall } from '../../domain/wall.ts'

/** What a rule is asked about. Flat facts, so that a rule reads as a sentence and an example fits on a line. */
export type Asks = {
  readonly job: JobAsk
  readonly room: RoomAsk
  readonly swap: SwapAsk
  readonly side: SideAsk
  readonly joint: JointAsk
  readonly hole: HoleAsk
}
export type Per = keyof Asks

/** The job once, however many swaps it has. */
export type JobAsk = {
  readonly swaps: number
  readonly drain: Job['survey']['system']['drain']
  readonly systemKind: Job['survey']['system']['kind']
  readonly flush: boolean
  /** Litres in the whole system, and why. */
  readonly contentLitres: number
  readonly contentWhy: Derivation
  /** Share of that water that is let out and wants treating anew, 0 to 1. */
  readonly drainedShare: number
  readonly hotWork: boolean
  readonly builtYear: number | null
  readonly frailOrChildren: boolean
  readonly travelKm: number
  /** People live in the house while the work goes on; absent when not. */
  readonly occupied?: true
}

/** One room in which an emitter is swapped. */
export type RoomAsk = {
  readonly roomName: string
  readonly use: Room['use']
  readonly floor: Room['floor']
  readonly swaps: number
  /** There is no room to stand close; absent when there is. */
  readonly tightAccess?: true
}

/** One swap. */
export type SwapAsk = {
  readonly roomName: string
  readonly roomUse: Room['use']
  readonly storey: number
  readonly emitterId: string
  readonly emitterName: string
  readonly emitterKind: 'panel' | 'column' | 'towelRail'
  readonly emitterMassKg: number
  readonly emitterWidthMm: number
  /** Height of the hands that hang it: its middle above the floor. Absent when not asked. */
  readonly handsMm?: number
  /** There is no room to stand close; absent when there is. */
  readonly tightAccess?: true
  readonly elementW: number | null
  readonly tappingThread: Thread
  readonly oldName: string | null
  readonly oldMassKg: number | null
  readonly oldHoles: { readonly count: number; readonly diameterMm: number; readonly depthMm: number } | null
  /** How they were measured one by one; absent where they were only counted. */
  readonly oldHolesWhy?: Derivation
  readonly oldBrackets: number
  readonly wallBuild: Wall['build']
  readonly wallFinish: Wall['finish']
  readonly needsBoard: boolean
  readonly boardMm: number
  readonly studSpacingMm: number
  readonly brackets: number
  readonly drain: Job['survey']['system']['drain']
  readonly valvesKept: boolean
  readonly hasVent: boolean
  /** Water at the emitter's surface, flow side. */
  readonly flowC: number
}

/** One pipe and the valve that it comes to. */
export type SideAsk = {
  readonly side: Side
  readonly role: 'thermostatic' | 'lockshield' | 'manual' | 'kept'
  readonly roleBecause: string
  /** Which way the emitter's tapping points. */
  readonly tappingFaces: 'side' | 'down'
  readonly pipe: Pick<Pipe, 'from' | 'material'> & {
    readonly outsideMm: PipeSizeMm
    readonly coldVoidMm: number
  }
  readonly thread: Thread
  readonly finish: ValveChoice['finish']
  readonly remedy: PipeRemedy
  readonly elbows: number
  readonly couplers: number
  readonly newPipeMm: number
  readonly clips: number
  readonly tailMm: number
  readonly offsetWhy: Derivation
  readonly wallFinish: Wall['finish']
}

/** One tapping of the new emitter and what is screwed into it. */
export type JointAsk = {
  readonly at: string
  readonly thread: Thread
  readonly holds: 'valve' | 'vent' | 'blank' | 'extension' | 'tee'
  readonly sealing: 'oRing' | 'none'
  readonly factoryFitted: boolean
  readonly finish: ValveChoice['finish']
}

/** One hole to drill. */
export type HoleAsk = {
  readonly holeId: string
  readonly bracket: string
  readonly drillMm: number
  readonly depthMm: number
  readonly fixing: Pick<Fixing, 'name' | 'plug' | 'anchor' | 'screw' | 'intoStud' | 'source'>
  readonly needsBoard: boolean
  readonly wallFinish: Wall['finish']
}

export type SwapId = Swap['swapId']
