import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from 'playwright-core'
import { expect } from 'vitest'

/**
 * What axe finds on the page as it stands, first with the light screen and then with the dark one, in one line each. The PDF
 * viewer inside a frame is the browser's own.
 */
export async function found(page: Page): Promise<readonly string[]> {
  const lines: string[] = []
  for (const scheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme: scheme })
    await page.locator(`html[data-mantine-color-scheme="${scheme}"]`).waitFor()
    const { violations, passes } = await new AxeBuilder({ page }).exclude('iframe').analyze()
    expect(passes.length).toBeGreaterThan(10)
    for (const { id, nodes } of violations) {
      lines.push(`${scheme}, ${id}: ${nodes.map((node) => node.html.slice(0, 160)).join(' | ')}`)
    }
  }
  return lines
}
