import type { ToolRule } from '../tool-rule.ts'

/** A pipe cutter where a side is re-piped. */
export const pipeCutter: ToolRule<'side'> = {
  id: 'pipe-cutter',
  per: 'side',
  source: 'practice, no published source',
  says: 'A pipe cutter where a side is re-piped',
  uses: [],
  gives: (side) =>
    side.remedy === 'repipe' ? [{ name: `Pipe cutter, ${side.pipe.outsideMm} mm`, why: side.offsetWhy }] : [],
  examples: [
    { says: 'a re-piped side', ask: { remedy: 'repipe' }, gives: ['Pipe cutter, 15 mm'] },
    { says: 'an untouched pipe', ask: {}, gives: [] },
  ],
}
