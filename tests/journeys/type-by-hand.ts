import type { Page } from 'playwright-core'

/** As fast as a quick person and no faster: keys that come as fast as a scanner's, and end in Enter or Tab, are a scan. */
export function typeByHand(page: Page, text: string): Promise<void> {
  return page.keyboard.type(text, { delay: 45 })
}
