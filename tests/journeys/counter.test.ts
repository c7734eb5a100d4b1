import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { killStragglers } from '../hosts/run-program.ts'
import { checkAccessibility } from './check-accessibility.ts'
import { type Counter, type CounterPage, openCounter } from './open-counter.ts'

// The whole program on the sample shop, in a real browser, by keyboard alone: no step here uses a pointer. What is
// asked, and the only answer that is right, stands in sample-catalogue/awkward-cases.ts.

let counter: Counter
beforeAll(async () => {
  counter = await openCounter()
})
afterAll(async () => {
  await counter?.close()
  killStragglers()
})

/** Runs a journey on a page of its own, and holds it to having gone without a fault. */
async function atCounter(
  journey: (page: Page) => Promise<void>,
  options?: Parameters<Counter['newPage']>[0],
): Promise<void> {
  const { page, faults }: CounterPage = await counter.newPage(options)
  await plateField(page).waitFor()
  await journey(page)
  expect(faults).toEqual([])
  await page.context().close()
}

const plateField = (page: Page) => page.getByRole('combobox', { name: 'Model no.' })
const partCheck = (page: Page) => page.getByRole('region', { name: 'Part in the hand' })
const question = (page: Page) => page.locator('.plate-question__sentence')
const pointedModel = (page: Page) => page.locator('.model-row[aria-selected=true]')
const family = (page: Page, name: string) => page.getByRole('button', { name })

const isFocused = (locator: ReturnType<typeof plateField>) =>
  locator.evaluate(element => element === document.activeElement)

/** Waits for it, or fails with what stands there instead. */
async function says(locator: ReturnType<typeof plateField>, text: string | RegExp): Promise<void> {
  // biome-ignore lint/performance/useDomNodeTextContent: the words as a person sees them, apart where they stand apart
  const read = async () => (await locator.first().innerText()).replace(/\s+/g, ' ')
  await expect.poll(read, { timeout: 5000 }).toMatch(text)
}

async function typePlate(page: Page, text: string): Promise<void> {
  await page.keyboard.press('Escape')
  await page.keyboard.type(text)
}

async function typePart(page: Page, text: string): Promise<void> {
  await page.keyboard.press('F2')
  await page.keyboard.type(text)
}

async function tabTo(page: Page, locator: ReturnType<typeof plateField>): Promise<void> {
  for (let pressed = 0; pressed < 40; pressed++) {
    if (await isFocused(locator)) return
    await page.keyboard.press('Tab')
  }
  throw new Error('Tab does not reach it')
}

test('from half a plate to the right part, and the slip to the customer', async () => {
  await atCounter(async page => {
    expect(await isFocused(plateField(page))).toBe(true)
    await page.keyboard.type('ODW4530')
    await says(page.locator('.models__outcome'), '6 models agree')
    await says(question(page), 'Read character 9 of the model number')
    expect(await page.locator('.cell--asked').count()).toBe(1)

    // The clerk can read it after all: a second Enter takes the model that the first pointed at.
    await page.keyboard.press('ArrowDown')
    await page.keyboard.press('ArrowDown')
    await page.keyboard.press('Enter')
    await says(pointedModel(page), /ODW4530\/02.*again to take it/)
    expect(await page.locator('.one-model').count()).toBe(0)
    await page.keyboard.press('Enter')
    await says(page.locator('.one-model'), /Ostrel ODW4530\/02.*Chosen at the counter/)

    await page.keyboard.type('flot swich')
    await says(page.locator('.card__sentence'), 'match “flot swich”')
    await page.keyboard.press('Enter')
    const row = family(page, 'Float switch, base tray')
    await expect.poll(() => row.getAttribute('aria-expanded')).toBe('true')
    const detail = page.locator('.family__detail')
    await says(detail.getByRole('region', { name: 'Cautions' }), /safety device/)
    await says(detail.locator('.part-group').first(), /Fits.*00480130.*G2-06.*Ostrel parts list/)

    await page.keyboard.press('F8')
    await says(page.locator('.slip__outcome'), 'on the clipboard')
    const slip = await page.evaluate(() => navigator.clipboard.readText())
    expect(slip).toContain('Appliance: Ostrel ODW4530/02, dishwasher')
    expect(slip).toContain('Part: 00480130')
    expect(slip).toContain('Answer: Fits.')
    expect(slip).toMatch(/Because: .*\(Ostrel parts list\)/)
    expect(slip).toContain('as chosen at the counter')
    expect(slip).toMatch(/Caution: .*safety device/)

    await page.keyboard.press('Escape')
    expect(await isFocused(plateField(page))).toBe(true)
    expect(await page.evaluate(() => getSelection()?.toString())).toBe('ODW4530')
    await page.keyboard.type('ODW4512/01')
    await says(page.locator('.one-model'), /Ostrel ODW4512\/01/)
    expect(await page.locator('.one-model__taken').count()).toBe(0)
  })
})

describe('a part in the hand', () => {
  const verdict = (page: Page) => partCheck(page).locator('.part-check__verdict')

  test('fits, with who says so and what to mind', async () => {
    await atCounter(async page => {
      await typePlate(page, 'ODW4512/01')
      await typePart(page, '00480121')
      await says(verdict(page), /^Fits /)
      await says(partCheck(page).locator('.reasons'), /listed\..*Tarrow supplier list/)
      await says(partCheck(page).getByRole('region', { name: 'Cautions' }), /Isolate from the supply/)
    })
  })

  test('waits for the date of making, which is asked for on the plate and decides when read', async () => {
    await atCounter(async page => {
      await typePlate(page, 'ODW4520/02')
      await typePart(page, '00480121')
      await says(verdict(page), /^Ask /)
      await says(question(page), 'Read the date of making')
      const made = page.getByRole('textbox', { name: /^Made.*asked for/ })
      await page.keyboard.press('Escape')
      await tabTo(page, made)
      await page.keyboard.type('05/2014')
      await says(verdict(page), /^Fits /)
      await page.keyboard.press('Control+A')
      await page.keyboard.type('2014-06')
      await says(verdict(page), /^Does not fit /)
      await page.keyboard.press('Control+A')
      await page.keyboard.type('June')
      await says(page.getByRole('alert'), 'This date is not used yet')
      await says(verdict(page), /^Ask /)
    })
  })

  test('waits for one character, which can be answered under the number', async () => {
    await atCounter(async page => {
      await typePlate(page, 'ODW4530')
      await typePart(page, '00480130')
      await says(question(page), /^Read character 9 of the model number\.$/)
      await page.keyboard.press('Escape')
      await tabTo(page, page.getByRole('button', { name: '2', exact: true }))
      await page.keyboard.press('Enter')
      expect(await plateField(page).inputValue()).toBe('ODW4530/02')
      await says(verdict(page), /^Fits /)
    })
  })

  test('fits whichever model it is, so nothing more is asked', async () => {
    await atCounter(async page => {
      await typePlate(page, 'ODW4540')
      await typePart(page, '00480140')
      await says(verdict(page), /^Fits /)
      await says(partCheck(page).locator('.reasons'), /Fits whichever of the 4 open models it is/)
      expect(await page.locator('.cell--asked').count()).toBe(0)
    })
  })

  test('fits with changes, and what must be bought besides', async () => {
    await atCounter(async page => {
      await typePlate(page, 'TVD99I1DX-2B')
      await typePart(page, 'TQ0030001')
      await says(verdict(page), /^Fits, with changes.*Supplied today as TQ0030002/)
      await says(partCheck(page), /Also needed: TQ0030009/)
    })
  })

  test('does not fit, and another that does can be judged at once', async () => {
    await atCounter(async page => {
      await typePlate(page, 'WX3588/C')
      await typePart(page, 'DR-10400')
      await says(verdict(page), /^Does not fit /)
      await tabTo(page, partCheck(page).getByRole('button', { name: 'W10/5489' }))
      await page.keyboard.press('Enter')
      await says(verdict(page), /^Fits W10\/5489/)
    })
  })

  test('has no record, and that is no yes', async () => {
    await atCounter(async page => {
      await typePlate(page, 'ODW4512/01')
      await typePart(page, '00999999')
      await says(verdict(page), /^No record /)
      await says(partCheck(page), /The catalogue has no part 00999999/)
    })
  })

  test('the number is one of two brands: the maker is asked for and can be answered', async () => {
    await atCounter(async page => {
      await typePlate(page, '4821073303')
      await typePart(page, '00480121')
      await says(verdict(page), /^Ask /)
      await says(question(page), 'Read the brand')
      await page.keyboard.press('Escape')
      await tabTo(page, page.getByRole('button', { name: 'Jorbe' }))
      await page.keyboard.press('Enter')
      await says(verdict(page), /^Fits /)
    })
  })

  test('before any plate it says which models it goes into', async () => {
    await atCounter(async page => {
      await typePart(page, '1E5104')
      await says(page.locator('.part-alone'), /1E5104 goes into \d+ models?\..*Brennick/)
    })
  })

  test('a verdict on another number is never left standing', async () => {
    await atCounter(async page => {
      await typePlate(page, 'ODW4512/01')
      await typePart(page, '00480121')
      await says(verdict(page), /^Fits /)
      // No time passes between the key and the look: the old verdict must be gone with the key itself.
      const left = await page.evaluate(async () => {
        const field = document.activeElement
        if (!(field instanceof HTMLInputElement)) throw new Error('the part field has the focus')
        const set = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')?.set
        set?.call(field, '0048012')
        field.dispatchEvent(new Event('input', { bubbles: true }))
        await new Promise(resolve => requestAnimationFrame(resolve))
        return document.querySelector('.part-check')?.textContent ?? ''
      })
      expect(left).toBe('')
    })
  })
})

describe('the plate', () => {
  test('a character that the catalogue reads differently shows both', async () => {
    await atCounter(async page => {
      await typePlate(page, 'ODW4S20/02')
      await says(page.locator('.cell--differs'), /^s\s*5$/i)
      await says(page.locator('.plate-difference'), 'Typed S; the catalogue reads 5 as character 5.')
    })
  })

  test('too little to look up is a hint and no failure', async () => {
    await atCounter(async page => {
      await typePlate(page, 'O')
      await says(page.locator('.plate__line'), 'too short to look up')
      expect(await page.getByRole('alert').count()).toBe(0)
    })
  })

  test('nothing agrees: it says so and what to try', async () => {
    await atCounter(async page => {
      await typePlate(page, 'QQQQZZZZ99')
      await says(page.locator('.models__outcome'), /No model in the catalogue agrees.*\?/)
      expect(await page.locator('.fit-list').count()).toBe(0)
    })
  })

  test('F8 with nothing answered says what is missing', async () => {
    await atCounter(async page => {
      await page.keyboard.press('F8')
      await says(page.locator('.slip__outcome'), 'Nothing to copy yet')
    })
  })
})

const states: Readonly<Record<string, (page: Page) => Promise<void>>> = {
  empty: async page => says(page.locator('.empty-card'), '4,3'),
  several: async page => {
    await typePlate(page, 'ODW4530')
    await says(question(page), 'Read character 9')
    await page.keyboard.press('ArrowDown')
    await page.keyboard.press('Enter')
    await says(pointedModel(page), 'again to take it')
  },
  exact: async page => {
    await typePlate(page, 'ODW4512/01')
    await says(page.locator('.card__sentence'), 'part families fit')
    await page.keyboard.press('Enter')
    await page.keyboard.press('ArrowDown')
    await page.keyboard.press('Enter')
    await says(page.locator('.family__detail'), 'listed')
  },
  near: async page => {
    await typePlate(page, 'ODW4S20/02')
    await says(page.locator('.models__outcome'), 'No model has exactly this number')
    await says(page.locator('.card__sentence'), 'part families')
  },
  'a part in the hand': async page => {
    await typePlate(page, 'ODW4520/02')
    await typePart(page, '00480121')
    await says(partCheck(page), 'Ask')
    await says(page.locator('.card__sentence'), 'part families fit')
  },
}

describe.each(Object.entries(states))('%s', (_, reach) => {
  test('is accessible in light and in dark, and needs no scrolling of the page at 1280 by 720', async () => {
    await atCounter(async page => {
      await reach(page)
      expect(await page.evaluate(() => document.documentElement.scrollHeight)).toBeLessThanOrEqual(720)
      await checkAccessibility(page)
      await page.emulateMedia({ colorScheme: 'dark' })
      await checkAccessibility(page)
    })
  })

  test('at 200 % zoom everything flows into one column and nothing runs off its side', async () => {
    await atCounter(
      async page => {
        await reach(page)
        expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(640)
        expect(await listClipped(page)).toEqual([])
      },
      { viewport: { width: 640, height: 360 }, deviceScaleFactor: 2 },
    )
  })
})

/** What reaches beyond the right edge, of all that is meant for the eye. */
function listClipped(page: Page): Promise<string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll('.counter *')]
      .filter(element => element.closest('.unseen') === null)
      .filter(element => element.getBoundingClientRect().right > window.innerWidth + 1)
      .map(element => element.className),
  )
}

test('the verdict is a word wherever colours are the person’s own', async () => {
  await atCounter(
    async page => {
      await typePlate(page, 'ODW4530')
      await typePart(page, '00480130')
      await says(partCheck(page).locator('.verdict'), /^Ask$/)
      const border = await page.locator('.cell--asked').evaluate(cell => getComputedStyle(cell).outlineStyle)
      expect(border).toBe('solid')
    },
    { forcedColors: 'active' },
  )
})

test('nothing moves for a person who asked for that', async () => {
  await atCounter(
    async page => {
      const caret = await page
        .locator('[data-caret]')
        .evaluate(cell => getComputedStyle(cell, '::before').animationName)
      expect(caret).toBe('none')
    },
    { reducedMotion: 'reduce' },
  )
})

test('every control has a visible focus and room enough to be hit', async () => {
  await atCounter(async page => {
    await states['a part in the hand']?.(page)
    await page.keyboard.press('Escape')
    const seen: string[] = []
    for (let pressed = 0; pressed < 30; pressed++) {
      await page.keyboard.press('Tab')
      const found = await page.evaluate(() => {
        const element = document.activeElement
        if (element === null || element === document.body) return undefined
        // A field of the plate shows the focus on its whole cell.
        const shown = element.closest('.plate-field') ?? element
        const { outlineStyle, outlineWidth } = getComputedStyle(shown)
        const { width, height } = shown.getBoundingClientRect()
        const name = element.getAttribute('aria-label') ?? element.textContent ?? ''
        return { name, outline: `${outlineStyle} ${outlineWidth}`, width, height }
      })
      if (found === undefined) break
      seen.push(found.name)
      expect(found.outline, found.name).toMatch(/^solid [34]px$/)
      expect(Math.min(found.width, found.height), found.name).toBeGreaterThanOrEqual(24)
    }
    expect(seen.length).toBeGreaterThan(12)
  })
})
