import { Button } from '@mantine/core'
import { Link } from 'wouter'
import { sentencesOf } from '../../bridge/call.ts'
import { useAsk } from '../../bridge/use-ask.ts'
import { Row } from '../../parts/card.tsx'
import { ProblemList } from '../../parts/notice.tsx'
import { useMadeFile } from './use-made-file.ts'
import styles from './van.module.css'
import { words } from './van.words.ts'

/** One file that can be made: what its button says, and the request that writes it. */
export type FileChoice = {
  readonly label: string
  readonly name?: string
  readonly write: () => Promise<{ readonly path: string }>
}

/** Makes a file of one kind or another, and offers it to be kept. */
export function FileButtons({ choices }: { readonly choices: readonly FileChoice[] }) {
  const make = useMadeFile()
  const firm = useAsk('firm.read', {})
  const problems = sentencesOf(make.error)
  return (
    <>
      <Row>
        {choices.map(({ label, name = label, write }) => (
          <Button
            key={label}
            variant="default"
            aria-label={name}
            loading={make.isPending && make.variables === write}
            onClick={() => make.mutate(write)}
          >
            {label}
          </Button>
        ))}
        <span role="status" className={styles.status}>
          {make.data === undefined ? null : (
            <a className={styles.save} href={make.data.url} download={make.data.name}>
              {words.file.save(make.data.name)}
            </a>
          )}
        </span>
      </Row>
      {problems.length === 0 ? null : (
        <ProblemList title={words.file.notMade} problems={problems}>
          {firm.data?.firm === null ? <Link href="/firm">{words.file.firm}</Link> : null}
        </ProblemList>
      )}
    </>
  )
}
