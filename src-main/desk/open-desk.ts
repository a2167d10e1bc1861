import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { accept } from '../domain/outcome.ts'
import type { Outcome } from '../domain/outcome.ts'
import type { Desk } from './desk.ts'

export type OpenDesk = {
  /** The desk as it stands now, with today's date. */
  readonly desk: () => Desk
  readonly close: () => Promise<void>
}

/** Opens the data folder, if one is named, and keeps it open until `close`. */
export async function openDesk(options: {
  readonly dataFolder: string | null
  readonly mayChoosePath: boolean
}): Promise<Outcome<OpenDesk>> {
  const { dataFolder, mayChoosePath } = options
  const surroundings = { mayChoosePath, dataFolder, today: '', now: () => new Date().toISOString() }
  if (dataFolder === null) {
    const papersFolder = join(tmpdir(), 'tailpiece-papers')
    return accept({
      desk: () => ({ ...surroundings, today: today(), store: null, papersFolder }),
      close: () => Promise.resolve(),
    })
  }
  const { openStore, closeStore } = await import('../store/store.ts')
  const { bundledCatalogue, bundledEdition } = await import('./bundled-catalogue.ts')
  const opened = await openStore({ folder: dataFolder, now: surroundings.now })
  if (!opened.ok) return opened
  const store = opened.value
  const papersFolder = join(dataFolder, 'papers')
  const { seedCatalogue, seededEdition } = await import('../store/catalogue.ts')
  const { reading, writing } = await import('../store/store.ts')
  const edition = await bundledEdition()
  if ((await reading(store, seededEdition)) !== edition) {
    const catalogue = await bundledCatalogue()
    await writing(store, (tx) => seedCatalogue(tx, catalogue, edition))
  }
  return accept({
    desk: () => ({ ...surroundings, today: today(), store, papersFolder }),
    close: () => closeStore(store),
  })
}

/** Today in the place where the person sits; TAILPIECE_TODAY fixes it for a test. */
function today(): string {
  const fixed = process.env['TAILPIECE_TODAY']
  if (fixed !== undefined && /^\d{4}-\d{2}-\d{2}$/.test(fixed)) return fixed
  const now = new Date()
  const two = (part: number) => String(part).padStart(2, '0')
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`
}
