import { accept } from '../../domain/outcome.ts'
import type { UseCase } from '../desk.ts'
import { stopWork, workProgressOf } from './long-work.ts'

export const workProgress: UseCase<'work.progress'> = ({ workId }) => {
  const progress = workProgressOf(workId)
  return accept(
    progress === null
      ? { running: false, says: 'Nothing of that name is going on', done: null }
      : { running: true, ...progress },
  )
}

export const workCancel: UseCase<'work.cancel'> = ({ workId }) => accept({ stopped: stopWork(workId) })
