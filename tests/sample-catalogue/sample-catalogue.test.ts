import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { awkwardCases } from '../../sample-catalogue/awkward-cases.ts'
import { buildCatalogue } from '../../sample-catalogue/build-catalogue.ts'
import { catalogueFiles, type Row } from '../../sample-catalogue/catalogue-rows.ts'
import { checkSample } from '../../sample-catalogue/check-sample.ts'
import { gtinCheckDigit } from '../../sample-catalogue/make-gtin.ts'
import { matchesModelPattern } from '../../sample-catalogue/match-model-pattern.ts'
import { writeCsv } from '../../sample-catalogue/write-csv.ts'
import { makeBruteForce } from './brute-force-verdict.ts'

const folder = join(import.meta.dirname, '../../sample-catalogue')
const catalogue = buildCatalogue()
const report = checkSample(catalogue)

describe('the files', () => {
  test.each(catalogueFiles)('%s is what the script makes, byte for byte', file => {
    expect(writeCsv(file, catalogue[file]) === readFileSync(join(folder, file), 'utf8')).toBe(true)
  })

  test('they take at most 12 MB together', () => {
    const bytes = catalogueFiles.map(file => readFileSync(join(folder, file)).length)
    expect(bytes.reduce((sum, size) => sum + size, 0)).toBeLessThanOrEqual(12_000_000)
  })

  test('making them twice gives the same rows', () => {
    expect(JSON.stringify(buildCatalogue()) === JSON.stringify(catalogue)).toBe(true)
  })

  test('the scripts ask neither the clock nor chance nor the program', () => {
    const scripts = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter(name =>
      name.endsWith('.ts'),
    )
    expect(scripts.length).toBeGreaterThan(20)
    for (const script of scripts) {
      const text = readFileSync(join(folder, script), 'utf8')
      expect(text, script).not.toMatch(
        /Math\.random|Date\.now|new Date\(\)|randomUUID|from '[./]*(electron|renderer)/,
      )
    }
  })
})

describe('what it holds', () => {
  test('no dangling number, no contradiction, no loop, no range upside down', () => {
    expect(report.faults).toEqual([])
  })

  test.each([
    ['brands', 12],
    ['appliance types', 8],
    ['models', 3000],
    ['families', 120],
    ['parts', 900],
    ['fitments', 60_000],
    ['models of the widest family listed one by one', 2501],
    ['suppliers', 4],
  ])('at least so many %s: %i', (what, least) => {
    expect(report.counts[what]).toBeGreaterThanOrEqual(least)
  })

  test('over-filling parts go into thousands of machines of every brand that makes them', () => {
    const stories = ['inlet-valve-', 'float-switch-', 'pressure-switch-']
    const wet = catalogue['models.csv'].filter(
      row => row.appliance_type === 'dishwasher' || row.appliance_type === 'washer',
    )
    for (const story of stories) {
      const rows = catalogue['fitments.csv'].filter(
        row => row.says === 'includes' && row.family.startsWith(story),
      )
      const models = new Set(rows.map(row => `${row.brand} ${row.model_number}`))
      expect(models.size, story).toBeGreaterThan(story === 'float-switch-' ? 1000 : 1800)
      expect(new Set(rows.map(row => row.brand)), story).toEqual(new Set(wet.map(row => row.brand)))
      expect(
        rows.some(row => row.made_to !== ''),
        story,
      ).toBe(true)
    }
  })

  test('two years of use, from Monday to Sunday, with one shop, three vans and a quarantine shelf', () => {
    const dates = catalogue['usage.csv'].map(row => row.date).sort()
    expect(dates.at(0)).toBe('2024-11-25')
    expect((dates.at(-1) ?? '') >= '2026-11-20').toBe(true)
    expect((dates.at(-1) ?? '') <= '2026-11-22').toBe(true)
    expect(catalogue['locations.csv'].map(row => row.kind)).toEqual([
      'shop',
      'van',
      'van',
      'van',
      'quarantine',
    ])
  })

  test('every job names parts that its machine takes', () => {
    const stated = new Map<string, string[]>()
    for (const row of catalogue['fitments.csv']) {
      if (row.says !== 'includes' || row.family === '') continue
      const key = `${row.brand} ${row.family}`
      stated.set(key, [...(stated.get(key) ?? []), row.model_number])
    }
    const astray = catalogue['jobs.csv'].filter(job => !takesAll(job, stated))
    expect(astray).toEqual([])
  })

  /** GS1 General Specifications, section on restricted circulation numbers, and its check digit example 629104150021 -> 3. */
  test('in-store GTINs carry the check digit of GS1', () => {
    expect(gtinCheckDigit('629104150021')).toBe(3)
  })
})

describe('the awkward cases', () => {
  const judge = makeBruteForce(catalogue)
  const questions = awkwardCases.flatMap(({ name, questions: asked }) =>
    asked.map(question => ({ name, question })),
  )

  test('there are at least 25, each by its own name, each in the README', () => {
    const names = awkwardCases.map(({ name }) => name)
    expect(new Set(names).size).toBe(names.length)
    expect(names.length).toBeGreaterThanOrEqual(25)
    const readme = readFileSync(join(folder, 'README.md'), 'utf8').replace(/ +/g, ' ')
    expect(
      names.filter(
        name =>
          !readme.includes(`
| ${name} |`),
      ),
    ).toEqual([])
    const asked = questions.map(({ question }) => `\`${question.model} + ${question.part}\``)
    expect(asked.filter(text => !readme.includes(text))).toEqual([])
  })

  test('they call for every verdict and every reading', () => {
    expect(new Set(questions.map(({ question }) => question.verdict)).size).toBe(5)
    const asked = new Set(questions.flatMap(({ question }) => question.asks ?? []))
    expect([...asked].sort()).toEqual(['brand', 'hertz', 'made', 'model-number', 'serial', 'volts', 'watts'])
  })

  test.each(questions)('$name: $question.model, $question.part -> $question.verdict', ({ question }) => {
    const answer = judge(question)
    expect(answer.verdict).toBe(question.verdict)
    if (question.asks !== undefined) expect(answer.deciding).toContain(question.asks)
    if (question.alsoNeeds !== undefined) expect(answer.alsoNeeds).toEqual(question.alsoNeeds)
    if (question.current !== undefined) expect(answer.current).toEqual([question.current])
  })
})

function takesAll(job: Row<'jobs.csv'>, stated: ReadonlyMap<string, readonly string[]>): boolean {
  return job.families_needed
    .split('|')
    .every(family =>
      (stated.get(`${job.brand} ${family}`) ?? []).some(listed =>
        matchesModelPattern(listed, job.model_number),
      ),
    )
}
