import type { Choice } from '../../../parts/words.ts'
import { words } from './quick.words.ts'

const choices = (labels: Readonly<Record<string, string>>): readonly Choice[] =>
  Object.entries(labels).map(([value, label]) => ({ value, label }))

export const aboveChoices = choices(words.above)
export const belowChoices = choices(words.below)
export const countryChoices = choices(words.countries)
export const wallCountChoices: readonly Choice[] = words.wallCounts.map((label, value) => ({ value, label }))
