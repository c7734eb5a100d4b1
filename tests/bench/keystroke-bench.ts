import type { Page } from 'playwright-core'
import { awkwardCases } from '../../sample-catalogue/awkward-cases.ts'
import { openCounter } from '../journeys/open-counter.ts'
import { timeEmptyFrame } from './empty-frame.ts'
import { printTimings, summarise, written } from './measure.ts'

/** From the key to the painted models, in a real browser on the real host, one clerk typing plates as they come. */
export async function run(): Promise<void> {
  const counter = await openCounter()
  try {
    const { page } = await counter.newPage()
    await page.getByRole('combobox', { name: 'Model no.' }).waitFor()
    await watchPaints(page)
    const numbers = [...new Set(awkwardCases.flatMap(({ questions }) => questions.map(({ model }) => model)))]
    await typeNumbers(page, numbers.slice(0, warmingUp))
    const { keys, cards } = await typeNumbers(page, numbers)
    printTimings(`keystroke to painted models (${keys.length} keys)`, summarise(keys), {
      wanted: 'p95 50 ms',
      reference: `an empty frame in the same page ${written(await timeEmptyFrame(page))} ms`,
    })
    printTimings(`whole number to painted families (${cards.length} numbers)`, summarise(cards))
  } finally {
    await counter.close()
  }
}

const warmingUp = 5
/** Between two keys of a quick typist. */
const betweenKeysMilliseconds = 100

async function typeNumbers(page: Page, numbers: readonly string[]) {
  const keys: number[] = []
  const cards: number[] = []
  for (const number of numbers) {
    await page.keyboard.press('Escape')
    for (const character of number) {
      await page.keyboard.type(character)
      keys.push(...(await page.evaluate(() => window.lastPaint())))
      await page.waitForTimeout(betweenKeysMilliseconds)
    }
    cards.push(...(await page.evaluate(() => window.lastCard())))
  }
  return { keys, cards }
}

declare global {
  interface Window {
    /** Milliseconds from the last key to its painted answer; empty where the text is too short to be answered. */
    lastPaint: () => Promise<number[]>
    lastCard: () => Promise<number[]>
  }
}

/** Puts the watch into the page: from the time stamp that the browser gave the key to after the frame that shows the answer. */
function watchPaints(page: Page): Promise<void> {
  return page.evaluate(() => {
    let pressed = 0
    const painted = new Map<string, Promise<number[]>>()
    const afterPaint = () =>
      new Promise<number>(resolve =>
        requestAnimationFrame(() => {
          const { port1, port2 } = new MessageChannel()
          port1.onmessage = () => resolve(performance.now())
          port2.postMessage(0)
        }),
      )
    const until = (isThere: () => boolean, since: number): Promise<number[]> =>
      new Promise(resolve => {
        const giveUp = setTimeout(() => {
          watch.disconnect()
          resolve([])
        }, 10_000)
        const look = () => {
          if (!isThere()) return
          watch.disconnect()
          clearTimeout(giveUp)
          void afterPaint().then(now => resolve([now - since]))
        }
        const watch = new MutationObserver(look)
        watch.observe(document.body, {
          subtree: true,
          childList: true,
          attributes: true,
          characterData: true,
        })
        look()
      })
    const field = document.querySelector<HTMLInputElement>('#plate-number')
    if (field === null) throw new Error('the page shows the plate')
    const isAnswered = (text: string) =>
      document.querySelector('.models')?.getAttribute('data-answers') === text ||
      document.querySelector('.plate__line')?.textContent?.includes('too short') === true
    addEventListener(
      'input',
      event => {
        pressed = event.timeStamp
        const text = field.value.trim()
        painted.set('key', text === '' ? Promise.resolve([]) : until(() => isAnswered(text), pressed))
        painted.set(
          'card',
          until(
            () =>
              isAnswered(text) && document.querySelector('.fit-list')?.getAttribute('aria-busy') === 'false',
            pressed,
          ),
        )
      },
      true,
    )
    window.lastPaint = () => painted.get('key') ?? Promise.resolve([])
    window.lastCard = () =>
      document.querySelector('.one-model') === null
        ? Promise.resolve([])
        : (painted.get('card') ?? Promise.resolve([]))
  })
}
