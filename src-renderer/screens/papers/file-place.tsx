import { Button } from '@mantine/core'
import { useMutation } from '@tanstack/react-query'
import { canShowPapers, problemsOf, showPaper } from '../../bridge/call.ts'
import { ProblemList } from '../../parts/notice.tsx'
import styles from './papers.module.css'
import { words } from './papers.words.ts'
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
      <Button variant="default" aria-label={words.place.showNamed(name)} onClick={() => show.mutate()}>
        {words.place.show}
      </Button>
      {problems.length === 0 ? null : <ProblemList title={words.place.notShown} problems={problems} />}
    </>
  )
}

function CopyPath({ file: { name, path } }: Place) {
  const copy = useMutation({ mutationFn: () => navigator.clipboard.writeText(path) })
  const said = copy.isSuccess ? words.place.copied : copy.isError ? words.place.byHand : ''
  return (
    <div className={styles.place}>
      <span className={styles.where}>{words.place.keptAt(path)}</span>
      <Button variant="default" aria-label={words.place.copyNamed(name)} onClick={() => copy.mutate()}>
        {words.place.copy}
      </Button>
      <span role="status">{said}</span>
    </div>
  )
}
