import { Button, NativeSelect } from '@mantine/core'
import { useMutation } from '@tanstack/react-query'
import { useEffect, useState } from 'react'
import { call, sentencesOf } from '../bridge/call.ts'
import { Card, FieldGrid, Row } from './card.tsx'
import { counted } from './counted.ts'
import { ProblemList } from './notice.tsx'
import styles from './parts.module.css'
import { words } from './words.ts'

export type ExportForm = 'csv' | 'xlsx'

/** One thing that can be written out, and the request that writes it. */
export type ExportChoice = {
  readonly value: string
  readonly label: string
  readonly write: (
    form: ExportForm,
  ) => Promise<{ readonly path: string; readonly rows: number; readonly bytes: number }>
}

type Save = {
  readonly title: string
  readonly choices: readonly ExportChoice[]
  /** One of what is counted, and several. */
  readonly of: readonly [one: string, many: string]
}

const types = {
  csv: 'text/csv',
  xlsx: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
} as const

/** Writes what is chosen as a CSV file or a workbook, and offers the file to be kept. */
export function SaveExport({ title, choices, of }: Save) {
  const [chosen, setChosen] = useState(choices[0]?.value ?? '')
  const [form, setForm] = useState<ExportForm>('xlsx')
  const make = useMadeFile()
  const choice = choices.find(({ value }) => value === chosen) ?? choices[0]
  const problems = sentencesOf(make.error)
  return (
    <Card title={title} says={words.file.says}>
      <FieldGrid>
        <NativeSelect
          label={words.file.what}
          value={choice?.value ?? ''}
          data={choices.map(({ value, label }) => ({ value, label }))}
          onChange={({ currentTarget }) => {
            make.reset()
            setChosen(currentTarget.value)
          }}
        />
        <NativeSelect
          label={words.file.as}
          value={form}
          data={[
            { value: 'xlsx', label: words.file.xlsx },
            { value: 'csv', label: words.file.csv },
          ]}
          onChange={({ currentTarget }) => {
            make.reset()
            setForm(currentTarget.value === 'csv' ? 'csv' : 'xlsx')
          }}
        />
      </FieldGrid>
      <Row>
        <Button
          mt="md"
          loading={make.isPending}
          disabled={choice === undefined}
          onClick={() => (choice === undefined ? undefined : make.mutate({ choice, form }))}
        >
          {words.file.make}
        </Button>
      </Row>
      {problems.length === 0 ? null : <ProblemList title={words.notMade} problems={problems} />}
      {make.data === undefined ? null : (
        <div role="status" className={styles.made}>
          <a className={styles.save} href={make.data.url} download={make.data.name}>
            {words.file.save(make.data.name)}
          </a>
          <span>{words.file.size(counted(make.data.rows, of), Math.ceil(make.data.bytes / 1024))}</span>
          <span className={styles.keptAt}>{words.file.keptAt(make.data.path)}</span>
        </div>
      )}
    </Card>
  )
}

/** Writes a file and fetches it, so that the window can hand it over; it is let go of when another takes its place. */
function useMadeFile() {
  const [url, setUrl] = useState<string | null>(null)
  useEffect(() => () => (url === null ? undefined : URL.revokeObjectURL(url)), [url])
  return useMutation({
    mutationFn: async ({ choice, form }: { readonly choice: ExportChoice; readonly form: ExportForm }) => {
      const made = await choice.write(form)
      const name = made.path.split(/[\\/]/).at(-1) ?? made.path
      const { base64 } = await call('paper.read', { name })
      const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0))
      const fresh = URL.createObjectURL(new Blob([bytes], { type: types[form] }))
      setUrl(fresh)
      return { ...made, name, url: fresh }
    },
  })
}
