import { createHash } from 'node:crypto'
import { copyFileSync, existsSync, readFileSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import Database from 'better-sqlite3'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { commands } from '../../electron/hosts/command-line/all-commands.ts'
import { killStragglers, runTallyplate, start } from './run-program.ts'
import { makeSmallShop, type SmallShop } from './small-shop.ts'

let shop: SmallShop
beforeAll(async () => {
  shop = await makeSmallShop()
})
afterAll(() => {
  killStragglers()
  shop.remove()
})

interface Expected {
  readonly code: number
  readonly stdout?: RegExp
  /** One line on standard error. */
  readonly line?: RegExp
}

async function check(given: readonly string[], expected: Expected): Promise<void> {
  const ran = await runTallyplate(given, { TALLYPLATE_FILE: shop.databaseFile })
  expect(ran.stderr).toMatch(expected.line ?? /^$/)
  if (expected.line !== undefined) expect(ran.stderr.trimEnd().split('\n')).toHaveLength(1)
  expect(ran.stdout).toMatch(expected.stdout ?? /^$/)
  expect(ran.code).toBe(expected.code)
}

test('the version is the package’s', () => check(['--version'], { code: 0, stdout: /^\d+\.\d+\.\d+\n$/ }))

test('the help names every command, and each command has its own', async () => {
  await check(['--help'], { code: 0, stdout: /find +names the models/ })
  for (const { name } of commands.slice(0, 3))
    await check([name, '--help'], { code: 0, stdout: new RegExp(`^tallyplate ${name}`) })
})

test.each<[string, string[], Expected]>([
  ['a mistyped command', ['fidn', 'x'], { code: 2, line: /Did you mean find\?/ }],
  ['a mistyped option', ['find', 'x', '--barnd', 'y'], { code: 2, line: /Did you mean --brand\?/ }],
  [
    'a text and a file of texts',
    ['find', 'x', '--from', 'y'],
    { code: 2, line: /takes one plate text, or --from/ },
  ],
  ['no part', ['fit', '--model', 'QV-1042/A'], { code: 2, line: /fit needs --part/ }],
  [
    'an absent questions file',
    ['fit', '--from', 'absent.csv'],
    { code: 2, line: /absent\.csv cannot be read \(there is no such file\)/ },
  ],
  ['a chain for many', ['fit', '--from', 'x', '--why'], { code: 2, line: /--why with one question/ }],
  ['an absent catalogue', ['load', 'absent'], { code: 2, line: /absent cannot be read/ }],
])('%s: one line that says what to do, and exit code 2', (_title, given, expected) => check(given, expected))

test.each<[string, string[], Expected]>([
  ['find with one model', ['find', 'QV-1042/A'], { code: 0, stdout: /Quorvane +QV-1042\/A +dishwasher/ }],
  ['find with none', ['find', 'WWWW 99999 WWWW'], { code: 1, stdout: /No model agrees/ }],
  [
    'a part that fits',
    ['fit', '--model', 'QV-1042/A', '--part', '00480122'],
    { code: 0, stdout: /^00480122: fits \(Quorvane QV-1042\/A\)/ },
  ],
  [
    'the reasoning as a chain',
    ['fit', '--model', 'QV-1042/A', '--part', '00480121', '--why'],
    { code: 0, stdout: /^00480121: fits\.\n1\. Appliance: Quorvane QV-1042\/A[\s\S]*Replaced by 00480122/ },
  ],
  [
    'what was said of it, and the verdict of a day before',
    ['history', '--model', 'QV-1042/A', '--part', '00480122', '--as-of', '2001-01-01'],
    { code: 0, stdout: /^00480122 in Quorvane QV-1042\/A:\n +20\d\d-[\s\S]*\nOn 2001-01-01: no record/ },
  ],
  [
    'a history of several models',
    ['history', '--model', 'QV-1042', '--part', '00480122'],
    { code: 1, line: /is not the number of one model/ },
  ],
  [
    'one that waits for a reading',
    ['fit', '--model', 'QV-1042/B', '--part', '00480122'],
    { code: 1, stdout: /not decided yet[\s\S]*Find out:/ },
  ],
  [
    'one that waits for two readings, of which neither would do alone',
    ['fit', '--model', 'QV-1042', '--part', '00480122'],
    { code: 1, stdout: /Find out:[\s\S]*No fewer readings would do: every smaller choice was tried\./ },
  ],
  [
    'one that nobody knows',
    ['fit', '--model', 'QV-1042/A', '--part', '77'],
    { code: 1, stdout: /no record/ },
  ],
  [
    'what fits',
    ['parts', '--model', 'QV-1042/A'],
    { code: 0, stdout: /Drain pump \(drain\)[\s\S]*00480122 +genuine +fits +4 in SHOP A3/ },
  ],
  [
    'the models of a part',
    ['models', '--part', '1E5'],
    { code: 0, stdout: /1E5 goes into 1 models?:\n +Tollbrae +TB 77310/ },
  ],
  ['the book of a van', ['onhand', '--location', 'VAN1'], { code: 0, stdout: /VAN1 +1E5 +2/ }],
  ['a check of the file', ['verify'], { code: 0, stdout: /ok +references/ }],
  [
    'a refused request',
    ['models', '--part', '00480129'],
    { code: 1, line: /No part has the number “00480129”/ },
  ],
])('%s, in words', (_title, given, expected) => check(given, expected))

test('a file of texts is answered line by line, in order', async () => {
  const texts = path.join(shop.folder, 'texts.txt')
  writeFileSync(texts, 'QV-1042/B\nWWWW 99999 WWWW\n\nTB 77310\n')
  const ran = await runTallyplate(['find', '--from', texts, '--json', '--file', shop.databaseFile])
  const answers = JSON.parse(ran.stdout) as { typed: string; outcome: string }[]
  expect(answers.map(({ typed, outcome }) => [typed, outcome])).toEqual([
    ['QV-1042/B', 'exact'],
    ['WWWW 99999 WWWW', 'none'],
    ['', 'none'],
    ['TB 77310', 'exact'],
  ])
  expect(ran.code).toBe(1)
})

test('a file of questions is answered row by row, in order', async () => {
  const questions = path.join(shop.folder, 'questions.csv')
  writeFileSync(
    questions,
    'brand,model,part,made,serial,volts,hertz\n,QV-1042/A,00480122,,,,\nQuorvane,QV-1042/B,00480122,2018-03,,,\n,TB 77310,1E5,,,,\n',
  )
  const ran = await runTallyplate(['fit', '--from', questions, '--json', '--file', shop.databaseFile])
  const answers = JSON.parse(ran.stdout) as { verdict: string; part: { typed: string } }[]
  expect(answers.map(({ verdict, part }) => [part.typed, verdict])).toEqual([
    ['00480122', 'fits'],
    ['00480122', 'fits'],
    ['1E5', 'fits'],
  ])
  expect(ran.code).toBe(0)
})

test('a questions file that is wrong in one row is not answered at all', async () => {
  const questions = path.join(shop.folder, 'wrong.csv')
  writeFileSync(questions, 'model,part,made\nQV-1042/A,00480122,\nQV-1042/B,00480122,June 2018\n')
  await check(['fit', '--from', questions], {
    code: 2,
    line: /wrong\.csv, line 3, made: .*“June 2018” is not that/,
  })
})

test('a load with a rejected row says which, takes the others, and exits with 1', async () => {
  const databaseFile = path.join(shop.folder, 'loaded.sqlite')
  const folder = path.join(shop.folder, 'catalogue')
  const file = path.join(shop.folder, 'models.csv')
  writeFileSync(
    file,
    'brand,model_number,appliance_type,platform,made_from,made_to,volts,hertz,watts\nTollbrae,TB 77311,washer,P2,2014-13,,230,50,\nTollbrae,TB 77312,washer,P2,,,230,50,\n',
  )
  expect((await runTallyplate(['load', folder, '--file', databaseFile])).code).toBe(0)
  const ran = await runTallyplate(['load', file, '--file', databaseFile, '--json'])
  expect(ran.code).toBe(1)
  expect(JSON.parse(ran.stdout)).toMatchObject({
    files: [{ file: 'models.csv', added: 1, rejected: 1 }],
    rejected: [{ file: 'models.csv', line: 2, column: 'made_from' }],
  })
})

test.each([
  'find x',
  'fit --model a --part b',
  'parts --model a',
  'models --part a',
  'onhand',
  'verify',
  'backup b',
])('%s makes no shop where there is none', async words => {
  const absent = path.join(shop.folder, 'absent.sqlite')
  const ran = await runTallyplate([...words.split(' '), '--file', absent])
  expect(ran.stderr).toMatch(/There is no shop file .*absent\.sqlite yet\. Load catalogue files/)
  expect(ran.code).toBe(2)
  expect(existsSync(absent)).toBe(false)
})

function fingerprint(file: string): string {
  return createHash('sha256').update(readFileSync(file)).digest('hex')
}

async function checkLeftAlone(file: string, line: RegExp): Promise<void> {
  const before = fingerprint(file)
  const ran = await runTallyplate(['find', 'QV', '--file', file])
  expect(ran.stderr).toMatch(line)
  expect(ran.stderr.trimEnd().split('\n')).toHaveLength(1)
  expect(ran.stdout).toBe('')
  expect(ran.code).toBe(2)
  expect(fingerprint(file)).toBe(before)
}

test('a damaged shop is left alone, and the way back is named', async () => {
  const file = path.join(shop.folder, 'damaged.sqlite')
  const bytes = readFileSync(shop.databaseFile)
  bytes.fill(0xff, 4096 * 3, 4096 * 9)
  writeFileSync(file, bytes)
  await checkLeftAlone(file, /damaged.sqlite is damaged .*tallyplate restore <copy> --file/)
  const ran = await runTallyplate(['verify', '--json', '--file', file])
  expect(JSON.parse(ran.stdout)).toMatchObject({ ok: false })
  expect(ran.code).toBe(1)
})

test('a shop from a newer program is left alone', async () => {
  const file = path.join(shop.folder, 'newer.sqlite')
  copyFileSync(shop.databaseFile, file)
  const newer = new Database(file)
  newer.pragma('user_version = 99')
  newer.pragma('journal_mode = DELETE')
  newer.close()
  await checkLeftAlone(
    file,
    /written by a newer Tallyplate \(layout 99; this one knows \d+\)\. Update this program/,
  )
})

test('another program’s database is left alone', async () => {
  const file = path.join(shop.folder, 'songs.sqlite')
  const songs = new Database(file)
  songs.exec('CREATE TABLE songs (title TEXT)')
  songs.close()
  await checkLeftAlone(file, /an SQLite file of some other program/)
})

test('a copy is put back over a shop that has changed since', async () => {
  const file = path.join(shop.folder, 'restored.sqlite')
  const copy = path.join(shop.folder, 'good-copy.sqlite')
  expect((await runTallyplate(['load', shop.catalogueFolder, '--file', file])).code).toBe(0)
  expect((await runTallyplate(['backup', copy, '--file', file])).code).toBe(0)
  writeFileSync(file, 'overwritten by mistake')
  const ran = await runTallyplate(['restore', copy, '--file', file])
  expect(ran.stdout).toMatch(/is kept as .*restored\.sqlite\.before-restore-/)
  expect(ran.code).toBe(0)
  expect((await runTallyplate(['find', 'QV-1042/A', '--file', file])).code).toBe(0)
})

test('serve says its address once and ends cleanly when it is interrupted; others may ask meanwhile', async () => {
  const serving = start('electron/hosts/command-line.ts', ['serve', '--json', '--file', shop.databaseFile])
  const [, document = ''] = await serving.printed(/^(\{.*\})\n$/)
  const { address, port } = JSON.parse(document) as { address: string; port: number }
  expect(address).toMatch(new RegExp(`^http://127\\.0\\.0\\.1:${port}/\\?token=[\\w-]+$`))
  await check(['find', 'QV-1042/A', '--json'], { code: 0, stdout: /"exact"/ })
  const second = await runTallyplate(['serve', '--file', shop.databaseFile])
  expect(second.stderr).toMatch(
    new RegExp(`is served already at http://127\\.0\\.0\\.1:${port} \\(process \\d+\\)`),
  )
  expect(second.code).toBe(2)
  serving.interrupt()
  expect((await serving.ended).code).toBe(0)
  expect(existsSync(`${shop.databaseFile}-wal`)).toBe(false)
})
