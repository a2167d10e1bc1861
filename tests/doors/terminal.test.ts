import { mkdir, readFile, writeFile } from 'node:fs/promises'
import { spawn } from 'node:child_process'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { requests } from '../../src-main/contract/requests.ts'
import type { Problem } from '../../src-main/domain/outcome.ts'
import { askTerminal, doorEnv, ended, removeFolder, tempFolder, top } from './doors-for-tests.ts'
import type { Said } from './doors-for-tests.ts'

let folder = ''
beforeAll(async () => {
  folder = await tempFolder()
})
afterAll(() => removeFolder(folder))

const good = { ratedW: 1000, exponent: 1.3, flowC: 75, returnC: 65, roomC: 20 }

/** Asks with this text as the input file. */
async function asked(name: string, text: string): Promise<Said> {
  const file = join(folder, 'input.json')
  await writeFile(file, text)
  return askTerminal([name, '--in', file])
}

/** Expects problems on standard error and nothing else anywhere; gives them. */
function expectProblems(said: Said, code = 1): readonly Problem[] {
  expect(said.stdout).toBe('')
  expect(said.code).toBe(code)
  const { problems } = JSON.parse(said.stderr) as { problems: readonly Problem[] }
  expect(problems.length).toBeGreaterThan(0)
  for (const { message } of problems) expect(message).toMatch(/^\S.* .*\.$/)
  return problems
}

describe('The terminal', () => {
  it('answers with JSON on standard output and nothing else', async () => {
    const said = await asked('emitter.output', JSON.stringify(good))
    expect(said.stderr).toBe('')
    expect(said.code).toBe(0)
    // At its own test temperatures an emitter gives what it is rated at: that is what a rating means.
    expect(JSON.parse(said.stdout)).toMatchObject({ watts: 1000, mean: 'logarithmic' })
  })

  it('asks with an empty object when there is no --in', async () => {
    const said = await askTerminal(['app.about'])
    expect(JSON.parse(said.stdout)).toMatchObject({ today: '2026-03-02', dataFolder: null })
  })

  it('takes its input from standard input for --in -, and --in=FILE as --in FILE', async () => {
    const piped = await askTerminal(['emitter.output', '--in', '-'], { stdin: JSON.stringify(good) })
    expect(piped).toMatchObject({ code: 0, stderr: '' })
    await writeFile(join(folder, 'good.json'), JSON.stringify(good))
    const inOneWord = await askTerminal([`emitter.output`, `--in=good.json`], { cwd: folder })
    expect(inOneWord).toEqual(piped)
  })

  it('reads UTF-8 with its mark and UTF-16 as other programs write them', async () => {
    for (const bytes of [
      Buffer.from(`\uFEFF${JSON.stringify(good)}`),
      Buffer.from(`\uFEFF${JSON.stringify(good)}`, 'utf16le'),
    ]) {
      const file = join(folder, 'marked.json')
      await writeFile(file, bytes)
      expect(await askTerminal(['emitter.output', '--in', file])).toMatchObject({ code: 0, stderr: '' })
    }
  })

  it('lists every request with its doc, kind, needs and JSON Schemas', async () => {
    const { stdout, code } = await askTerminal(['list'])
    expect(code).toBe(0)
    const { requests: listed } = JSON.parse(stdout) as { requests: readonly Record<string, unknown>[] }
    expect(listed.map(({ name }) => name).toSorted()).toEqual(Object.keys(requests).toSorted())
    for (const request of listed) {
      expect(request).toMatchObject({
        doc: expect.stringMatching(/\S/) as unknown,
        kind: expect.stringMatching(/^(query|command)$/) as unknown,
        needs: expect.stringMatching(/^(nothing|data)$/) as unknown,
        input: { $schema: 'https://json-schema.org/draft/2020-12/schema' },
        output: { $schema: 'https://json-schema.org/draft/2020-12/schema' },
      })
    }
  })

  it('keeps data in the folder that --data names, and leaves one closed file there', async () => {
    const data = join(folder, 'data')
    const { job } = JSON.parse((await askTerminal(['job.sample'])).stdout) as { job: { jobId: string } }
    const saved = await askTerminal(['job.save', '--in', '-', '--data', data], {
      stdin: JSON.stringify({ job }),
    })
    expect(saved).toMatchObject({ code: 0, stderr: '' })
    const read = await askTerminal(['job.read', '--in', '-', '--data', data], {
      stdin: JSON.stringify({ jobId: job.jobId }),
    })
    expect(JSON.parse(read.stdout)).toEqual({ job })
    await expect(readFile(join(data, 'tailpiece.db-wal'))).rejects.toThrow('ENOENT')
  })
})

describe('The terminal refuses with exit 1 and a sentence', () => {
  const wrongFields: readonly (readonly [what: string, input: object, path: string])[] = [
    ['a text for a number', { ...good, ratedW: '1000' }, 'ratedW'],
    ['a missing field', { ...good, flowC: undefined }, 'flowC'],
    ['a negative output', { ...good, ratedW: -1000 }, 'ratedW'],
    ['an absurd output', { ...good, ratedW: 1e300 }, 'ratedW'],
    ['a field that there is not', { ...good, ratdW: 1 }, 'ratdW'],
    ['a list for a number', { ...good, roomC: [20] }, 'roomC'],
  ]
  it.each(wrongFields)('%s, at its path', async (_, input, path) => {
    const problems = expectProblems(await asked('emitter.output', JSON.stringify(input)))
    expect(problems).toContainEqual(expect.objectContaining({ code: 'invalid', path }))
  })

  it('a number that JSON reads as infinite', async () => {
    const problems = expectProblems(
      await asked('emitter.output', JSON.stringify(good).replace('1000', '1e999')),
    )
    expect(problems[0]?.path).toBe('ratedW')
  })

  it('NaN, which is not JSON, at its line and column', async () => {
    const [problem] = expectProblems(await asked('emitter.output', '{\n  "ratedW": NaN\n}'))
    expect(problem?.message).toContain('line 2, column 13')
    expect(problem?.message).toContain('finite')
  })

  it('broken JSON, at its line and column', async () => {
    const [problem] = expectProblems(await asked('emitter.output', '{"ratedW": 1000,\n "exponent": 1.3,\n}'))
    expect(problem?.message).toContain('line 3, column 1')
    const [cut] = expectProblems(await asked('emitter.output', '{"ratedW": 10'))
    expect(cut?.message).toContain('line 1, column 14')
  })

  it('JSON that is no object, an empty file, and bytes that are no text', async () => {
    expectProblems(await asked('emitter.output', '[1, 2]'))
    expectProblems(await asked('emitter.output', 'null'))
    expectProblems(await asked('emitter.output', '  \n'))
    const file = join(folder, 'bytes.json')
    await writeFile(file, Buffer.from([0x7b, 0xff, 0xfe, 0x7d]))
    expectProblems(await askTerminal(['emitter.output', '--in', file]))
  })

  it('an item that there is not', async () => {
    const [problem] = expectProblems(await asked('catalogue.item', '{"itemId": "no-such-thing"}'))
    expect(problem?.code).toBe('not-found')
  })

  it('a file that there is not, and a folder for a file', async () => {
    const [absent] = expectProblems(await askTerminal(['heat.load', '--in', join(folder, 'absent.json')]))
    expect(absent?.code).toBe('io')
    await mkdir(join(folder, 'folder.json'), { recursive: true })
    expectProblems(await askTerminal(['heat.load', '--in', join(folder, 'folder.json')]))
  })

  it('a request that needs data when no folder is named', async () => {
    const [problem] = expectProblems(await askTerminal(['job.list']))
    expect(problem).toMatchObject({ code: 'refused', next: 'Name one with --data FOLDER.' })
  })

  it('a data folder that is a file', async () => {
    await writeFile(join(folder, 'plain'), '')
    expectProblems(await askTerminal(['job.list', '--data', join(folder, 'plain')]))
  })

  it.each([
    ['an unknown flag', ['app.about', '--inn', 'x']],
    ['a flag without its value', ['app.about', '--in']],
    ['a flag in the place of a value', ['app.about', '--in', '--data']],
    ['a flag given twice', ['app.about', '--data', 'a', '--data', 'b']],
    ['a second word', ['app.about', 'job.list']],
    ['no word at all', []],
  ])('%s', async (_, words) => {
    const [problem] = expectProblems(await askTerminal(words))
    expect(problem?.code).toBe('invalid')
  })
})

describe('The terminal and other programs', () => {
  it('refuses an unknown request with exit 2 and the nearest names', async () => {
    const [problem] = expectProblems(await askTerminal(['emiter.outptu']), 2)
    expect(problem).toMatchObject({ code: 'not-found' })
    expect(problem?.next).toContain('emitter.output')
  })

  it('takes no name that every object has for a request', async () => {
    for (const name of ['constructor', 'toString', '__proto__']) expectProblems(await askTerminal([name]), 2)
  })

  it('gives the whole of a long answer to a slow reader', async () => {
    const child = spawn(process.execPath, [join(top, 'out/main/terminal.js'), 'list'], { env: doorEnv })
    let length = 0
    let printed = ''
    for await (const part of child.stdout) {
      printed += String(part)
      length += 1
      if (length < 5) await new Promise((resolve) => setTimeout(resolve, 50))
    }
    await ended(child)
    expect(printed.length).toBeGreaterThan(200_000)
    expect(JSON.parse(printed)).toHaveProperty('requests')
  })

  it('ends quietly when its reader has seen enough', async () => {
    const child = spawn(process.execPath, [join(top, 'out/main/terminal.js'), 'list'], { env: doorEnv })
    let complaints = ''
    child.stderr.on('data', (part: Buffer) => (complaints += String(part)))
    child.stdout.once('data', () => child.stdout.destroy())
    await ended(child)
    expect(complaints).toBe('')
  })
})
