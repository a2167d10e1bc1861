import type { AnswerOf } from '../../../src-main/contract/requests.ts'
import { words } from './firm.words.ts'

export type OwnFigure = AnswerOf<'figures.own'>['figures'][number]
export type GroupId = keyof typeof words.groups

const groupOfPrefix: Readonly<Record<string, GroupId>> = {
  money: 'money',
  tax: 'tax',
  prices: 'prices',
  labour: 'labour',
  lift: 'lift',
  asbestos: 'lift',
  wall: 'wall',
  fixing: 'wall',
  hydraulics: 'pipes',
  pipe: 'pipes',
  water: 'pipes',
}

/** The group of the screen in which a figure stands, by the first part of its id. */
export function groupOf(id: string): GroupId {
  return groupOfPrefix[id.split('.')[0] ?? ''] ?? 'parts'
}

const order = [
  'money',
  'tax',
  'prices',
  'labour',
  'parts',
  'lift',
  'wall',
  'pipes',
] as const satisfies readonly GroupId[]

/** The figures that hold every word, group by group; a group without any is left out. */
export function figureGroups(
  figures: readonly OwnFigure[],
  text: string,
): readonly { readonly group: GroupId; readonly figures: readonly OwnFigure[] }[] {
  const wanted = text.toLocaleLowerCase('en-GB').split(/\s+/).filter(Boolean)
  const found = figures.filter(({ id, says, source }) => {
    const all = `${says} ${source} ${words.groups[groupOf(id)]}`.toLocaleLowerCase('en-GB')
    return wanted.every((word) => all.includes(word))
  })
  return order
    .map((group) => ({ group, figures: found.filter(({ id }) => groupOf(id) === group) }))
    .filter((one) => one.figures.length > 0)
}
