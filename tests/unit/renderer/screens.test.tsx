/// <reference types="vite/client" />
import { MantineProvider } from '@mantine/core'
import { QueryClient, QueryClientProvider } from '@tanstack/react-query'
import type { ReactNode } from 'react'
import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, it } from 'vitest'
import { Router } from 'wouter'
import { because, given } from '../../../src-main/domain/derivation.ts'
import { ProblemList } from '../../../src-renderer/parts/notice.tsx'
import { WhyTree } from '../../../src-renderer/parts/why.tsx'
import { firmOf, textOf } from '../../../src-renderer/screens/firm/use-firm.ts'
import { JobList } from '../../../src-renderer/screens/jobs/job-list.tsx'
import { jobsStates } from '../../../src-renderer/screens/jobs/jobs.states.ts'
import { matching, ofChoice } from '../../../src-renderer/screens/jobs/job-filter.ts'

const drawn = (what: ReactNode) =>
  renderToStaticMarkup(
    <Router ssrPath="/">
      <QueryClientProvider client={new QueryClient()}>
        <MantineProvider>{what}</MantineProvider>
      </QueryClientProvider>
    </Router>,
  )
const count = (text: string, part: string) => text.split(part).length - 1

describe('the list of jobs', () => {
  const nothing = () => undefined
  const deeds = { remove: nothing, copy: nothing, archive: nothing, setStage: nothing }
  it('has one entry a job, each with its way in, its stage, its day and what else can be done', () => {
    const page = drawn(<JobList jobs={jobsStates.many} deeds={deeds} />)
    expect(count(page, '<li')).toBe(40)
    expect(page).toContain('href="/job/job-7/survey"')
    expect(page).toContain('aria-label="Stage of Radiator 7 for the back bedroom"')
    expect(page).toContain('aria-label="More for Radiator 7 for the back bedroom"')
    expect(page).toContain('Begun 23 Nov 2026; 1 room, 2 swaps')
    expect(page).not.toContain('Show ')
  })
  it('shows fifty at a time, and says how many more there are', () => {
    const [first] = jobsStates.one
    const jobs = Array.from({ length: 57 }, (_, at) => ({ ...first, jobId: `job-${at}` }))
    const page = drawn(<JobList jobs={jobs} deeds={deeds} />)
    expect(count(page, '<li')).toBe(50)
    expect(page).toContain('Show 7 more')
  })
  it('keeps archived jobs out of every choice but their own', () => {
    const [first] = jobsStates.one
    const jobs = [
      { ...first, jobId: 'a' },
      { ...first, jobId: 'b', stage: 'quoted' as const },
      { ...first, jobId: 'c', stage: 'quoted' as const, archived: true },
    ]
    const ids = (shown: Parameters<typeof ofChoice>[1]) => ofChoice(jobs, shown).map(({ jobId }) => jobId)
    expect(ids('all')).toEqual(['a', 'b'])
    expect(ids('quoted')).toEqual(['b'])
    expect(ids('surveying')).toEqual(['a'])
    expect(ids('lost')).toEqual([])
    expect(ids('archived')).toEqual(['c'])
  })
  it('finds jobs by every word, in title, customer or place', () => {
    expect(matching(jobsStates.mixed, 'sam rail').map(({ jobId }) => jobId)).toEqual(['job-2', 'job-3'])
    expect(matching(jobsStates.mixed, 'SAMPLETON rail').map(({ jobId }) => jobId)).toEqual(['job-3'])
    expect(matching(jobsStates.mixed, '  ')).toHaveLength(3)
    expect(matching(jobsStates.empty, 'x')).toEqual([])
  })
})

describe('a reason', () => {
  it('is a list in lists down to what was given, each with its source', () => {
    const why = because('Length x turns.', 4.5, {
      unit: 'm',
      from: [
        given('Turns', 12, 'Count', 'practice'),
        because('Length', 0.375, { unit: 'm', from: [given('Width', 375, 'mm')] }),
      ],
    })
    const page = drawn(<WhyTree why={why} />)
    expect(count(page, '<li')).toBe(4)
    expect(count(page, '<details')).toBe(2)
    expect(page).toContain('Turns: <span')
    expect(page).toContain('(practice)')
    expect(page).toContain('375 mm')
  })
})

describe('a list of problems', () => {
  const problems = [
    { code: 'invalid', message: 'Width must be more than 0.', path: 'job.rooms[0].walls[0].widthMm' },
  ] as const
  it('is read out, and names the field where there is no way to go there', () => {
    const page = drawn(<ProblemList title="Not brought in" problems={problems} />)
    expect(page).toContain('role="alert"')
    expect(page).toContain('Where: job.rooms[0].walls[0].widthMm')
  })
  it('leads to the field where there is a way', () => {
    expect(drawn(<ProblemList title="Not saved" problems={problems} goTo={() => undefined} />)).toMatch(
      /<button[^>]*>Width must be more than 0\.<\/button>/,
    )
  })
})

describe("the firm's form", () => {
  it('leaves out what is empty, and keeps the logo until another is chosen', () => {
    const logo = { mediaType: 'image/png', base64: 'AAAA' } as const
    const old = { name: 'Sample Heating', addressLines: ['1 Yard'], logo }
    const text = { ...textOf(old), address: '1 Yard\n\nSampleton', registrations: 'Sample 0000' }
    expect(firmOf(text)).toEqual({
      name: 'Sample Heating',
      addressLines: ['1 Yard', 'Sampleton'],
      registrations: ['Sample 0000'],
      logo,
      currency: 'GBP',
      heatFirst: 'W',
      priceDetail: 'lines',
    })
    expect(firmOf(textOf({ ...old, priceDetail: 'rooms' })).priceDetail).toBe('rooms')
    expect(firmOf({ ...text, logo: undefined })).not.toHaveProperty('logo')
  })
})
