import { Button } from '@mantine/core'
import { useMutation } from '@tanstack/react-query'
import { useEffect, useState } from 'react'
import { call, problemsOf } from '../bridge/call.ts'
import { useOpenJob } from '../draft/use-draft.ts'
import { ProblemList } from './notice.tsx'
import { words } from './words.ts'

/** Makes the survey form as a PDF, blank or with what the job says, and offers it to be kept. */
export function SurveyFormButton({ blank = false }: { readonly blank?: boolean }) {
  const { job } = useOpenJob()
  const [url, setUrl] = useState<string | null>(null)
  useEffect(() => () => (url === null ? undefined : URL.revokeObjectURL(url)), [url])
  const make = useMutation({
    mutationFn: async () => {
      const made = await call('surveyForm.pdf', blank ? {} : { job })
      const name = made.path.split(/[\\/]/).at(-1) ?? made.path
      const { base64 } = await call('paper.read', { name })
      const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0))
      setUrl(URL.createObjectURL(new Blob([bytes], { type: 'application/pdf' })))
      return { name, pages: made.pages }
    },
  })
  const problems = problemsOf(make.error)
  return (
    <>
      <Button variant="default" loading={make.isPending} onClick={() => make.mutate()}>
        {blank ? words.surveyForm.blank : words.surveyForm.ofJob}
      </Button>
      {url === null || make.data === undefined ? null : (
        <span role="status">
          <a href={url} download={make.data.name}>
            {words.surveyForm.save}
          </a>
          {words.surveyForm.pages(make.data.pages)}
        </span>
      )}
      {problems.length === 0 ? null : <ProblemList title={words.notMade} problems={problems} />}
    </>
  )
}
