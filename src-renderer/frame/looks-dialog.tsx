import { Modal, Radio } from '@mantine/core'
import { Row, Stack } from '../parts/card.tsx'
import styles from './frame.module.css'
import { words } from './frame.words.ts'
import { shortcuts } from './keys.ts'
import { oneOf, schemes, textSizes } from './looks.ts'
import type { Looks } from './looks.ts'

type Dialog = { readonly opened: boolean; readonly onClose: () => void; readonly looks: Looks }

/** How the screen looks, and every key that does something. */
export function LooksDialog({ opened, onClose, looks }: Dialog) {
  return (
    <Modal
      opened={opened}
      onClose={onClose}
      title={words.looks.title}
      size="lg"
      returnFocus={false}
      attributes={{ header: { role: 'presentation' } }}
    >
      <Stack>
        <Radio.Group
          label={words.looks.size}
          size="md"
          value={looks.textSize}
          onChange={(size) => looks.setTextSize(oneOf(textSizes, size, 'usual'))}
        >
          <Choices values={textSizes} labels={words.looks.sizes} />
        </Radio.Group>
        <Radio.Group
          label={words.looks.scheme}
          description={words.looks.kept}
          size="md"
          value={looks.scheme}
          onChange={(scheme) => looks.setScheme(oneOf(schemes, scheme, 'auto'))}
        >
          <Choices values={schemes} labels={words.looks.schemes} />
        </Radio.Group>
        <Keys />
      </Stack>
    </Modal>
  )
}

type ChoicesProps = {
  readonly values: readonly string[]
  readonly labels: Readonly<Record<string, string>>
}

function Choices({ values, labels }: ChoicesProps) {
  return (
    <div className={styles.choices}>
      <Row>
        {values.map((value) => (
          <Radio key={value} value={value} label={labels[value]} size="md" />
        ))}
      </Row>
    </div>
  )
}

function Keys() {
  return (
    <section aria-labelledby="keys-title">
      <h2 id="keys-title">{words.looks.keys}</h2>
      <dl className={styles.keys}>
        {shortcuts.map(({ keys, does }) => (
          <div key={keys.join()} className={styles.shortcut}>
            <dt>
              {keys.map((key) => (
                <kbd key={key} className={styles.key}>
                  {key}
                </kbd>
              ))}
            </dt>
            <dd>{does}</dd>
          </div>
        ))}
      </dl>
      <p className={styles.under}>{words.keys.onMac}</p>
    </section>
  )
}
