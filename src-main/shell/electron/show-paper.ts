import { stat } from 'node:fs/promises'
import { join } from 'node:path'
import { requests } from '../../contract/requests.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'

/** What the window asks by this name the shell answers itself: only a desktop has folders to show. */
export const showPaperName = 'window.showPaper'

type Folder = {
  readonly papersFolder: string
  /** Opens the computer’s own view of a folder with this file chosen. */
  readonly show: (path: string) => void
}

/** Shows a paper where it lies. Its name has no folder in it, so nothing outside the papers folder is shown. */
export async function showPaper(
  input: unknown,
  { papersFolder, show }: Folder,
): Promise<Outcome<{ readonly path: string }>> {
  const asked = requests['paper.read'].input.safeParse(input)
  if (!asked.success) return refuse('invalid', 'Only a paper that was made here can be shown.', 'name')
  const { name } = asked.data
  const path = join(papersFolder, name)
  const found = await stat(path).catch(() => null)
  if (found?.isFile() !== true) {
    const message = `There is no document called ${name} in the papers folder any more.`
    return refuse('not-found', message, 'name', 'Make it again.')
  }
  show(path)
  return accept({ path })
}
