import type { JobRow } from './use-jobs.ts'

const row = (nth: number, rest: Partial<JobRow> = {}): JobRow => ({
  jobId: `job-${nth}`,
  title: `Radiator ${nth} for the back bedroom`,
  customerName: 'Robin Sample',
  place: '12 Invented Row, Sampleton',
  createdOn: '2026-11-23',
  savedAt: '2026-11-23T19:04:00.000Z',
  rooms: 1,
  swaps: 2,
  stage: 'surveying',
  archived: false,
  ...rest,
})

/** The list of jobs as it may be found, with fixed data. */
export const jobsStates = {
  empty: [],
  one: [row(1)],
  many: Array.from({ length: 40 }, (_, at) => row(at + 1)),
  tooLong: [
    row(1, { title: `Radiator ${'and another radiator '.repeat(8)}`.trim(), place: 'x'.repeat(200) }),
  ],
  mixed: [
    row(1),
    row(2, { title: 'Towel rail', customerName: 'Sam Example', place: 'Mill Lane, Testham' }),
    row(3, { title: 'Rail and panel', customerName: 'Sam Example', place: 'Sampleton', rooms: 3, swaps: 1 }),
  ],
} as const satisfies Readonly<Record<string, readonly JobRow[]>>
