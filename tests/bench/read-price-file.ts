/**
 * How long a price file of 200,000 rows takes to read, beside the bare table reader over the same file, in one run.
 * Run by `node tests/bench/read-price-file.ts`. It prints medians with the least and the most; it holds nothing to any
 * of them.
 */
import { createReadStream } from 'node:fs'
import { mkdtemp, rm, stat, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import papa from 'papaparse'
import { detectReading } from '../../src-main/exchange/price-files/detect-reading.ts'
import { readRows } from '../../src-main/exchange/price-files/read-rows.ts'
import { answered } from '../answered.ts'

const howMany = 200_000
const runs = 7

function gtin(at: number): string {
  const twelve = String(200_000_000_000 + at)
  const sum = Array.from(twelve).reduce(
    (so, figure, index) => so + Number(figure) * (index % 2 === 0 ? 1 : 3),
    0,
  )
  return `${twelve}${(10 - (sum % 10)) % 10}`
}

/** A list as a supplier sends it: quoted descriptions, pound signs, thousands, prices per 100, dates. */
function listOf(count: number): string {
  const rows = ['Code,Description,EAN,Pack qty,List price,Per,Discount group,Valid from']
  for (let at = 0; at < count; at += 1) {
    const pounds = `${1 + (at % 900)}.${String(at % 100).padStart(2, '0')}`
    const price =
      at % 50 === 0 ? `"£1,${String(at % 1000).padStart(3, '0')}.50"` : at % 3 === 0 ? `£${pounds}` : pounds
    const name =
      at % 2 === 0
        ? `"Elbow ${at % 54} mm, end feed, number ${at}"`
        : `Tee ${at % 54} mm end feed number ${at}`
    const per = at % 10 === 0 ? '100' : 'pack'
    rows.push(
      `${String(at).padStart(7, '0')},${name},${gtin(at)},${1 + (at % 100)},${price},${per},G${at % 40},01/02/2027`,
    )
  }
  return `${rows.join('\r\n')}\r\n`
}

type Times = { readonly median: number; readonly least: number; readonly most: number }
const took: Record<string, number[]> = {}

async function timed(name: string, work: () => Promise<number>): Promise<void> {
  const from = performance.now()
  const rows = await work()
  ;(took[name] ??= []).push(performance.now() - from)
  if (rows < howMany) throw new Error(`${name} read ${rows} rows`)
}

function timesOf(all: readonly number[]): Times {
  const sorted = all.toSorted((a, b) => a - b)
  return { median: sorted[sorted.length >> 1] ?? 0, least: sorted[0] ?? 0, most: sorted.at(-1) ?? 0 }
}

function bare(path: string, way: 'step' | 'chunk'): Promise<number> {
  return new Promise((resolve, reject) => {
    let rows = 0
    const stream = createReadStream(path, { encoding: 'utf8' })
    const ends = { complete: () => resolve(rows), error: reject }
    if (way === 'step') papa.parse<string[]>(stream, { step: () => void (rows += 1), ...ends })
    else papa.parse<string[]>(stream, { chunk: ({ data }) => void (rows += data.length), ...ends })
  })
}

const folder = await mkdtemp(join(tmpdir(), 'price-file-'))
try {
  const path = join(folder, 'list.csv')
  await writeFile(path, listOf(howMany))
  const source = { path, name: 'list.csv' }
  const reading = answered(await detectReading(source))
  const ignore = () => undefined
  for (let run = 0; run <= runs; run += 1) {
    await timed('bare table reader, row by row', () => bare(path, 'step'))
    await timed('bare table reader, piece by piece', () => bare(path, 'chunk'))
    await timed('read, every row skipped as it stands', async () => {
      const hear = { raw: () => 'skip' as const, row: ignore, rejected: ignore }
      return answered(await readRows(source, reading, hear)).rows
    })
    await timed('read, every row understood and checked', async () => {
      let rows = 0
      const problems: string[] = []
      const hear = {
        row: () => void (rows += 1),
        rejected: ({ says }: { says: string }) => void problems.push(says),
      }
      answered(await readRows(source, reading, hear))
      if (problems.length > 0) throw new Error(problems[0])
      return rows
    })
    // The first run warms up.
    if (run === 0) for (const times of Object.values(took)) times.length = 0
  }
  const mb = (await stat(path)).size / 1024 / 1024
  console.log(`${howMany} rows, ${mb.toFixed(1)} MB, ${runs} runs by turns`)
  const first = timesOf(took['bare table reader, row by row'] ?? []).median
  for (const [name, all] of Object.entries(took)) {
    const { median, least, most } = timesOf(all)
    const spread = `(${least.toFixed(0)} to ${most.toFixed(0)})`
    console.log(
      `${name.padEnd(42)}${median.toFixed(0).padStart(7)} ms  ${spread.padEnd(16)}${(median / first).toFixed(2)} x`,
    )
  }
} finally {
  await rm(folder, { recursive: true })
}
