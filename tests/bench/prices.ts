/**
 * How long suppliers' price lists take: 200,000 rows new, again with 5 % changed, again unchanged, and compared only, beside the
 * `sqlite3` program doing the same job, beside its bare import and beside the bare table reader, in one run; the search over a million
 * rows beside a LIKE scan of them; memory; and how long the asking thread stands still. Run by `node tests/bench/prices.ts`; a first
 * word is the number of rows, a second the number of rounds, a third the rows that are searched. It holds nothing to any of them.
 * `sqlite3` must be on the machine; processor time is given too, because machines are shared.
 */
import { spawnSync } from 'node:child_process'
import { createReadStream, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { monitorEventLoopDelay } from 'node:perf_hooks'
import SqliteFile from 'better-sqlite3'
import papa from 'papaparse'
import type { FileReading } from '../../src-main/domain/price-list.ts'
import type { Desk } from '../../src-main/desk/desk.ts'
import { priceFileApply } from '../../src-main/desk/price-files/price-file-apply.ts'
import { priceListSearch } from '../../src-main/desk/price-files/price-list-search.ts'
import { longWork } from '../../src-main/desk/running/long-work.ts'
import { closeStore, openStore, writing } from '../../src-main/store/store.ts'
import type { Store } from '../../src-main/store/store.ts'
import { saveSupplier } from '../../src-main/store/catalogue.ts'
import { answered } from '../answered.ts'
import { printBeside, spread } from './measure.ts'

const [howMany = 200_000, rounds = 3, searched = 1_000_000] = process.argv.slice(2).map(Number)
const today = '2026-11-25'
const now = () => `${today}T09:00:00.000Z`
const folder = mkdtempSync(join(tmpdir(), 'tailpiece-bench-'))
const at = (name: string) => join(folder, name)

const reading: FileReading = {
  form: 'text',
  encoding: 'utf-8',
  delimiter: ',',
  headerRow: 1,
  decimal: 'point',
  dates: 'dayFirst',
  columns: (['code', 'name', 'gtin', 'packHolds', 'price', 'group'] as const).map((meaning, index) => ({
    at: index,
    meaning,
  })),
}

const things =
  'pipe elbow radiator valve bracket clip coupler reducer tee plug screw washer tape tail head insert'.split(
    ' ',
  )
const kinds =
  'copper brass chrome white angled lockshield thermostatic double convector compression solder towel'.split(
    ' ',
  )
const sizes = [8, 10, 15, 22, 28, 35]

/** The same rows in every run. Codes are in no order, as most lists have them. */
function listOf(rows: number, changed: boolean): string {
  let state = 1
  const pick = (most: number) => {
    state = (state * 16_807) % 2_147_483_647
    return state % most
  }
  const lines = ['Code,Description,Barcode,Pack,Price,Group']
  for (let row = 0; row < rows; row += 1) {
    const code = `${String((row * 7919) % 1_000_003).padStart(7, '0')}-${row % 97}`
    const name = `${kinds[pick(12)]} ${things[pick(16)]} ${sizes[pick(6)]}mm ${kinds[pick(12)]} ${things[pick(16)]}`
    const pence = 100 + pick(90_000) + (changed && row % 20 === 0 ? 7 : 0)
    lines.push(`${code},${name},,${[1, 1, 1, 10, 100][pick(5)]},${(pence / 100).toFixed(2)},G${pick(40)}`)
  }
  return `${lines.join('\n')}\n`
}

type Cost = { readonly ms: number; readonly cpuMs: number }
const costs = new Map<string, Cost[]>()
const put = (name: string, cost: Cost) => costs.set(name, [...(costs.get(name) ?? []), cost])

async function timed<T>(name: string, work: () => Promise<T>): Promise<T> {
  const cpu = process.cpuUsage()
  const start = performance.now()
  const value = await work()
  const used = process.cpuUsage(cpu)
  put(name, { ms: performance.now() - start, cpuMs: (used.user + used.system) / 1000 })
  return value
}

function sqlite(name: string, file: string, commands: readonly string[]): void {
  const start = performance.now()
  const done = spawnSync('bash', ['-c', `TIMEFORMAT='%U %S'; time sqlite3 "$0" >/dev/null`, at(file)], {
    input: commands.join('\n'),
    encoding: 'utf8',
  })
  if (done.status !== 0) throw new Error(done.stderr)
  const [user = 0, system = 0] = (done.stderr.trim().split('\n').at(-1) ?? '').split(' ').map(Number)
  put(name, { ms: performance.now() - start, cpuMs: (user + system) * 1000 })
}

const peers = {
  same: 'sqlite3: staging table, unique table, index rebuilt',
  bare: 'sqlite3: bare .import',
  parser: 'the bare table reader',
}

function sameJobBySqlite(csv: string): void {
  rmSync(at('peer.db'), { force: true })
  sqlite(peers.same, 'peer.db', [
    'pragma journal_mode = wal;',
    'pragma synchronous = full;',
    'create table staging (code text, name text, gtin text, holds text, price text, grp text);',
    `create table list (row_no integer primary key, supplier text not null, code text not null, name text not null, gtin text,
       holds real not null, pence integer not null, grp text, valid_from text not null, unique (supplier, code)) strict;`,
    `create virtual table list_search using fts5 (words, content = '', prefix = '2 3', detail = 'none');`,
    '.mode csv',
    `.import --skip 1 ${at(csv)} staging`,
    'begin;',
    `insert into list (supplier, code, name, gtin, holds, pence, grp, valid_from)
       select 's', code, name, gtin, cast(holds as real), cast(round(price * 100) as integer), grp, '2026-01-01' from staging;`,
    `insert into list_search (rowid, words) select row_no, name || ' ' || code from list;`,
    'commit;',
  ])
}

function bareBySqlite(csv: string): void {
  rmSync(at('bare.db'), { force: true })
  sqlite(peers.bare, 'bare.db', ['.mode csv', `.import ${at(csv)} list`])
}

function bareReader(csv: string): Promise<void> {
  return new Promise((resolve, reject) => {
    papa.parse(createReadStream(at(csv)), { step: () => {}, complete: () => resolve(), error: reject })
  })
}

async function emptyStore(name: string): Promise<Store> {
  const store = answered(await openStore({ folder: at(name), now }))
  await writing(store, (tx) =>
    saveSupplier(tx, { supplierId: 's', name: 'Bench Supplies', carriagePence: 0 }),
  )
  return store
}

const taskFor = ({ file }: Store, csv: string) => ({
  file,
  source: { path: at(csv), name: csv },
  supplierId: 's',
  reading,
  today,
  most: 100,
})

const compareIn = (store: Store, csv: string) =>
  longWork({ ...taskFor(store, csv), kind: 'compare', folder: store.folder }, undefined).then(answered)
const applyIn = (store: Store, csv: string, fileHash: string) =>
  longWork({ ...taskFor(store, csv), kind: 'apply', at: now(), fileHash, links: [] }, undefined).then(
    answered,
  )

/** As a door asks for it: a file that is in the list already is known before a thread is started. */
const applyAsked = async (store: Store, csv: string, fileHash: string) =>
  answered(
    await priceFileApply({ file: { path: at(csv) }, supplierId: 's', reading, fileHash }, deskOver(store)),
  )

const deskOver = (store: Store): Desk => ({
  today,
  now,
  store,
  dataFolder: store.folder,
  papersFolder: folder,
  mayChoosePath: true,
})

const ours = {
  fresh: 'new',
  changed: 'again, 5 % changed',
  dry: 'compared only, 5 % changed',
  same: 'again, unchanged',
}

async function oneRound(): Promise<void> {
  const store = await emptyStore('data')
  const hashOf = async (csv: string) => (await compareIn(store, csv)).fileHash
  const first = await hashOf('new.csv')
  sameJobBySqlite('new.csv')
  bareBySqlite('new.csv')
  await timed(peers.parser, () => bareReader('new.csv'))
  const fresh = await timed(ours.fresh, () => applyIn(store, 'new.csv', first))
  if (fresh.counts.new !== howMany) throw new Error('Not every row was new')
  const compared = await timed(ours.dry, () => compareIn(store, 'changed.csv'))
  if (compared.counts.changed !== Math.ceil(howMany / 20)) throw new Error('Not 5 % were changed')
  await timed(ours.changed, () => applyIn(store, 'changed.csv', compared.fileHash))
  const same = await timed(ours.same, () => applyAsked(store, 'changed.csv', compared.fileHash))
  if (same.changeNo !== null || same.counts.unchanged !== howMany) throw new Error('Something was changed')
  await closeStore(store)
  rmSync(at('data'), { recursive: true })
}

function print(title: string, peer: string, subjects: readonly string[]): void {
  for (const [unit, of] of [
    ['by the clock', ({ ms }: Cost) => ms],
    ['processor time', ({ cpuMs }: Cost) => cpuMs],
  ] as const) {
    const took = (name: string) => spread(name, (costs.get(name) ?? []).map(of))
    printBeside(`${title} (${unit})`, [took(peer), ...subjects.map(took)])
  }
}

/** What typing these goes through on the way. */
const typed = [
  'copper pipe 15mm',
  'radiator valve 22',
  '15 mm elbow',
  'lockshield angled 15',
  'towel brass tee',
  'trv 15',
  'reducer 28 copper',
  '0007919-1',
  'chrome 10 mm clip',
  'wh',
  '15',
  'p',
]

function everyStart(): readonly string[] {
  return typed.flatMap((text) =>
    Array.from({ length: text.length }, (_, index) => text.slice(0, index + 1)).filter(
      (part) => part.trim() === part,
    ),
  )
}

async function measureSearch(store: Store): Promise<void> {
  const desk = deskOver(store)
  const texts = everyStart()
  const times: number[] = []
  await priceListSearch({ text: 'warm up' }, desk)
  for (const text of texts) {
    const start = performance.now()
    const { rows } = answered(await priceListSearch({ text }, desk))
    times.push(performance.now() - start)
    if (rows.length > 50) throw new Error('More rows than were asked for')
  }
  const db = new SqliteFile(store.file, { readonly: true })
  const scans = typed.map((text) => {
    const words = text
      .replaceAll('mm', '')
      .split(/\s+/)
      .filter((word) => word !== '')
    const where = words.map(() => `(name like ? or code like ?)`).join(' and ')
    const scan = db.prepare(`select * from supplier_row where ${where} order by name limit 50`)
    const start = performance.now()
    scan.all(words.flatMap((word) => [`%${word}%`, `%${word}%`]))
    return performance.now() - start
  })
  db.close()
  const p = (all: readonly number[], share: number) =>
    (all.toSorted((a, b) => a - b)[Math.ceil(share * all.length) - 1] ?? 0).toFixed(1)
  console.log(
    `\nSearch as you type over ${searched.toLocaleString('en-GB')} rows, first 50, ranked (${texts.length} texts)`,
  )
  console.log(
    `  ours: p50 ${p(times, 0.5)} ms, p95 ${p(times, 0.95)} ms; LIKE scan: p50 ${p(scans, 0.5)} ms, p95 ${p(scans, 0.95)} ms`,
  )
}

async function measureLarge(): Promise<void> {
  writeFileSync(at('large.csv'), listOf(searched, false))
  const store = await emptyStore('large')
  const idle = process.memoryUsage().rss
  let peak = idle
  const watching = setInterval(() => (peak = Math.max(peak, process.memoryUsage().rss)), 25)
  const delay = monitorEventLoopDelay({ resolution: 1 })
  const { fileHash } = await compareIn(store, 'large.csv')
  const comparePeak = peak
  delay.enable()
  const start = performance.now()
  await applyIn(store, 'large.csv', fileHash)
  const ms = performance.now() - start
  delay.disable()
  clearInterval(watching)
  const mb = (bytes: number) => (bytes / 1024 / 1024).toFixed(0)
  console.log(`\n${searched.toLocaleString('en-GB')} rows, new: ${ms.toFixed(0)} ms`)
  console.log(
    `  memory over idle at most: comparing ${mb(comparePeak - idle)} MB, in all ${mb(peak - idle)} MB (idle ${mb(idle)} MB)`,
  )
  console.log(
    `  the asking thread stood still: p99 ${(delay.percentile(99) / 1e6).toFixed(1)} ms, at most ${(delay.max / 1e6).toFixed(1)} ms`,
  )
  await measureSearch(store)
  await closeStore(store)
}

try {
  writeFileSync(at('new.csv'), listOf(howMany, false))
  writeFileSync(at('changed.csv'), listOf(howMany, true))
  console.log(`Price lists of ${howMany.toLocaleString('en-GB')} rows, ${rounds} rounds`)
  if (searched > 0) await measureLarge()
  for (let round = 0; round < rounds; round += 1) await oneRound()
  print('A new list', peers.same, [ours.fresh, peers.parser])
  print('The same list again', peers.bare, [ours.dry, ours.changed, ours.same, peers.parser])
} finally {
  rmSync(folder, { recursive: true, force: true })
}
