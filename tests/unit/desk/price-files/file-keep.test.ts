import { readdir, readFile, utimes } from 'node:fs/promises'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { plainName } from '../../../../src-main/desk/price-files/kept-file.ts'
import { storeOf } from '../../../../src-main/desk/store-of.ts'
import { valueOf } from '../../../store/store-for-tests.ts'
import { ask, listOf, problemOf, reading, room } from './price-files-for-tests.ts'

const base64 = (text: string) => Buffer.from(text).toString('base64')

describe('a file that is handed over', () => {
  it('comes piece by piece, and is then looked at, compared and taken by its name', async () => {
    const { desk } = await room()
    const text = listOf(30)
    const name = 'list.csv'
    const half = Math.floor(text.length / 2)
    const first = valueOf(
      await ask(desk, 'file.keep', { name, offset: 0, base64: base64(text.slice(0, half)) }),
    )
    const { fileId } = first
    const rest = { fileId, name, offset: half, base64: base64(text.slice(half)) }
    expect(valueOf(await ask(desk, 'file.keep', rest))).toEqual({ fileId, bytes: text.length })
    expect(problemOf(await ask(desk, 'file.keep', rest))).toMatchObject({ code: 'conflict', path: 'offset' })
    const kept = join(storeOf(desk).folder, 'incoming', fileId, name)
    expect(await readFile(kept, 'utf8')).toBe(text)
    const window = { ...desk, mayChoosePath: false }
    const look = valueOf(await ask(window, 'priceFile.look', { file: { fileId }, supplierId: 'north' }))
    expect(look).toMatchObject({ name, bytes: text.length, remembered: false })
    expect(look.understood[0]).toEqual({
      rowNo: 2,
      code: 'T000000',
      name: 'Copper elbow 0 15mm',
      packHolds: 1,
      packPence: 1000,
    })
    const asked = { file: { fileId }, supplierId: 'north', reading }
    const { fileHash } = valueOf(await ask(window, 'priceFile.compare', asked))
    expect(valueOf(await ask(window, 'priceFile.apply', { ...asked, fileHash })).counts.new).toBe(30)
    const again = valueOf(await ask(window, 'priceFile.look', { file: { fileId }, supplierId: 'north' }))
    expect(again).toMatchObject({ remembered: true, reading })
  }, 60_000)

  it('is named without folders and signs, and never hidden', () => {
    expect(plainName('../../etc/list.csv')).toBe('list.csv')
    expect(plainName('C:\\Prices\\spring 2026 (2).xlsx')).toBe('spring 2026 (2).xlsx')
    expect(plainName('..hidden')).toBe('hidden')
    expect(plainName('a<b>|c?.csv')).toBe('a-b--c-.csv')
    expect(plainName('...')).toBe('price list')
    expect(plainName(`${'x'.repeat(300)}.csv`)).toMatch(/^x{96}\.csv$/)
  })

  it('goes after a day, and what is no base64 or was never there is refused', async () => {
    const { desk } = await room()
    const put = (name: string) => ask(desk, 'file.keep', { name, offset: 0, base64: base64('a,b') })
    const { fileId } = valueOf(await put('old.csv'))
    const incoming = join(storeOf(desk).folder, 'incoming')
    const now = Date.parse(desk.now())
    await utimes(join(incoming, fileId), new Date(now - 25 * 3_600_000), new Date(now - 25 * 3_600_000))
    const other = valueOf(await put('new.csv'))
    expect(await readdir(incoming)).toEqual([other.fileId])
    const gone = await ask(desk, 'priceFile.look', { file: { fileId } })
    expect(problemOf(gone)).toMatchObject({ code: 'not-found', path: 'file.fileId' })
    const wrong = await ask(desk, 'file.keep', { name: 'x.csv', offset: 0, base64: 'not base64!' })
    expect(problemOf(wrong)).toMatchObject({ code: 'invalid', path: 'base64' })
  })
})
