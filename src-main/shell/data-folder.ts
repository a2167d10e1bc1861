import { homedir } from 'node:os'
import { join } from 'node:path'

type Surroundings = {
  readonly platform: NodeJS.Platform
  readonly env: { readonly [name: string]: string | undefined }
}

/** Where the data file lies when nobody says: the user's own folder for application data. */
export function defaultDataFolder({ platform, env }: Surroundings): string {
  return join(applicationData(platform, env), 'Tailpiece')
}

function applicationData(platform: NodeJS.Platform, env: Surroundings['env']): string {
  if (platform === 'win32') return env['APPDATA'] ?? join(homedir(), 'AppData', 'Roaming')
  if (platform === 'darwin') return join(homedir(), 'Library', 'Application Support')
  return env['XDG_DATA_HOME'] ?? join(homedir(), '.local', 'share')
}
