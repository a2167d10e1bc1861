import { pathToFileURL } from 'node:url'
import { describe, expect, it } from 'vitest'
import { filesLike, isNode, nodesIn, textOf, treeOf } from './source-files.ts'
import type { Node } from './source-files.ts'

type Documented = {
  readonly name: string
  readonly comment: string | null
  readonly params: readonly string[]
}
type Example = { readonly expression: string; readonly value: string }

/** The engine's files that export a function; a rule exports a value of its own shape, whose examples its own test runs. */
const files = filesLike(['src-main/engine/**/*.ts']).filter(
  (path) => exportsOf(path, textOf(path)).length > 0,
)

/** The exported functions of a file, each with the comment just above it and the names of its parameters. */
function exportsOf(path: string, text: string): readonly Documented[] {
  const body = treeOf(path, text)['body'] as readonly Node[]
  return body.flatMap((statement) => {
    const declared = statement['declaration']
    if (statement.type !== 'ExportNamedDeclaration' || !isNode(declared)) return []
    if (declared.type !== 'FunctionDeclaration' || declared['body'] === null) return []
    const params = (declared['params'] as readonly Node[]).map(
      (param) => (param['name'] as string | undefined) ?? '',
    )
    const name = (declared['id'] as Node)['name'] as string
    return [{ name, params, comment: commentAbove(text, statement.start) }]
  })
}

function commentAbove(text: string, place: number): string | null {
  const above = text.slice(0, place).trimEnd()
  if (!above.endsWith('*/')) return null
  const start = above.lastIndexOf('/*')
  return above.startsWith('/**', start) ? above.slice(start) : null
}

/** The comment's lines without their stars. */
function linesOf(comment: string): readonly string[] {
  return comment
    .replace(/^\/\*\*|\*\/$/g, '')
    .split('\n')
    .map((line) => line.replace(/^\s*\*? ?/, '').trimEnd())
}

function examplesOf(comment: string): readonly Example[] {
  return linesOf(comment)
    .filter((line) => line.startsWith('@example'))
    .map((line) => line.slice('@example'.length))
    .map((line) => {
      const [expression = '', value = ''] = line.split(/\/\/ ?=>/)
      return { expression: expression.trim(), value: value.trim() }
    })
}

function faultsOf({ name, comment, params }: Documented): readonly string[] {
  if (comment === null) return [`${name} has no doc comment`]
  const lines = linesOf(comment)
  const first = lines.find((line) => line !== '') ?? ''
  const source = lines
    .find((line) => line.startsWith('@source'))
    ?.slice('@source'.length)
    .trim()
  const examples = examplesOf(comment)
  const named = lines.flatMap((line) => /^@param (\w+)/.exec(line)?.[1] ?? [])
  return [
    ...(first === '' || first.startsWith('@') ? [`${name} does not say in a line what it is`] : []),
    ...(source === undefined || source === '' ? [`${name} has no @source`] : []),
    ...(examples.length === 0 ? [`${name} has no @example`] : []),
    ...examples.flatMap((example) =>
      example.value === '' ? [`${name} has an @example without // => value`] : [],
    ),
    ...named.flatMap((param) =>
      // A parameter taken apart in the signature has no name of its own, so any name may stand for it.
      params.includes(param) || params.includes('')
        ? []
        : [`${name} documents ${param}, which it does not take`],
    ),
    ...(named.length > params.length ? [`${name} documents more parameters than it takes`] : []),
  ]
}

/** Half a unit in the last place that a number is printed to: 9.50 is right within 0.005. */
function toleranceOf(printed: string): number {
  const [, decimals = '', exponent = '0'] = /^-?\d[\d_]*(?:\.(\d+))?(?:e([+-]?\d+))?$/i.exec(printed) ?? []
  return 0.5 * 10 ** (Number(exponent) - decimals.length) * (1 + 1e-9)
}

/** Each number of a printed value, as it is printed, in the order of the text (not those inside quotes or names). */
function numbersIn(printed: string): readonly string[] {
  return (
    printed.replace(/'[^']*'|"[^"]*"/g, "''").match(/(?<![\w.])-?\d[\d_]*(?:\.\d+)?(?:e[+-]?\d+)?(?!\w)/gi) ??
    []
  )
}

/** Whether two values are alike, the numbers within what was printed. */
function alike(found: unknown, wanted: unknown, printed: string[]): boolean {
  if (typeof wanted === 'number') {
    const tolerance = toleranceOf(printed.shift() ?? String(wanted))
    return typeof found === 'number' && Math.abs(found - wanted) <= tolerance
  }
  if (typeof wanted !== 'object' || wanted === null) return Object.is(found, wanted)
  if (typeof found !== 'object' || found === null || Array.isArray(found) !== Array.isArray(wanted))
    return false
  const keys = Object.keys(wanted)
  if (Object.keys(found).length !== keys.length) return false
  return keys.every((key) =>
    alike((found as Record<string, unknown>)[key], (wanted as Record<string, unknown>)[key], printed),
  )
}

function valueOf(expression: string, scope: Readonly<Record<string, unknown>>): unknown {
  const evaluate = new Function(...Object.keys(scope), `'use strict'; return (${expression})`) as (
    ...values: readonly unknown[]
  ) => unknown
  return evaluate(...Object.values(scope))
}

describe('the engine', () => {
  it('has files to read', () => {
    expect(files.length).toBeGreaterThan(10)
  })

  it('keeps NaN and Infinity out of its examples', () => {
    const wrong = files.flatMap((path) =>
      exportsOf(path, textOf(path)).flatMap(({ name, comment }) =>
        examplesOf(comment ?? '')
          .filter(({ value }) => /NaN|Infinity/.test(value))
          .map(() => `${path} ${name}`),
      ),
    )
    expect(wrong).toEqual([])
  })
})

describe.each(files)('%s', (path) => {
  const text = textOf(path)
  const documented = exportsOf(path, text)

  it('says of every exported function what it is, whence it comes, and one example', () => {
    expect(documented.flatMap(faultsOf)).toEqual([])
  })

  it('gives what its examples say', async () => {
    const scope = (await import(pathToFileURL(path).href)) as Readonly<Record<string, unknown>>
    for (const { name, comment } of documented) {
      for (const { expression, value } of examplesOf(comment ?? '').filter(
        (example) => example.value !== '',
      )) {
        const found = valueOf(expression, scope)
        const same = alike(found, valueOf(value, {}), [...numbersIn(value)])
        expect(same, `${name}: ${expression} gave ${JSON.stringify(found)}, not ${value}`).toBe(true)
      }
    }
  })
})

describe('the reading of examples', () => {
  it('compares numbers as they are printed, also inside lists and objects', () => {
    const holds = (found: unknown, printed: string) =>
      alike(found, valueOf(printed, {}), [...numbersIn(printed)])
    expect(holds(9.496, '9.50')).toBe(true)
    expect(holds(9.49, '9.50')).toBe(false)
    expect(holds([1.04, -2], '[1.0, -2]')).toBe(true)
    expect(holds({ a: 'x1', b: 1.26 }, "{ a: 'x1', b: 1.3 }")).toBe(true)
    expect(holds({ a: 1, b: 2 }, '{ a: 1 }')).toBe(false)
    expect(holds(Number.NaN, '1')).toBe(false)
    expect(holds(12.4, '12')).toBe(true)
  })

  it('finds a function without comment, source or example, and a parameter that is not there', () => {
    const [bare, half] = exportsOf(
      'x.ts',
      'export function bare(): void {}\n/**\n * Half.\n * @param b none\n */\nexport function half(a: number): number {\n  return a\n}\n',
    )
    expect(faultsOf(bare as Documented)).toEqual(['bare has no doc comment'])
    expect(faultsOf(half as Documented)).toEqual([
      'half has no @source',
      'half has no @example',
      'half documents b, which it does not take',
    ])
    expect(nodesIn(treeOf('y.ts', 'export const a = 1')).length).toBeGreaterThan(3)
  })
})
