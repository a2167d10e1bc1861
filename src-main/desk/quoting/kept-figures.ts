import type { Figures } from '../../domain/figures.ts'

/**
 * The figures of an issued quote, and for what it never knew (a later program reads more settings than an earlier one wrote down)
 * those in force now. What was kept stays as it was.
 */
export function withLaterFigures(kept: Figures, now: Figures): Figures {
  const known = new Set(kept.fixings.map((fixing) => fixing.fixingId))
  return {
    settings: { ...now.settings, ...kept.settings },
    tasks: { ...now.tasks, ...kept.tasks },
    fixings: [...kept.fixings, ...now.fixings.filter((fixing) => !known.has(fixing.fixingId))],
  }
}
