import type { FileReading } from '../../domain/price-list.ts'

/** How a file is read, from which day, and whether it is only a part of the list, in one text: the same file with the same text changes nothing. */
export function fileKeyOf({
  reading,
  validFrom,
  part,
}: {
  readonly reading: FileReading
  readonly validFrom?: string | undefined
  readonly part?: boolean | undefined
}): string {
  return `${JSON.stringify(reading)} ${validFrom ?? ''}${part === true ? ' part' : ''}`
}
