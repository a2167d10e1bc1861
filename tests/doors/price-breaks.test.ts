import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { askTerminal, removeFolder, startHost, tempFolder, top } from './doors-for-tests.ts'
import type { StartedHost } from './doors-for-tests.ts'

let folder = ''
let host: StartedHost
beforeAll(async () => {
  folder = await tempFolder()
  host = await startHost(folder)
})
afterAll(async () => {
  await host.stop()
  await removeFolder(folder)
})

type Answer = { readonly ok: boolean; readonly value: unknown }

async function atHost<T>(name: string, input: unknown): Promise<T> {
  const response = await fetch(`${host.home}/call/${name}`, {
    method: 'POST',
    headers: { 'x-tailpiece-key': host.key, 'content-type': 'application/json' },
    body: JSON.stringify(input),
  })
  const answer = (await response.json()) as Answer
  expect(answer).toMatchObject({ ok: true })
  return answer.value as T
}

async function atTerminal<T>(name: string, input: unknown): Promise<T> {
  const words = [name, '--in', '-', '--data', folder]
  const { code, stdout, stderr } = await askTerminal(words, { stdin: JSON.stringify(input) })
  expect([code, stderr]).toEqual([0, ''])
  return JSON.parse(stdout) as T
}

const file = join(top, 'tests/price-files/breaks-in-headings.csv')
const breaks = [
  { fromPacks: 10, packPence: 950 },
  { fromPacks: 25, packPence: 900 },
  { fromPacks: 100, packPence: 825 },
]

it('price breaks that headings state go in at one door and out at the other', async () => {
  const { suppliers } = await atTerminal<{
    suppliers: readonly { supplier: { supplierId: string } }[]
  }>('supplier.list', {})
  const supplierId = suppliers[0]?.supplier.supplierId ?? ''
  const { fileId } = await atHost<{ fileId: string }>('file.keep', {
    name: 'breaks.csv',
    offset: 0,
    base64: (await readFile(file)).toString('base64'),
  })
  const { reading } = await atHost<{ reading: unknown }>('priceFile.look', { file: { fileId }, supplierId })
  const how = { file: { fileId }, supplierId, reading, part: true }
  const compared = await atHost<{ fileHash: string; added: readonly unknown[] }>('priceFile.compare', how)
  expect(compared.added[0]).toMatchObject({ code: 'H1', willPence: 1000, willBreaks: breaks })
  const { fileHash } = compared
  const { changeNo } = await atHost<{ changeNo: number }>('priceFile.apply', { ...how, fileHash })
  type Found = { readonly rows: readonly { readonly rowNo: number; readonly code: string }[] }
  const search = { text: 'H1', supplierId, linked: false }
  const { rows } = await atTerminal<Found>('priceList.search', search)
  expect(rows.find(({ code }) => code === 'H1')).toMatchObject({ listPence: 1000, breaks })
  const rowNo = rows.find(({ code }) => code === 'H1')?.rowNo
  const set = await atTerminal<{ changeNo: number }>('priceList.setPrice', { rowNo, listPence: 1050 })
  const { path } = await atHost<{ path: string }>('price.export', {
    form: 'csv',
    which: { text: 'H1', supplierId, linked: false },
  })
  const name = path.split(/[\\/]/).at(-1) ?? ''
  const { base64 } = await atHost<{ base64: string }>('paper.read', { name })
  const line = Buffer.from(base64, 'base64')
    .toString()
    .split(/\r?\n/)
    .find((one) => one.startsWith('H1,'))
  expect(line).toContain('10.50')
  for (const one of ['10,9.50', '25,9.00', '100,8.25']) expect(line).toContain(one)
  await atTerminal('price.undo', { changeNo: set.changeNo })
  await atTerminal('price.undo', { changeNo })
  expect((await atTerminal<Found>('priceList.search', search)).rows.map(({ code }) => code)).not.toContain(
    'H1',
  )
})
