/**
 * Words of the trade that say the same, for rows that are no item of the catalogue and so have only their supplier's words.
 * Practice, no published source.
 */
const sameWords: readonly (readonly string[])[] = [
  ['trv', 'thermostatic radiator valve', 'thermostatic valve'],
  ['lsv', 'lockshield', 'lock shield'],
  ['rad', 'radiator'],
  ['ptfe', 'thread tape'],
  ['tube', 'pipe'],
  ['coupling', 'coupler', 'straight connector'],
  ['elbow', '90 bend', 'bend'],
  ['lagging', 'pipe insulation'],
  ['wall plug', 'masonry plug', 'raw plug'],
  ['vent', 'bleed valve'],
  ['blanking plug', 'blank plug', 'stop plug'],
  ['towel rail', 'towel radiator', 'towel warmer', 'ladder rail'],
  ['angle', 'angled'],
  ['chrome', 'cp', 'chromed'],
  ['microbore', '8 mm', '10 mm'],
  ['reducer', 'reducing coupler', 'reducing set'],
  ['stop end', 'stopend', 'cap'],
  ['stat', 'thermostat'],
  ['silicone', 'sealant'],
]

const groups = sameWords.map((group) => group.map((words) => words.split(' ')))

/** The same question in other words of the trade, nearest first; empty when there are none. Words as `soughtIn` has them. */
export function saidOtherwise(words: readonly string[]): readonly (readonly string[])[] {
  return groups.flatMap((group) =>
    group.flatMap((said) => {
      const at = placeOf(words, said)
      if (at < 0) return []
      const others = group.filter((other) => other !== said && placeOf(words, other) < 0)
      return others.map((other) => [...words.slice(0, at), ...other, ...words.slice(at + said.length)])
    }),
  )
}

function placeOf(words: readonly string[], said: readonly string[]): number {
  return words.findIndex((_, at) => said.every((word, i) => words[at + i] === word))
}
