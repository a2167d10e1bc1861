import { request } from 'node:http'
import type { IncomingHttpHeaders } from 'node:http'
import { readFile, stat } from 'node:fs/promises'
import { join } from 'node:path'
import { text } from 'node:stream/consumers'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { removeFolder, startHost, tempFolder } from './doors-for-tests.ts'
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

type Sent = {
  readonly method?: string
  readonly headers?: Readonly<Record<string, string>>
  readonly body?: string | Buffer
}
type Got = { readonly status: number; readonly headers: IncomingHttpHeaders; readonly body: string }

/** Sends exactly this, without the tidying that a browser or fetch would do. */
async function send(path: string, { method = 'GET', headers = {}, body }: Sent = {}): Promise<Got> {
  const { hostname, port } = new URL(host.home)
  const sent = request({ hostname, port, path, method, headers })
  sent.end(body)
  return new Promise((resolve, reject) => {
    sent.once('error', reject)
    sent.once('response', (response) => {
      text(response).then(
        (whole) => resolve({ status: response.statusCode ?? 0, headers: response.headers, body: whole }),
        reject,
      )
    })
  })
}

const withKey = (more: Readonly<Record<string, string>> = {}) => ({ 'x-tailpiece-key': host.key, ...more })
const json = { 'content-type': 'application/json' }
const callAs = (headers: Readonly<Record<string, string>>, body: string | Buffer = '{}') =>
  send('/call/app.about', { method: 'POST', headers, body })

/** A refusal has the same shape at every door. */
function expectRefusal({ body, status }: Got, statusWanted: number, code: string): void {
  expect(status).toBe(statusWanted)
  const outcome = JSON.parse(body) as { ok: boolean; problems: readonly { code: string; message: string }[] }
  expect(outcome.ok).toBe(false)
  expect(outcome.problems[0]?.code).toBe(code)
  expect(outcome.problems[0]?.message).toMatch(/^[A-Z].*\.$/)
  expect(body).not.toMatch(/at .*\.js:\d+/)
}

describe('The loopback host', () => {
  it('lets in whoever brings the key of this start, with a cookie that only this page sends', async () => {
    const got = await send(`/?key=${host.key}`)
    expect(got.status).toBe(303)
    expect(got.headers.location).toBe('/')
    const [cookie = ''] = got.headers['set-cookie'] ?? []
    expect(cookie).toContain('HttpOnly')
    expect(cookie).toContain('SameSite=Strict')
    const page = await send('/', { headers: { cookie: cookie.split(';')[0] ?? '' } })
    expect(page.status).toBe(200)
    expect(page.body).toContain('<div id="root">')
  })

  it('answers calls with the value, or with the problems', async () => {
    const good = await callAs(withKey(json))
    expect(JSON.parse(good.body)).toMatchObject({
      ok: true,
      value: { dataFolder: folder, today: '2026-03-02' },
    })
    const wrong = await send('/call/emitter.output', { method: 'POST', headers: withKey(json), body: '{}' })
    expectRefusal(wrong, 200, 'invalid')
    const unknown = await send('/call/emiter.output', { method: 'POST', headers: withKey(json), body: '{}' })
    expectRefusal(unknown, 200, 'not-found')
  })

  it('sends its policy with everything', async () => {
    for (const got of [
      await send('/', { headers: withKey() }),
      await callAs(withKey(json)),
      await send('/'),
    ]) {
      expect(got.headers['content-security-policy']).toContain("default-src 'none'")
      expect(got.headers['content-security-policy']).toContain("script-src 'self'")
      expect(got.headers['x-content-type-options']).toBe('nosniff')
      expect(got.headers['access-control-allow-origin']).toBeUndefined()
    }
  })
})

describe('The loopback host keeps out', () => {
  it('whoever has no key, or a wrong one', async () => {
    expectRefusal(await send('/'), 403, 'refused')
    expectRefusal(await callAs(json), 403, 'refused')
    expectRefusal(await send('/?key=wrong'), 403, 'refused')
    expectRefusal(await callAs({ ...json, 'x-tailpiece-key': `${host.key}x` }), 403, 'refused')
    const cookie = `tailpiece-${new URL(host.home).port}=${'x'.repeat(host.key.length)}`
    expectRefusal(await callAs({ ...json, cookie }), 403, 'refused')
  })

  it('another name for this machine, so that no foreign name can be turned to it', async () => {
    const { port } = new URL(host.home)
    for (const name of [
      `rebound.example.com:${port}`,
      `localhost:${port}`,
      '127.0.0.1',
      `127.0.0.1:${port}0`,
    ]) {
      expectRefusal(await callAs(withKey({ ...json, host: name })), 403, 'refused')
    }
  })

  it('a page from elsewhere, even with the key', async () => {
    for (const origin of [
      'https://example.com',
      'null',
      'http://127.0.0.1:1',
      host.home.replace('http', 'https'),
    ]) {
      expectRefusal(await callAs(withKey({ ...json, origin })), 403, 'refused')
    }
    expect((await callAs(withKey({ ...json, origin: host.home }))).status).toBe(200)
  })

  it('a path that climbs out of the window, however it is written', async () => {
    for (const path of [
      '/../../package.json',
      '/..%2f..%2fpackage.json',
      '/%2e%2e/%2e%2e/package.json',
      '/assets/../../main/host.js',
      '/..\\..\\package.json',
      '/..%5c..%5cpackage.json',
      '//etc/passwd',
      '/%00.html',
      '/%E0%A4%A.html',
    ]) {
      expectRefusal(await send(path, { headers: withKey() }), 404, 'not-found')
    }
  })

  it('whoever wants to see a folder', async () => {
    for (const path of ['/assets', '/assets/', '/.']) {
      expectRefusal(await send(path, { headers: withKey() }), 404, 'not-found')
    }
  })

  it('an input that is too long, and works on', async () => {
    const long = await callAs(withKey(json), Buffer.alloc(21 * 1024 * 1024, ' '))
    expectRefusal(long, 413, 'invalid')
    expect((await callAs(withKey(json))).status).toBe(200)
  })

  it('broken JSON, a form, and the wrong verb', async () => {
    expectRefusal(await callAs(withKey(json), '{"a": NaN}'), 400, 'invalid')
    const form = withKey({ 'content-type': 'application/x-www-form-urlencoded' })
    expectRefusal(await callAs(form, 'a=1'), 415, 'refused')
    expectRefusal(await send('/call/app.about', { headers: withKey() }), 405, 'refused')
    expectRefusal(await send('/', { method: 'DELETE', headers: withKey() }), 405, 'refused')
  })

  it('a path to write to: only the terminal lets a person choose one', async () => {
    const sample = await send('/call/job.sample', { method: 'POST', headers: withKey(json), body: '{}' })
    const { value } = JSON.parse(sample.body) as { value: { job: object } }
    const body = JSON.stringify({ job: value.job, out: join(folder, 'elsewhere.pdf') })
    expectRefusal(
      await send('/call/quote.pdf', { method: 'POST', headers: withKey(json), body }),
      200,
      'refused',
    )
    await expect(stat(join(folder, 'elsewhere.pdf'))).rejects.toThrow('ENOENT')
  })
})

describe('The end of the loopback host', () => {
  it.each(['SIGINT', 'SIGTERM'] as const)('is clean on %s, and leaves one closed file', async (signal) => {
    const own = await tempFolder()
    const short = await startHost(own)
    expect(await short.stop(signal)).toBe(0)
    expect((await readFile(join(own, 'tailpiece.db'))).subarray(0, 15).toString()).toBe('SQLite format 3')
    await expect(readFile(join(own, 'tailpiece.db-wal'))).rejects.toThrow('ENOENT')
    await removeFolder(own)
  })
})
