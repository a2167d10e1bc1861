import { dirname } from 'node:path'
import { describe, expect, it } from 'vitest'
import { filesLike, isNode, lineAt, nodesIn, textOf, treeOf } from './source-files.ts'
import type { Node } from './source-files.ts'

const mostFileLines = 350
const mostFunctionLines = 60
const mostInFolder = 20

const source = filesLike(['src-main/**/*.{ts,tsx,mjs}', 'src-renderer/**/*.{ts,tsx}'])
const everywhere = [...source, ...filesLike(['tests/**/*.{ts,tsx,mjs}', 'migrations/**/*.ts'])]
/** Lists of rules that a script writes. */
const isGenerated = (text: string) => /^\/[/*].*generated/i.test(text)
/** Tools that take their settings as a default export, and nothing else. */
const defaultExportWanted = /(^|\/)(vite|vitest|electron\.vite|playwright)\.config\.ts$/

type Read = {
  readonly path: string
  readonly text: string
  readonly nodes: readonly Node[]
  readonly body: readonly Node[]
}

function read(path: string): Read {
  const text = textOf(path)
  const tree = treeOf(path, text)
  return { path, text, nodes: nodesIn(tree), body: tree['body'] as readonly Node[] }
}

const isFunction = ({ type }: Node) =>
  type === 'FunctionDeclaration' || type === 'FunctionExpression' || type === 'ArrowFunctionExpression'

function longFunctions({ path, text, nodes }: Read): readonly string[] {
  return nodes.filter(isFunction).flatMap((node) => {
    const from = lineAt(text, node.start)
    const lines = lineAt(text, node.end) - from + 1
    return lines > mostFunctionLines ? [`${path}:${from} has a function of ${lines} lines`] : []
  })
}

/** Where a node of these kinds stands. */
function places({ path, text, nodes }: Read, kinds: readonly string[]): readonly string[] {
  return nodes
    .filter((node) => kinds.includes(node.type))
    .map((node) => `${path}:${lineAt(text, node.start)}`)
}

/** A file that only hands on what others export. */
function isBarrel({ body }: Read): boolean {
  const handsOn = (node: Node) =>
    node.type === 'ExportAllDeclaration' || (node.type === 'ExportNamedDeclaration' && isNode(node['source']))
  return (
    body.length > 0 &&
    body.every((node) => handsOn(node) || node.type === 'ImportDeclaration') &&
    body.some(handsOn)
  )
}

const reads = source.map(read)

describe('source files', () => {
  it('are there to be read', () => {
    expect(source.length).toBeGreaterThan(20)
  })

  it(`have ${mostFileLines} lines at most`, () => {
    const long = everywhere
      .map((path) => ({ path, text: textOf(path) }))
      .filter(({ text }) => !isGenerated(text))
      .map(({ path, text }) => ({ path, lines: text.trimEnd().split('\n').length }))
      .filter(({ lines }) => lines > mostFileLines)
    expect(long).toEqual([])
  })

  it(`have no function of more than ${mostFunctionLines} lines`, () => {
    expect(reads.flatMap(longFunctions)).toEqual([])
  })

  it('have no default export, except where a tool insists', () => {
    const own = reads.filter(({ path }) => !defaultExportWanted.test(path))
    expect(own.flatMap((one) => places(one, ['ExportDefaultDeclaration']))).toEqual([])
  })

  it('are no barrels', () => {
    expect(reads.filter(isBarrel).map(({ path }) => path)).toEqual([])
  })

  it('have no enum', () => {
    expect(reads.flatMap((one) => places(one, ['TSEnumDeclaration']))).toEqual([])
  })

  it('have no any', () => {
    expect(reads.flatMap((one) => places(one, ['TSAnyKeyword']))).toEqual([])
  })
})

describe('folders', () => {
  const folders = [...new Set(everywhere.map((path) => dirname(path).replaceAll('\\', '/')))]

  it('are named for what they hold', () => {
    const empty = /(^|\/)(utils?|helpers?|common|managers?|services?)(\/|\.|$)/
    expect(folders.filter((folder) => empty.test(folder))).toEqual([])
    expect(everywhere.filter((path) => empty.test(path))).toEqual([])
  })

  it(`hold ${mostInFolder} files at most`, () => {
    const full = folders
      .map((folder) => ({ folder, files: everywhere.filter((path) => dirname(path) === folder).length }))
      .filter(({ files }) => files > mostInFolder)
    expect(full).toEqual([])
  })
})

describe('the measuring itself', () => {
  const of = (text: string): Read => {
    const tree = treeOf('x.ts', text)
    return { path: 'x.ts', text, nodes: nodesIn(tree), body: tree['body'] as readonly Node[] }
  }

  it('finds a long function, a default export, a barrel, an enum and an any', () => {
    const long = of(`export const f = () => {\n${'  void 0\n'.repeat(60)}}\n`)
    expect(longFunctions(long)).toEqual(['x.ts:1 has a function of 62 lines'])
    expect(places(of('export default 1'), ['ExportDefaultDeclaration'])).toEqual(['x.ts:1'])
    expect(isBarrel(of("export * from './y.ts'\nexport { z } from './z.ts'"))).toBe(true)
    expect(isBarrel(of("export { z } from './z.ts'\nexport const a = 1"))).toBe(false)
    expect(places(of('\nenum A { b }'), ['TSEnumDeclaration'])).toEqual(['x.ts:2'])
    expect(places(of('const a = (b: any) => b'), ['TSAnyKeyword'])).toEqual(['x.ts:1'])
  })
})
