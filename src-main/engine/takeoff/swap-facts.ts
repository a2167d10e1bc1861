import type { Figures, Fixing } from '../../domain/figures.ts'
import type { Tapping } from '../../domain/item.ts'
import type { Job } from '../../domain/job.ts'
import type { PipeOffset } from '../../domain/set-out.ts'
import type { Pipe } from '../../domain/wall.ts'
import { oldHolesAsk } from './old-holes-ask.ts'
import type { HoleAsk, JointAsk, SideAsk, SwapAsk } from './asks.ts'
import type { PlacedSwap } from './job-facts.ts'

/** Every question that the rules are asked about one swap. */
export type SwapFacts = {
  readonly swapId: string
  readonly roomId: string
  readonly box: PlacedSwap['emitter']['box']
  readonly wallBuild: PlacedSwap['wall']['build']
  readonly ask: SwapAsk
  readonly sides: readonly SideAsk[]
  readonly joints: readonly JointAsk[]
  readonly holes: readonly HoleAsk[]
}

/**
 * The facts of one swap that rules are asked about.
 * @param placed the swap with its room, wall, emitter and set-out
 * @param job the job it belongs to
 * @param figures the firm's figures, for the fixings that the set-out chose
 * @source practice, no published source
 * @example swapFacts({ swap: { swapId: 'a', pipes: [], valves: {} }, room: { name: 'Hall' }, wall: {}, emitter: { form: {}, tappings: [], brackets: [] }, setOut: { holes: [], fixing: { fixingId: 'f' } } }, { survey: { system: { flowC: 60 } } }, { fixings: [{ fixingId: 'f' }] }).ask.roomName // => "Hall"
 */
export function swapFacts(placed: PlacedSwap, job: Job, figures: Figures): SwapFacts {
  const { swap, room, wall, emitter, setOut } = placed
  const sides = swap.pipes.flatMap((pipe) => {
    const offset = setOut.pipeOffsets.find((one) => one.side === pipe.side)
    return offset === undefined ? [] : [sideAsk(pipe, offset, placed)]
  })
  const holes = setOut.holes.map((hole) => holeAsk(hole, fixingOf(hole, setOut, figures), placed))
  return {
    swapId: swap.swapId,
    roomId: room.roomId,
    box: emitter.box,
    wallBuild: wall.build,
    ask: swapAsk(placed, job),
    sides,
    joints: jointAsks(placed, sides),
    holes,
  }
}

function swapAsk({ swap, room, wall, emitter, setOut }: PlacedSwap, job: Job): SwapAsk {
  const spacing = wall.studs?.spacingMm ?? 400
  return {
    roomName: room.name,
    roomUse: room.use,
    storey: room.storey,
    emitterId: emitter.itemId,
    emitterName: emitter.name,
    emitterKind: emitter.form.kind,
    emitterMassKg: emitter.dryKg,
    emitterWidthMm: emitter.widthMm,
    handsMm: swap.bottomMm + emitter.heightMm / 2,
    ...(room.tightAccess === true ? { tightAccess: true as const } : {}),
    elementW: swap.elementW ?? null,
    tappingThread: emitter.tappings[0]?.thread ?? 'G1/2',
    oldName: swap.existing?.name ?? null,
    oldMassKg: swap.existing?.dryKg ?? null,
    ...oldHolesAsk(swap.existing),
    oldBrackets: swap.existing?.brackets ?? 0,
    wallBuild: wall.build,
    wallFinish: wall.finish,
    needsBoard: setOut.fixing.needsBoard,
    boardMm: Math.ceil(emitter.widthMm / spacing) * spacing,
    studSpacingMm: spacing,
    brackets: emitter.brackets.length,
    drain: job.survey.system.drain,
    valvesKept: swap.valves.kind === 'keep',
    hasVent: emitter.tappings.some((tapping) => tapping.holds === 'vent'),
    flowC: job.survey.system.flowC,
  }
}

function sideAsk(pipe: Pipe, offset: PipeOffset, placed: PlacedSwap): SideAsk {
  const { swap, emitter, wall } = placed
  const tapping = tappingOf(pipe, emitter.tappings)
  return {
    side: pipe.side,
    ...valveRole(pipe, placed),
    tappingFaces: emitter.form.kind === 'towelRail' ? 'down' : 'side',
    pipe: {
      from: pipe.from,
      material: pipe.material,
      outsideMm: pipe.outsideMm,
      coldVoidMm: pipe.coldVoidMm ?? 0,
    },
    thread: tapping?.thread ?? 'G1/2',
    finish: swap.valves.finish,
    remedy: offset.remedy,
    elbows: offset.elbows,
    couplers: offset.couplers,
    newPipeMm: offset.pipeMm,
    clips: offset.clips,
    tailMm: offset.tailMm,
    offsetWhy: offset.why,
    wallFinish: wall.finish,
  }
}

function tappingOf(pipe: Pipe, tappings: readonly Tapping[]): Tapping | undefined {
  const at = pipe.side === 'left' ? 'bottomLeft' : 'bottomRight'
  return tappings.find((tapping) => tapping.at === at && tapping.holds === 'valve')
}

/** Which valve a pipe takes: thermostatic on the flow, unless the room holds the thermostat or the survey says otherwise. */
function valveRole(pipe: Pipe, { swap, room }: PlacedSwap): Pick<SideAsk, 'role' | 'roleBecause'> {
  if (swap.valves.kind === 'keep') return { role: 'kept', roleBecause: 'the survey says to keep it' }
  if (room.holdsThermostat === true) {
    return {
      role: 'manual',
      roleBecause: 'the room holds the thermostat or the bypass, so nothing here may close by itself',
    }
  }
  if (swap.valves.kind === 'manualPair')
    return { role: 'manual', roleBecause: 'the customer wants hand wheels' }
  return isFlow(pipe, swap.pipes)
    ? { role: 'thermostatic', roleBecause: 'the flow side regulates the room' }
    : { role: 'lockshield', roleBecause: 'the return side is set once, when balancing' }
}

/** Where nobody found out which pipe is the flow, the left one is taken. */
function isFlow(pipe: Pipe, pipes: readonly Pipe[]): boolean {
  const known = pipes.some((one) => one.carries === 'flow')
  if (known) return pipe.carries === 'flow'
  const returning = pipes.find((one) => one.carries === 'return')
  return returning === undefined ? pipe.side === 'left' : pipe !== returning
}

/** Vents and blanks are not made in grey: they come in chrome then. */
function plugFinish(finish: PlacedSwap['emitter']['finish']): JointAsk['finish'] {
  return finish === 'grey' ? 'chrome' : finish
}

function jointAsks({ emitter, swap }: PlacedSwap, sides: readonly SideAsk[]): readonly JointAsk[] {
  const tappings = emitter.tappings.map((tapping): JointAsk => ({
    at: inWords(tapping.at),
    thread: tapping.thread,
    holds: tapping.holds,
    sealing: tapping.holds === 'valve' ? 'none' : 'oRing',
    factoryFitted: tapping.factoryFitted ?? false,
    finish: plugFinish(emitter.finish),
  }))
  const extensions = sides.flatMap((side) => (side.remedy === 'longerTail' ? [extra('extension', side)] : []))
  const first = sides[0]
  const tee = swap.elementW === undefined || first === undefined ? [] : [extra('tee', first)]
  return [...tappings, ...extensions, ...tee]
}

/** A joint more than the tappings show: behind an extension, or at an element's T-piece. */
function extra(holds: 'extension' | 'tee', side: SideAsk): JointAsk {
  return {
    at: `${side.side} valve`,
    thread: side.thread,
    holds,
    sealing: 'none',
    factoryFitted: false,
    finish: side.finish,
  }
}

function inWords(at: Tapping['at']): string {
  return at.replace(/([A-Z])/g, (letter) => ` ${letter.toLowerCase()}`)
}

type Hole = PlacedSwap['setOut']['holes'][number]

/** What goes into a hole: its own fixing, or the one of the whole set-out. */
function fixingOf(hole: Hole, { fixing }: PlacedSwap['setOut'], figures: Figures): Fixing {
  const fixingId = hole.fixing?.fixingId ?? fixing.fixingId
  const chosen = figures.fixings.find((one) => one.fixingId === fixingId)
  if (chosen === undefined) throw new Error(`The set-out chose a fixing that is not there: ${fixingId}`)
  return chosen
}

function holeAsk(hole: Hole, fixing: Fixing, { setOut, wall }: PlacedSwap): HoleAsk {
  return {
    holeId: hole.id,
    bracket: hole.bracket,
    drillMm: hole.drillMm,
    depthMm: hole.depthMm,
    fixing,
    needsBoard: setOut.fixing.needsBoard,
    wallFinish: hole.finish ?? wall.finish,
  }
}
