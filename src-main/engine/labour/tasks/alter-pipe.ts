import { work } from '../task-rule.ts'
import type { TaskRule } from '../task-rule.ts'
import { assertNever } from '../../../domain/outcome.ts'

/** Bring each pipe to its valve. */
export const alterPipe: TaskRule<'side'> = {
  id: 'alter-pipe',
  per: 'side',
  source: 'practice, no published source',
  says: 'Bring each pipe to its valve',
  uses: [],
  gives: (side) => {
    switch (side.remedy) {
      case 'none':
        return []
      case 'pull':
        return [work('alter-pull', 1, `The ${side.side} pipe is eased across.`, [side.offsetWhy])]
      case 'longerTail':
        return [work('alter-tail', 1, `A longer tail reaches the ${side.side} pipe.`, [side.offsetWhy])]
      case 'repipe':
        return [work('alter-repipe', 1, `The ${side.side} side is cut and re-piped.`, [side.offsetWhy])]
      default:
        return assertNever(side.remedy)
    }
  },
  examples: [
    { says: 'a pulled pipe', ask: { remedy: 'pull' }, gives: [['alter-pull', 1]] },
    { says: 'a re-piped side', ask: { remedy: 'repipe' }, gives: [['alter-repipe', 1]] },
    { says: 'a pipe that meets its valve', ask: {}, gives: [] },
  ],
}
