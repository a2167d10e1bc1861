import type { JobStage } from '../../src-main/domain/job.ts'

/** How far a job has come, as a person reads it. */
export const stages: readonly { readonly value: JobStage; readonly label: string }[] = [
  { value: 'surveying', label: 'Surveying' },
  { value: 'quoted', label: 'Quoted' },
  { value: 'accepted', label: 'Accepted' },
  { value: 'done', label: 'Done' },
  { value: 'lost', label: 'Not going ahead' },
]
