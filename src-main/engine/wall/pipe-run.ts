import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import { figure, figureWhy } from '../../domain/figures.ts'
import type { Figures } from '../../domain/figures.ts'
import type { EmitterShape } from '../../domain/item.ts'
import type { Pipe } from '../../domain/wall.ts'
import type { Miss } from './pipe-offset.ts'

/** What cutting and re-piping one side takes. */
export type PipeRun = {
  readonly elbows: number
  readonly couplers: number
  readonly pipeMm: number
  readonly clips: number
  readonly from: readonly Derivation[]
}

export type RunInput = {
  readonly pipe: Pipe
  readonly miss: Miss
  /** Height of the valve's pipe entry, mm. */
  readonly valveMm: number
  readonly emitter: Pick<EmitterShape, 'connectionOffWallMm'>
}

/**
 * Elbows, couplers, pipe and clips from a cut pipe to its valve; lengths are measured from middle to middle of the fittings, so the
 * cut pieces come out a little shorter.
 * From the floor, over its place: a coupler and a straight piece as long as the rise.
 * From the floor, to one side by less than the shortest piece: cut at the stub height, a coupler and one piece bent to a set, as long
 * as the riser and the way across.
 * From the floor, further to one side: cut at the stub height, an elbow on the stub, a piece across = hypot(across, out), an elbow, and a
 * riser = valve height - stub height, at least the shortest piece.
 * From the wall: an elbow where it comes out, |across| + |rise| along the wall with an elbow at the turn if it needs both, an
 * elbow to the valve, and a piece as long as the connections stand off the wall. Where one of the two is shorter than the shortest
 * piece, straight at a slant instead, hypot(across, rise) between two elbows; where the slant is shorter too, a coupler and one
 * piece bent to a set.
 * Clips = pipe / spacing, rounded up.
 *
 * @param input the pipe, how far it misses (mm), the valve's height (mm) and how far connections stand off the wall (mm)
 * @param figures the firm's figures: wall.valveReachMm, wall.stubMm, wall.leastPieceMm, wall.clipSpacing…Mm
 * @source practice, no published source
 * @example pipeRun({ pipe: { from: 'floor', material: 'copper', outsideMm: 15 }, miss: { acrossMm: 300, riseMm: 0, outMm: 0 }, valveMm: 235, emitter: {} }, { settings: { 'wall.valveReachMm': { value: 3 }, 'wall.stubMm': { value: 40 }, 'wall.leastPieceMm': { value: 40 }, 'wall.clipSpacingCopper15Mm': { value: 1200 } } }).pipeMm // => 495
 */
export function pipeRun(input: RunInput, figures: Figures): PipeRun {
  const bare = input.pipe.from === 'floor' ? fromFloor(input, figures) : fromWall(input, figures)
  const spacingId = clipSpacingId(input.pipe)
  const clips = Math.ceil(bare.pipeMm / figure(figures, spacingId))
  const length = because('New pipe, middle to middle of its fittings.', bare.pipeMm, {
    unit: 'mm',
    from: bare.lengths,
  })
  return {
    elbows: bare.elbows,
    couplers: bare.couplers,
    pipeMm: bare.pipeMm,
    clips,
    from: [
      because('Elbows: one at each turn.', bare.elbows),
      because('Couplers: one where new pipe goes on in a straight line.', bare.couplers),
      length,
      because('Clips along the new pipe, rounded up.', clips, {
        from: [length, figureWhy(figures, spacingId)],
      }),
    ],
  }
}

type Bare = Pick<PipeRun, 'elbows' | 'couplers' | 'pipeMm'> & { readonly lengths: readonly Derivation[] }

function fromFloor({ pipe, miss, valveMm }: RunInput, figures: Figures): Bare {
  const acrossMm = Math.hypot(miss.acrossMm, miss.outMm)
  if (acrossMm <= figure(figures, 'wall.valveReachMm')) {
    const rise = given('From the end of the pipe up to the valve', miss.riseMm, 'mm')
    return { elbows: 0, couplers: 1, pipeMm: miss.riseMm, lengths: [rise] }
  }
  const cutMm = Math.min(figure(figures, 'wall.stubMm'), pipe.yMm ?? valveMm)
  const riserMm = Math.max(valveMm - cutMm, figure(figures, 'wall.leastPieceMm'))
  const riser = because('Riser, from where the pipe is cut up to the valve.', riserMm, {
    unit: 'mm',
    from: [
      given('Pipe entry of the valve, from the floor', valveMm, 'mm'),
      figureWhy(figures, 'wall.stubMm'),
      figureWhy(figures, 'wall.leastPieceMm'),
    ],
  })
  const lengths = [given('Across, from the old pipe to the valve', acrossMm, 'mm'), riser]
  const bent = acrossMm < figure(figures, 'wall.leastPieceMm')
  const fittings = bent ? { elbows: 0, couplers: 1 } : { elbows: 2, couplers: 0 }
  return { ...fittings, pipeMm: acrossMm + riserMm, lengths }
}

function fromWall({ miss, emitter }: RunInput, figures: Figures): Bare {
  const reach = figure(figures, 'wall.valveReachMm')
  const leastMm = figure(figures, 'wall.leastPieceMm')
  const outMm = emitter.connectionOffWallMm
  const out = given("The emitter's connections, off the wall", outMm, 'mm', 'catalogue')
  const legs = [Math.abs(miss.acrossMm), Math.abs(miss.riseMm)].filter((leg) => leg > reach)
  const piece = (leg: number) => given('Along the wall, from the old pipe to the valve', leg, 'mm')
  if (legs.every((leg) => leg >= leastMm)) {
    const along = legs.reduce((sum, leg) => sum + leg, 0)
    const lengths = [...legs.map(piece), out]
    return { elbows: legs.length + 1, couplers: 0, pipeMm: along + outMm, lengths }
  }
  const slantMm = Math.hypot(...legs)
  const least = figureWhy(figures, 'wall.leastPieceMm')
  const slant = because('Straight from the old pipe to the valve, for two elbows do not go in.', slantMm, {
    unit: 'mm',
    from: [...legs.map(piece), least],
  })
  const fittings = slantMm < leastMm ? { elbows: 0, couplers: 1 } : { elbows: 2, couplers: 0 }
  return { ...fittings, pipeMm: slantMm + outMm, lengths: [slant, out] }
}

/** Steel is carried on in copper. */
function clipSpacingId({ material, outsideMm }: Pipe): string {
  return `wall.clipSpacing${material === 'plastic' ? 'Plastic' : 'Copper'}${outsideMm}Mm`
}
