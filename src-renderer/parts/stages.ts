import type { JobStage } from '../../src-main/domain/job.ts'
import { words } from './words.ts'

/** How far a job has come, as a person reads it. */
export const stages: readonly { readonly value: JobStage; readonly label: string }[] = [
  { value: 'surveying', label: words.stages.surveying },
  { value: 'quoted', label: words.stages.quoted },
  { value: 'accepted', label: words.stages.accepted },
  { value: 'done', label: words.stages.done },
  { value: 'lost', label: words.stages.lost },
]
