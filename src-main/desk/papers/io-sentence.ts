import { basename, dirname } from 'node:path'
import { refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'

type Sentence = readonly [says: string, next: string]

/** What the file system's own codes mean to a person who wants a paper at `path`. */
function sentenceFor(code: string, path: string): Sentence {
  const folder = dirname(path)
  switch (code) {
    case 'ENOENT':
      return [`There is no folder ${folder}.`, 'Make the folder, or name one that is there.']
    case 'ENOTDIR':
      return [`${folder} is not a folder.`, 'Name a folder in front of the file’s name.']
    case 'EISDIR':
      return [`${path} is a folder, so no file can stand there.`, 'Put a file name after the folder.']
    case 'EACCES':
    case 'EPERM':
      return [`You may not write in ${folder}.`, 'Name a folder that you may write in.']
    case 'EROFS':
      return [`${folder} is on a disk that can only be read.`, 'Name a folder that you may write in.']
    case 'ENOSPC':
    case 'EDQUOT':
      return [
        `The disk is full, so ${basename(path)} was not written.`,
        'Make room on the disk, and try again.',
      ]
    case 'ENAMETOOLONG':
      return [`The file name ${basename(path).slice(0, 40)}… is too long.`, 'Name a shorter one.']
    case 'EBUSY':
    case 'ETXTBSY':
      return [`${path} is open in another program.`, 'Close it there, and try again.']
    default:
      return [`${path} cannot be reached (${code}).`, 'Check the disk and the folder, and try again.']
  }
}

/** An error of the file system as a refusal; an error that is our own mistake is thrown on. */
export function ioRefusal(error: unknown, path: string, field?: string): Outcome<never> {
  const code = error instanceof Error && 'code' in error && 'errno' in error ? String(error.code) : null
  if (code === null) throw error
  const [says, next] = sentenceFor(code, path)
  return refuse('io', says, field, next)
}
