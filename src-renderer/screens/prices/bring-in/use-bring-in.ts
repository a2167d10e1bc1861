import { useMutation, useQueryClient } from '@tanstack/react-query'
import type { QueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import type { AnswerOf, InputOf } from '../../../../src-main/contract/requests.ts'
import type { FileReading } from '../../../../src-main/domain/price-list.ts'
import { call } from '../../../bridge/call.ts'
import { useAsk } from '../../../bridge/use-ask.ts'

export type Look = AnswerOf<'priceFile.look'>
export type Comparison = AnswerOf<'priceFile.compare'>
type FileRef = InputOf<'priceFile.look'>['file']

/** The file itself: handed over, and read as it seems or as a person says. */
function useFile(supplierId: string) {
  const [file, setFile] = useState<FileRef | null>(null)
  const [reading, setReading] = useState<FileReading | null>(null)
  const look = useMutation({
    mutationFn: ({ ref, as }: { readonly ref: FileRef; readonly as: FileReading | null }) =>
      call('priceFile.look', {
        file: ref,
        ...(supplierId === '' ? {} : { supplierId }),
        ...(as === null ? {} : { reading: as }),
      }),
    onSuccess: (answer) => setReading(answer.reading),
  })
  const hand = useMutation({
    mutationFn: handOver,
    onSuccess: (fileId) => {
      setFile({ fileId })
      look.mutate({ ref: { fileId }, as: null })
    },
  })
  const readAs = (as: FileReading) => {
    setReading(as)
    if (file !== null) look.mutate({ ref: file, as })
  }
  const putAway = () => {
    setFile(null)
    setReading(null)
    hand.reset()
    look.reset()
  }
  return { file, reading, look, hand, readAs, putAway }
}

/** What a person does with a price file, step by step: hand it over, check how it is read, see what it changes, take it in. */
export function useBringIn() {
  const queries = useQueryClient()
  const [supplierId, setSupplierId] = useState('')
  const [validFrom, setValidFrom] = useState('')
  const [part, setPart] = useState(false)
  const [workId, setWorkId] = useState('')
  const { file, reading, look, hand, readAs, putAway } = useFile(supplierId)
  const shared = () => {
    if (file === null || reading === null) throw new Error('No file is being brought in')
    const name = `work-${Date.now()}`
    setWorkId(name)
    const dated = validFrom === '' ? {} : { validFrom }
    return { file, supplierId, reading, ...dated, ...(part ? { part } : {}), workId: name }
  }
  const compare = useMutation({ mutationFn: () => call('priceFile.compare', shared()) })
  const apply = useMutation({
    mutationFn: (chosen: Pick<InputOf<'priceFile.apply'>, 'fileHash' | 'links'>) =>
      call('priceFile.apply', { ...shared(), ...chosen }),
    onSuccess: () => askPricesAgain(queries),
  })
  const readAgain = (as: FileReading) => {
    compare.reset()
    readAs(as)
  }
  const startOver = () => {
    putAway()
    setPart(false)
    compare.reset()
    apply.reset()
  }
  const sayPart = (only: boolean) => {
    setPart(only)
    compare.reset()
  }
  const forSupplier = (id: string) => {
    setSupplierId(id)
    compare.reset()
  }
  const choices = { supplierId, forSupplier, validFrom, setValidFrom, part, sayPart, workId }
  return { hand, look, compare, apply, reading, readAgain, startOver, ...choices }
}

export type BringInSteps = ReturnType<typeof useBringIn>

const pricey: ReadonlySet<string> = new Set([
  'priceList.search',
  'priceList.row',
  'price.changes',
  'supplier.list',
  'catalogue.search',
  'catalogue.item',
  'emitter.choose',
  'quote.build',
])

/** All that stands on prices is asked again: they have changed. */
export function askPricesAgain(queries: QueryClient): Promise<void> {
  return queries.invalidateQueries({ predicate: ({ queryKey }) => pricey.has(String(queryKey[0])) })
}

const pieceBytes = 1_500_000

/** Hands a file over in pieces; the answer is its name there. */
async function handOver(file: File): Promise<string> {
  let fileId: string | undefined
  for (let offset = 0; offset === 0 || offset < file.size; offset += pieceBytes) {
    const piece = new Uint8Array(await file.slice(offset, offset + pieceBytes).arrayBuffer())
    const kept = await call('file.keep', {
      ...(fileId === undefined ? {} : { fileId }),
      name: file.name,
      offset,
      base64: base64Of(piece),
    })
    fileId = kept.fileId
  }
  if (fileId === undefined) throw new Error('Nothing was handed over')
  return fileId
}

function base64Of(bytes: Uint8Array): string {
  let text = ''
  for (let from = 0; from < bytes.length; from += 8192) {
    text += String.fromCharCode(...bytes.subarray(from, from + 8192))
  }
  return btoa(text)
}

/** How far long work has come, asked a few times a second while it runs. */
export function useProgress(workId: string, running: boolean) {
  const asked = useAsk(
    'work.progress',
    { workId: workId === '' ? 'none' : workId },
    { enabled: running, everyMs: 300 },
  )
  return running ? asked.data : undefined
}
