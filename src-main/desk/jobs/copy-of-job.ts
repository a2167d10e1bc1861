import type { Job } from '../../domain/job.ts'

const mark = ' (copy)'
const longestTitle = 200

/**
 * The same survey as a job of its own, begun on the given day: not quoted, not put away, without the other's reference. The ids
 * of its rooms and swaps stay, because other parts of the job name them and they are known only within it. Photos stay with the job
 * that they were taken for.
 */
export function copyOfJob(
  job: Job,
  { jobId, today }: { readonly jobId: string; readonly today: string },
): Job {
  const { quotedOn: _quoted, reference: _reference, archived: _archived, ...kept } = job
  const title = `${job.title.slice(0, longestTitle - mark.length)}${mark}`
  const rooms = job.rooms.map(({ photos: _photos, ...room }) => room)
  return { ...kept, rooms, jobId, title, createdOn: today, stage: 'surveying' }
}
