import { accept } from '../../domain/outcome.ts'
import type { UseCase } from '../desk.ts'
import { workUp } from './work-up.ts'

export const quoteBuild: UseCase<'quote.build'> = async ({ job }, desk) => {
  const worked = await workUp(job, desk)
  return worked.ok ? accept(worked.value.quote) : worked
}

export const pickListBuild: UseCase<'pickList.build'> = async ({ job }, desk) => {
  const worked = await workUp(job, desk)
  return worked.ok ? accept(worked.value.pickList) : worked
}
