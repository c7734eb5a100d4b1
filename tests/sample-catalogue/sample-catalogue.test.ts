import { readdirSync, readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { awkwardCases } from '../../sample-catalogue/awkward-cases.ts'
import { buildCatalogue } from '../../sample-catalogue/build-catalogue.ts'
import { catalogueFiles, type Row } from '../../sample-catalogue/catalogue-rows.ts'
import { checkSample } from '../../sample-catalogue/check-sample.ts'
import { expandFitments } from '../../sample-catalogue/expand-fitments.ts'
import { gtinCheckDigit } from '../../sample-catalogue/make-gtin.ts'
import { matchesModelPattern } from '../../sample-catalogue/match-model-pattern.ts'
import { writeCsv } from '../../sample-catalogue/write-csv.ts'
import { makeBruteForce } from './brute-force-verdict.ts'

const folder = join(import.meta.dirname, '../../sample-catalogue')
const catalogue = buildCatalogue()
/** In milliseconds: about a second's work, on a machine that does much else. */
const slowMachine = { timeout: 60_000 }
const report = checkSample(catalogue)
const familyOfPart = new Map(catalogue['parts.csv'].map(row => [row.part_number, row.family]))

describe('the files', () => {
  test.each(catalogueFiles)('%s is what the script makes, byte for byte', file => {
    expect(writeCsv(file, catalogue[file]) === readFileSync(join(folder, file), 'utf8')).toBe(true)
  })

  test('they take at most 12 MB together, scripts and all', () => {
    const sizes = readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .map(name => statSync(join(folder, name)))
      .filter(entry => entry.isFile())
    expect(sizes.reduce((sum, { size }) => sum + size, 0)).toBeLessThanOrEqual(12_000_000)
  })

  test('making them twice gives the same rows', slowMachine, () => {
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
        row => row.says === 'includes' && familySpokenOf(row).startsWith(story),
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
      if (row.says !== 'includes') continue
      const key = `${row.brand} ${familySpokenOf(row)}`
      stated.set(key, [...(stated.get(key) ?? []), row.model_number])
    }
    const astray = catalogue['jobs.csv'].filter(job => !takesAll(job, stated))
    expect(astray).toEqual([])
  })

  test('safety devices are listed by part number, but for the few that no part suits', () => {
    const listed = listSafetyListings()
    const byNumber = [...listed.values()].filter(numbers => numbers.size > 0)
    expect(byNumber.length).toBeGreaterThan(10_000)
    expect(listed.size - byNumber.length).toBeLessThan(200)
    expect(listed.size - byNumber.length).toBeGreaterThan(0)
  })

  test('a safety device used in a job is listed for its machine, under its own number or one it replaces', () => {
    const listed = listSafetyListings()
    const jobs = new Map(catalogue['jobs.csv'].map(row => [row.job, row]))
    const fitted = catalogue['usage.csv'].filter(row => row.job !== '' && isSafetyDevice(row.part_number))
    expect(fitted.length).toBeGreaterThan(500)
    const unlisted = fitted.filter(({ job, part_number }) => {
      const { brand = '', model_number = '' } = jobs.get(job) ?? {}
      const numbers = listed.get(`${brand}\t${model_number}\t${familyOfPart.get(part_number)}`)
      return numbers === undefined || !listReplaced(part_number).some(number => numbers.has(number))
    })
    expect(unlisted).toEqual([])
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

const safetyFamilies = new Set(
  catalogue['families.csv'].filter(row => row.safety_device === 'yes').map(row => row.family),
)

function isSafetyDevice(partNumber: string): boolean {
  return safetyFamilies.has(familyOfPart.get(partNumber) ?? '')
}

/** The part numbers listed of each safety family for each model of which it is listed, by brand, model number and family; none where the family alone is. */
function listSafetyListings(): Map<string, Set<string>> {
  const listed = new Map<string, Set<string>>()
  // Of the plug the family is listed for every model on purpose.
  const spoken = expandFitments(catalogue).filter(
    ({ row }) =>
      row.says === 'includes' &&
      safetyFamilies.has(familySpokenOf(row)) &&
      familySpokenOf(row) !== 'fused-plug',
  )
  for (const { row, model } of spoken) {
    const key = `${model}\t${familySpokenOf(row)}`
    const numbers = listed.get(key) ?? new Set()
    if (row.part_number !== '') numbers.add(row.part_number)
    listed.set(key, numbers)
  }
  return listed
}

/** The number itself and every one whose place it takes, however many steps back. */
function listReplaced(partNumber: string): string[] {
  const numbers = [partNumber]
  for (const number of numbers) {
    numbers.push(
      ...catalogue['supersessions.csv']
        .filter(row => row.new_part === number && row.made_from + row.made_to === '')
        .map(row => row.old_part),
    )
  }
  return numbers
}

function familySpokenOf(row: Row<'fitments.csv'>): string {
  return row.family || (familyOfPart.get(row.part_number) ?? '')
}

function takesAll(job: Row<'jobs.csv'>, stated: ReadonlyMap<string, readonly string[]>): boolean {
  return job.families_needed
    .split('|')
    .every(family =>
      (stated.get(`${job.brand} ${family}`) ?? []).some(listed =>
        matchesModelPattern(listed, job.model_number),
      ),
    )
}
