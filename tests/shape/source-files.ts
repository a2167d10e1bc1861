import { globSync, readFileSync } from 'node:fs'
import { parseSync } from 'vite'

/** A node of the syntax tree, as far as these tests look. */
export type Node = { readonly type: string; readonly start: number; readonly end: number } & Readonly<
  Record<string, unknown>
>

/** Every file under the project's root that fits one of the patterns, by its path with forward slashes. */
export function filesLike(patterns: readonly string[]): readonly string[] {
  return globSync([...patterns])
    .map((path) => path.replaceAll('\\', '/'))
    .toSorted()
}

export function textOf(path: string): string {
  return readFileSync(path, 'utf8')
}

export function treeOf(path: string, text: string): Node {
  const { program, errors } = parseSync(path, text)
  if (errors.length > 0) throw new Error(`${path} does not parse: ${errors[0]?.message}`)
  return program as unknown as Node
}

export function isNode(value: unknown): value is Node {
  return typeof value === 'object' && value !== null && typeof (value as Node).type === 'string'
}

/** Every node of a tree, the outer before the inner. */
export function nodesIn(node: Node): readonly Node[] {
  const inner = Object.values(node)
    .flatMap((value) => (Array.isArray(value) ? value : [value]))
    .filter(isNode)
  return [node, ...inner.flatMap(nodesIn)]
}

/** The number of the line that a place in the text is on, from 1. */
export function lineAt(text: string, place: number): number {
  return text.slice(0, place).split('\n').length
}
