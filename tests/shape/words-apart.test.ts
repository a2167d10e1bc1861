import { describe, expect, it } from 'vitest'
import { filesLike, isNode, lineAt, nodesIn, textOf, treeOf } from './source-files.ts'
import type { Node } from './source-files.ts'

/** Folders of the window whose texts all stand in files of words, ready to be said in another language. */
const folders = [
  'src-renderer/frame',
  'src-renderer/parts',
  'src-renderer/screens/after',
  'src-renderer/screens/catalogue',
  'src-renderer/screens/firm',
  'src-renderer/screens/house',
  'src-renderer/screens/job',
  'src-renderer/screens/jobs',
  'src-renderer/screens/papers',
  'src-renderer/screens/price',
  'src-renderer/screens/prices',
  'src-renderer/screens/van',
]

/** Attributes that a person reads or hears. */
const spoken = [
  'alt',
  'aria-label',
  'description',
  'error',
  'hint',
  'label',
  'placeholder',
  'says',
  'title',
  'yes',
]

const hasLetter = (text: string) => /\p{L}/u.test(text)

/** The texts that an expression comes to where it is written out, alone or as one of two. */
function writtenOut(node: unknown): readonly string[] {
  if (!isNode(node)) return []
  const { type } = node
  if (type === 'Literal') return typeof node['value'] === 'string' ? [node['value']] : []
  if (type === 'JSXExpressionContainer') return writtenOut(node['expression'])
  if (type === 'ConditionalExpression')
    return [...writtenOut(node['consequent']), ...writtenOut(node['alternate'])]
  if (type === 'LogicalExpression') return [...writtenOut(node['left']), ...writtenOut(node['right'])]
  if (type === 'TemplateLiteral') {
    const pieces = node['quasis'] as readonly { readonly value: { readonly raw: string } }[]
    return pieces.map(({ value }) => value.raw)
  }
  return []
}

/** What a node of a screen says in its own words, not in those of a file of words. */
function saidBy(node: Node): readonly string[] {
  if (node.type === 'JSXText') return [String(node['value'])]
  if (node.type === 'JSXElement' || node.type === 'JSXFragment') {
    const children = node['children'] as readonly Node[]
    return children.filter(({ type }) => type === 'JSXExpressionContainer').flatMap(writtenOut)
  }
  const isSpoken = (name: unknown) => spoken.includes(String(name))
  if (node.type === 'JSXAttribute')
    return isSpoken((node['name'] as Node)['name']) ? writtenOut(node['value']) : []
  /** As handed on in an object of attributes: `inputProps={{ 'aria-label': … }}`. */
  if (node.type === 'Property' && (node['key'] as Node)['value'] === 'aria-label')
    return writtenOut(node['value'])
  return []
}

function ownWords(path: string, text: string): readonly string[] {
  return nodesIn(treeOf(path, text)).flatMap((node) =>
    saidBy(node)
      .filter(hasLetter)
      .map((says) => `${path}:${lineAt(text, node.start)} says “${says.trim()}”`),
  )
}

describe('the texts of the window', () => {
  it.each(folders)('stand in files of words in %s, not in its screens', (folder) => {
    const screens = filesLike([`${folder}/**/*.tsx`])
    expect(screens.length).toBeGreaterThan(3)
    expect(filesLike([`${folder}/**/*.words.ts`]).length).toBeGreaterThan(0)
    expect(screens.flatMap((path) => ownWords(path, textOf(path)))).toEqual([])
  })
})

describe('the looking itself', () => {
  const found = (screen: string) => ownWords('x.tsx', `export const x = ${screen}`).length

  it('finds a text that is put back into a screen, however it is written', () => {
    expect(found('<p>Nothing here yet.</p>')).toBe(1)
    expect(found('<p>{words.says} and more</p>')).toBe(1)
    expect(found("<p>{'Nothing here yet.'}</p>")).toBe(1)
    expect(found('<p>{none ? "None" : words.some}</p>')).toBe(1)
    expect(found('<Box label="Width of the old one (mm)" />')).toBe(1)
    expect(found('<Box label={`Reason ${at}`} />')).toBe(1)
    expect(found('<Box title={one ? "The swap" : "The swaps"} />')).toBe(2)
    expect(found('<Box placeholder={says ?? "A name"} />')).toBe(1)
    expect(found('<Box description="In millimetres" />')).toBe(1)
    expect(found('<button aria-label="Remove it">x</button>')).toBe(2)
    expect(found("<Pick inputProps={{ 'aria-label': 'Photos to add' }} />")).toBe(1)
    expect(found('<Card aside={<Button>Add a wall</Button>} />')).toBe(1)
  })

  it('lets pass what nobody reads as a text, and what comes from the words', () => {
    expect(found('<p className="more soft" id={`room-${at}`}>{words.says}</p>')).toBe(0)
    expect(found('<Box label={words.width(name)} title={words.title} />')).toBe(0)
    expect(found('<p><b>{a}</b>, {b}: {c === "left" ? words.left : words.right}</p>')).toBe(0)
    expect(found('<Button type="submit" variant="default">{words.add}</Button>')).toBe(0)
    expect(found("<p>{a}{' '}{b}</p>")).toBe(0)
  })
})
