import { Button } from '@mantine/core'
import { useMutation } from '@tanstack/react-query'
import { canShowPapers, problemsOf, showPaper } from '../../bridge/call.ts'
import { ProblemList } from '../../parts/notice.tsx'
import styles from './papers.module.css'
import type { MadeFile } from './use-papers.ts'

type Place = { readonly file: Pick<MadeFile, 'name' | 'path'> }

/** Where a file lies: shown in its folder where there is a desktop, otherwise its path, to copy. */
export function FilePlace({ file }: Place) {
  return canShowPapers() ? <ShowInFolder file={file} /> : <CopyPath file={file} />
}

function ShowInFolder({ file: { name } }: Place) {
  const show = useMutation({ mutationFn: () => showPaper(name) })
  const problems = problemsOf(show.error)
  return (
    <>
      <Button variant="default" aria-label={`Show in folder: ${name}`} onClick={() => show.mutate()}>
        Show in folder
      </Button>
      {problems.length === 0 ? null : <ProblemList title="Not shown" problems={problems} />}
    </>
  )
}

function CopyPath({ file: { name, path } }: Place) {
  const copy = useMutation({ mutationFn: () => navigator.clipboard.writeText(path) })
  const said = copy.isSuccess ? 'Copied.' : copy.isError ? 'Mark it and copy it by hand.' : ''
  return (
    <div className={styles.place}>
      <span className={styles.where}>Kept at {path}</span>
      <Button variant="default" aria-label={`Copy the place: ${name}`} onClick={() => copy.mutate()}>
        Copy the place
      </Button>
      <span role="status">{said}</span>
    </div>
  )
}
