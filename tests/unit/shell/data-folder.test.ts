import { homedir } from 'node:os'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { defaultDataFolder } from '../../../src-main/shell/data-folder.ts'

it.each([
  ['linux', {}, join(homedir(), '.local/share/Tailpiece')],
  ['linux', { XDG_DATA_HOME: '/elsewhere' }, '/elsewhere/Tailpiece'],
  ['darwin', {}, join(homedir(), 'Library/Application Support/Tailpiece')],
  ['win32', { APPDATA: '/roaming' }, '/roaming/Tailpiece'],
] as const)('on %s with %j the data lie in the folder for application data', (platform, env, folder) => {
  expect(defaultDataFolder({ platform, env })).toBe(folder)
})
