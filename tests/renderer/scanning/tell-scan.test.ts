import { expect, test } from 'vitest'
import { type ScannerSettings, usualSettings } from '../../../renderer/scanning/scanner-settings.ts'
import { type Burst, type Struck, tellScan } from '../../../renderer/scanning/tell-scan.ts'

/** Keys with the milliseconds before each. `⏎` is Enter, `⇥` Tab, `⇧` Shift, `✗` any other key. */
function strike(keys: readonly (readonly [string, number])[], settings: ScannerSettings = usualSettings) {
  let burst: Burst | null = null
  let at = 0
  let field = ''
  const scanned: string[] = []
  for (const [key, pause] of keys) {
    at += pause
    const told = tellScan(burst, asStruck(key, at), settings)
    burst = told.burst
    field += told.released
    if (!told.isHeld && [...key].length === 1 && !'⏎⇥⇧✗'.includes(key)) field += key
    if (told.scanned !== null) scanned.push(told.scanned)
  }
  return { field, scanned, held: burst?.held ?? '' }
}

function asStruck(key: string, at: number): Struck {
  if (key === '⏎') return { is: 'Enter', at }
  if (key === '⇥') return { is: 'Tab', at }
  if (key === '⇧') return { is: 'modifier', at }
  return key === '✗' ? { is: 'other', at } : { is: 'character', character: key, at }
}

const at = (pause: number, text: string) => [...text].map(key => [key, pause] as const)

test('keys five milliseconds apart that end with Enter are a scan; its first key alone was in the field', () => {
  expect(strike(at(5, '00480121⏎'))).toEqual({ field: '0', scanned: ['00480121'], held: '' })
})

test('a person’s keys stay in the field, Enter included', () => {
  expect(strike(at(90, '00480121⏎'))).toEqual({ field: '00480121', scanned: [], held: '' })
})

test.each([
  ['as slow as the setting says is a scan', 35, ['00480121']],
  ['one millisecond slower is typing', 36, []],
])('%s', (_title, pause, scanned) => {
  expect(strike(at(pause, '00480121⏎')).scanned).toEqual(scanned)
})

test('two keys rolled by a fast hand are given back to the field before the next key', () => {
  expect(strike([...at(120, 'ab'), ['c', 12], ['d', 120]])).toEqual({ field: 'abcd', scanned: [], held: '' })
})

test('a short burst with Enter is typing, and nothing of it is lost', () => {
  expect(strike(at(5, '123⏎'))).toEqual({ field: '123', scanned: [], held: '' })
})

test('typing before a scan stays, and the scan is whole', () => {
  expect(strike([...at(150, 'be'), ['0', 400], ...at(5, '0480121⏎')])).toMatchObject({
    field: 'be0',
    scanned: ['00480121'],
  })
})

test('a pause before Enter is a person’s', () => {
  expect(strike([...at(5, '00480121'), ['⏎', 300]])).toMatchObject({ field: '00480121', scanned: [] })
})

test('Shift, which a scanner sends for capitals, breaks nothing off', () => {
  expect(strike(at(5, '⇧H⇧R/5480⏎')).scanned).toEqual(['HR/5480'])
})

test('any other key gives back what was held', () => {
  expect(strike(at(5, 'abcdef✗'))).toEqual({ field: 'abcdef', scanned: [], held: '' })
})

test.each<[ScannerSettings['terminator'], string, number]>([
  ['Enter', '⇥', 0],
  ['Tab', '⇥', 1],
  ['Tab', '⏎', 0],
  ['either', '⇥', 1],
  ['either', '⏎', 1],
])('where a code ends with %s, %s ends %i codes', (terminator, key, ended) => {
  expect(strike(at(5, `00480121${key}`), { ...usualSettings, terminator }).scanned).toHaveLength(ended)
})

test('one scan after the other without a pause', () => {
  expect(strike(at(5, '00480121⏎00480122⏎')).scanned).toEqual(['00480121', '00480122'])
})
