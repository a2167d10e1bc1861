import { Button, FileButton } from '@mantine/core'
import { useRef, useState } from 'react'
import { Row } from '../../parts/card.tsx'
import styles from './firm.module.css'
import { words } from './firm.words.ts'
import { logoUrl, readLogo } from './read-logo.ts'
import type { Logo } from './read-logo.ts'

type Box = {
  readonly logo: Logo | undefined
  readonly changed: boolean
  readonly set: (logo: Logo | undefined) => void
}

/** The firm's logo as it is, and the ways to change it. */
export function LogoBox({ logo, changed, set }: Box) {
  const [refusal, setRefusal] = useState<string | null>(null)
  const reset = useRef<() => void>(null)
  const choose = async (file: File | null) => {
    if (file === null) return
    const read = await readLogo(file)
    setRefusal(typeof read === 'string' ? read : null)
    if (typeof read !== 'string') set(read)
    reset.current?.()
  }
  return (
    <div role="group" aria-label={words.logo.title}>
      <p className={styles.boxLabel}>{words.logo.title}</p>
      <p className={styles.under}>{words.logo.says}</p>
      <div className={styles.logo}>
        {logo === undefined ? (
          <span>{words.logo.none}</span>
        ) : (
          <img className={styles.picture} src={logoUrl(logo)} alt={words.logo.alt} />
        )}
      </div>
      <Row>
        <FileButton
          accept="image/png,image/jpeg,image/svg+xml,.png,.jpg,.jpeg,.svg"
          resetRef={reset}
          inputProps={{ 'aria-label': words.logo.box, tabIndex: -1 }}
          onChange={(file) => void choose(file)}
        >
          {(props) => (
            <Button variant="default" {...props}>
              {logo === undefined ? words.logo.choose : words.logo.another}
            </Button>
          )}
        </FileButton>
        {logo === undefined ? null : (
          <Button variant="subtle" color="gray" onClick={() => set(undefined)}>
            {words.logo.away}
          </Button>
        )}
      </Row>
      <p role="status" className={refusal === null ? styles.under : styles.refusal}>
        {refusal ?? (changed ? words.logo.unsaved : '')}
      </p>
    </div>
  )
}
