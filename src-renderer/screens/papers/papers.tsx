import { Button } from '@mantine/core'
import { useEffect, useRef, useState } from 'react'
import { Link } from 'wouter'
import { problemsOf } from '../../bridge/call.ts'
import { useAsk } from '../../bridge/use-ask.ts'
import { useOpenJob } from '../../draft/use-draft.ts'
import { makeId } from '../../draft/place-ids.ts'
import { useGoToField } from '../../draft/go-to-field.ts'
import { Card, Row } from '../../parts/card.tsx'
import { Notice, Nothing, ProblemList } from '../../parts/notice.tsx'
import { SurveyFormButton } from '../../parts/survey-form-button.tsx'
import { FilePlace } from './file-place.tsx'
import { IssuedCard } from './life/issued-card.tsx'
import { JobFileCard } from './job-file-card.tsx'
import styles from './papers.module.css'
import { words } from './papers.words.ts'
import { usePaper } from './use-papers.ts'
import type { Paper, PaperKind } from './use-papers.ts'

const papers = [
  {
    kind: 'quote.pdf',
    title: words.quote.title,
    says: words.quote.says,
    button: words.quote.make,
  },
  {
    kind: 'pickList.pdf',
    title: words.pickList.title,
    says: words.pickList.says,
    button: words.pickList.make,
  },
  {
    kind: 'setOut.pdf',
    title: words.setOut.title,
    says: words.setOut.says,
    button: words.setOut.make,
  },
] as const satisfies readonly {
  readonly kind: PaperKind
  readonly title: string
  readonly says: string
  readonly button: string
}[]

type Kind = (typeof papers)[number]

/** The papers that go out: quote, pick list, set-out sheet. */
export function PapersScreen() {
  const { job } = useOpenJob()
  const [shown, setShown] = useState<Paper | null>(null)
  if (job.swaps.length === 0) {
    return (
      <Nothing title={words.none.title}>
        <p>{words.none.says}</p>
        <Button component={Link} href={`/job/${job.jobId}/survey/add-swap`}>
          {words.none.add}
        </Button>
        <SurveyFormButton />
      </Nothing>
    )
  }
  return (
    <>
      <div className={styles.top}>
        {papers.map((paper) => (
          <PaperCard key={paper.kind} paper={paper} show={setShown} />
        ))}
        <Card title={words.surveyForm.title}>
          <div className={styles.paper}>
            <p>{words.surveyForm.says}</p>
            <SurveyFormButton />
          </div>
        </Card>
        <JobFileCard />
      </div>
      {shown === null ? null : <Viewer paper={shown} />}
      <IssuedCard />
    </>
  )
}

function PaperCard({ paper, show }: { readonly paper: Kind; readonly show: (paper: Paper | null) => void }) {
  const { job } = useOpenJob()
  const make = usePaper(paper.kind, { job })
  const firm = useAsk('firm.read', {})
  const goTo = useGoToField(job)
  const mindsFirm = paper.kind === 'quote.pdf' && job.firm === undefined
  const wantsFirm = mindsFirm && firm.data?.firm === null
  const problems = problemsOf(make.error)
  return (
    <Card title={paper.title}>
      <div className={styles.paper}>
        <p>{paper.says}</p>
        {wantsFirm ? (
          <Notice tone="warn" title={words.wantsFirm.title}>
            <p>{words.wantsFirm.says}</p>
            <Button mt="sm" component={Link} href={`/firm/${job.jobId}`}>
              {words.wantsFirm.give}
            </Button>
          </Notice>
        ) : (
          <Button
            id={makeId(paper.kind)}
            loading={make.isPending || (mindsFirm && firm.isPending)}
            onClick={() => make.mutate(undefined, { onSuccess: show })}
          >
            {paper.button}
          </Button>
        )}
        {problems.length === 0 ? null : <ProblemList title={words.notMade} problems={problems} goTo={goTo} />}
        {make.data === undefined ? null : <SaveLine paper={make.data} show={show} />}
      </div>
    </Card>
  )
}

/** What was made. The button that made it could not hold the focus meanwhile: saving is what comes next. */
function SaveLine({ paper, show }: { readonly paper: Paper; readonly show: (paper: Paper) => void }) {
  const save = useRef<HTMLAnchorElement>(null)
  useEffect(() => {
    const here = document.activeElement
    if (here === document.body || here?.id === 'main') save.current?.focus()
  }, [paper])
  return (
    <div role="status">
      <Row>
        <span>{words.size(paper.pages, paper.kilobytes)}</span>
        <a ref={save} className={styles.save} href={paper.url} download={paper.name}>
          {words.save}
        </a>
        <Button variant="default" onClick={() => show(paper)}>
          {words.look}
        </Button>
      </Row>
    </div>
  )
}

function Viewer({ paper }: { readonly paper: Paper }) {
  return (
    <div className={styles.shown}>
      <Card
        title={paper.name}
        says={<FilePlace file={paper} />}
        aside={
          <a className={styles.save} href={paper.url} download={paper.name}>
            {words.saveThis}
          </a>
        }
      >
        <iframe className={styles.viewer} src={paper.url} title={words.toLookAt(paper.name)} />
      </Card>
    </div>
  )
}
