import { TextInput } from '@mantine/core'
import { numberPattern } from '../../../src-main/domain/follow-up/quote-life.ts'
import { usualNumberPattern } from '../../../src-main/engine/quote/life/quote-number.ts'
import { useAsk } from '../../bridge/use-ask.ts'
import type { Boxes } from './firm-boxes.tsx'
import styles from './firm.module.css'
import { words } from './firm.words.ts'
import { fieldPaths } from './use-firm.ts'

/** How the firm numbers its quotes, with the number that the next one would get. */
export function NumbersBox({ text, set, problems }: Boxes) {
  const typed = text.quoteNumbers.trim()
  const pattern = numberPattern.safeParse(typed === '' ? usualNumberPattern : typed)
  const next = useAsk('quote.nextNumber', pattern.success ? { quoteNumbers: pattern.data } : {}, {
    enabled: pattern.success,
    keepOld: true,
  })
  const path = fieldPaths.quoteNumbers
  const refused = problems.find((problem) => problem.path === path)?.message
  const example = next.data === undefined ? '' : words.numbers.next(next.data.number)
  return (
    <div>
      <TextInput
        id={path}
        label={words.fields.quoteNumbers}
        description={words.numbers.says}
        placeholder={usualNumberPattern}
        inputWrapperOrder={['label', 'description', 'input', 'error']}
        error={pattern.success ? refused : words.numbers.wrong}
        value={text.quoteNumbers}
        onChange={({ currentTarget }) => set({ quoteNumbers: currentTarget.value })}
      />
      <p className={styles.under} role="status">
        {pattern.success ? example : ''}
      </p>
    </div>
  )
}
