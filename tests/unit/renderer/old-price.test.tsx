/// <reference types="vite/client" />
import { MantineProvider } from '@mantine/core'
import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, it } from 'vitest'
import { given } from '../../../src-main/domain/derivation.ts'
import type { QuoteLine } from '../../../src-main/domain/quote.ts'
import { LineTable } from '../../../src-renderer/screens/price/line-table.tsx'

const line: QuoteLine = {
  lineId: 'part-1',
  section: 'parts',
  name: 'Blank plug',
  quantity: 1,
  unit: 'each',
  netPence: 130,
  rateKey: 'standard',
  shared: false,
  swapIds: [],
  generic: false,
  why: given('Priced', 130, 'pence'),
}

function drawn(one: QuoteLine): string {
  const group = { key: 'job', title: 'Whole job', netPence: 130, lines: [one] }
  return renderToStaticMarkup(
    <MantineProvider>
      <LineTable group={group} overrides={[]} looks={false} openChange={() => undefined} />
    </MantineProvider>,
  )
}

describe('a line of the quote', () => {
  it('carries no mark while its price is young', () => {
    expect(drawn(line)).not.toContain('Old price')
  })

  it('says in words that its price is old, and why', () => {
    const page = drawn({
      ...line,
      stale: true,
      staleSays: 'The price of A1 began long ago: ask for a new one.',
    })
    expect(page).toContain('<summary>Old price</summary>')
    expect(page).toContain('The price of A1 began long ago: ask for a new one.')
  })
})
