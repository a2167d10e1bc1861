import type { Choice } from '../../../parts/words.ts'

const choices = (words: Readonly<Record<string, string>>): readonly Choice[] =>
  Object.entries(words).map(([value, label]) => ({ value, label }))

export const aboveChoices = choices({
  heatedRoom: 'A heated room',
  loft: 'A loft',
  flatRoof: 'A flat roof or sloping ceiling',
  otherDwelling: 'Another dwelling',
})
export const belowChoices = choices({
  heatedRoom: 'A heated room',
  solidGround: 'Solid floor on the ground',
  suspendedGround: 'Timber floor over an aired space',
  unheated: 'A garage or unheated space',
  outside: 'Outside air',
  otherDwelling: 'Another dwelling',
})
export const wallCountChoices: readonly Choice[] = ['None', 'One', 'Two', 'Three', 'All four'].map(
  (label, value) => ({ value, label }),
)
export const countryChoices = choices({
  england: 'England',
  wales: 'Wales',
  scotland: 'Scotland',
  northernIreland: 'Northern Ireland',
})
