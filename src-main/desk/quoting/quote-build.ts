import { accept } from '../../domain/outcome.ts'
import { pickListHow } from '../buying/pick-list-how.ts'
import type { UseCase } from '../desk.ts'
import { withStaleMarks } from './stale-lines.ts'
import { workUp } from './work-up.ts'

export const quoteBuild: UseCase<'quote.build'> = async ({ job }, desk) => {
  const worked = await workUp(job, desk)
  return worked.ok ? accept(withStaleMarks(worked.value)) : worked
}

export const pickListBuild: UseCase<'pickList.build'> = async ({ job, ...how }, desk) => {
  const worked = await workUp(job, desk)
  return worked.ok ? pickListHow(worked.value, how) : worked
}
