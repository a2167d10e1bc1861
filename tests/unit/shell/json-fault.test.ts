import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { jsonFault } from '../../../src-main/shell/json-fault.ts'

describe('Where a text stops being JSON', () => {
  it.each([
    ['{"a": 1,}', 1, 9, 'a name in double quotes'],
    ['{"a" 1}', 1, 6, 'a colon'],
    ['{"a": }', 1, 7, 'a value'],
    ['[1, 2', 1, 6, 'a comma or ]'],
    ['[1 2]', 1, 4, 'a comma or ]'],
    ['{"a": 1]', 1, 8, 'a comma or }'],
    ["{'a': 1}", 1, 2, 'a name in double quotes or }'],
    ['{"a": 01}', 1, 7, 'a value'],
    ['{"a": .5}', 1, 7, 'a value'],
    ['{"a": +5}', 1, 7, 'a value'],
    ['{"a": tru}', 1, 7, 'a value'],
    ['{"a": NaN}', 1, 7, 'a value'],
    ['{"a":\r\n  -Infinity}', 2, 3, 'a value'],
    ['{\n"a": 1,\n// no\n"b": 2}', 3, 1, 'a name in double quotes'],
    ['{} {}', 1, 4, 'the end of the text'],
    ['"a\nb"', 1, 3, 'a value'],
    ['"\\x"', 1, 2, 'a value'],
    ['', 1, 1, 'a value'],
  ])('%j', (text, line, column, wanted) => {
    expect(jsonFault(text)).toMatchObject({ line, column, wanted })
  })

  it('is nowhere in what JSON.stringify writes', () => {
    fc.assert(fc.property(fc.json(), (text) => jsonFault(text) === null))
  })

  it('is somewhere exactly when JSON.parse refuses', () => {
    const signs = fc.constantFrom(
      '{',
      '}',
      '[',
      ']',
      ',',
      ':',
      '"',
      '"a"',
      '1',
      '-',
      '.',
      'e',
      '0',
      'null',
      ' ',
      '\n',
      '\\',
    )
    fc.assert(
      fc.property(fc.array(signs, { maxLength: 12 }), (parts) => {
        const text = parts.join('')
        expect(jsonFault(text) === null).toBe(isJson(text))
      }),
      { numRuns: 3000 },
    )
  })

  it('is found in a deep nest without running out of room', () => {
    expect(jsonFault('['.repeat(200_000))).toMatchObject({ line: 1, column: 200_001 })
  })
})

function isJson(text: string): boolean {
  try {
    JSON.parse(text)
    return true
  } catch {
    return false
  }
}
