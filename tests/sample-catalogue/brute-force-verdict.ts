import type { AwkwardQuestion } from '../../sample-catalogue/awkward/awkward-case.ts'
import { type Catalogue, numberKey, type Row } from '../../sample-catalogue/catalogue-rows.ts'
import { expandFitments } from '../../sample-catalogue/expand-fitments.ts'
import { dayAfter, monthCount, monthText } from '../../sample-catalogue/months.ts'

type Question = Omit<AwkwardQuestion, 'verdict'>

/** One way things may be that the question leaves open. */
type World = {
  readonly model: Row<'models.csv'>
  readonly made: string
  readonly serial: string
  readonly volts: string
  readonly hertz: string
  readonly watts: string
}

export type BruteVerdict = {
  readonly verdict: AwkwardQuestion['verdict']
  /** Readings that by themselves would settle the question. */
  readonly deciding: readonly string[]
  readonly alsoNeeds: readonly string[]
  readonly current: readonly string[]
}

/**
 * The verdict by going through every way things may be, straight from the rows and by nothing of the program: slow,
 * plain, and made only for the awkward cases.
 */
export function makeBruteForce(catalogue: Catalogue): (question: Question) => BruteVerdict {
  const statements = Map.groupBy(expandFitments(catalogue), ({ model }) => model)
  const parts = new Map(catalogue['parts.csv'].map(row => [numberKey(row.part_number), row]))
  const crossed = new Map(
    catalogue['cross_references.csv'].map(row => [numberKey(row.number), row.part_number]),
  )
  const isSafetyDevice = new Map(
    catalogue['families.csv'].map(row => [row.family, row.safety_device === 'yes']),
  )
  const rules = Map.groupBy(catalogue['attributes.csv'], row => row.family)
  const needed = new Map(
    catalogue['model_attributes.csv'].map(row => [
      `${row.brand}\t${row.model_number}\t${row.family}\t${row.attribute}`,
      row.value,
    ]),
  )

  return question => {
    const key = numberKey(question.part)
    const asked = parts.get(key) ?? parts.get(numberKey(crossed.get(key) ?? ''))
    const open = listOpenModels(catalogue, question)
    const worlds = open.flatMap(model => listWorlds(catalogue, model, question))
    const outcomes = worlds.map(world => ({
      world,
      ...(asked === undefined ? silence : judge(asked, world)),
    }))
    const names = new Set(outcomes.map(nameSale))
    const [first] = outcomes
    if (first === undefined) throw new Error(`no model for ${question.model}`)
    const weakest = outcomes.some(({ outcome }) => outcome === 'silent') ? 'silent' : first.outcome
    const named = {
      yes: first.needs === '' ? 'fits' : 'fits-with-changes',
      no: 'does-not-fit',
      silent: 'no-record',
    } as const
    return {
      verdict: names.size > 1 ? 'ask' : named[weakest],
      deciding: Object.entries(readings).flatMap(([reading, read]) => {
        const groups = Map.groupBy(outcomes, ({ world }) => read(world))
        const settles = [...groups.values()].every(group => new Set(group.map(nameSale)).size === 1)
        return settles ? [reading] : []
      }),
      alsoNeeds: first.needs === '' ? [] : first.needs.split('|'),
      current: [...new Set(outcomes.map(({ current }) => current))],
    }
  }

  function judge(asked: Row<'parts.csv'>, world: World): Outcome {
    const chain = follow(asked.part_number, world.made)
    const current = parts.get(numberKey(chain.number)) ?? asked
    const { answer, needs, carrying } = weigh(current, world)
    const outcome = answer === 'yes' && !attributesAgree(current, world) ? 'no' : answer
    return {
      outcome,
      needs: outcome === 'yes' ? bill(current.part_number, world, carrying, needs || chain.needs) : '',
      current: current.part_number,
    }
  }

  /** What must be bought besides: what is needed and what goes in together, but for what comes in the part itself. */
  function bill(
    number: string,
    world: World,
    carrying: readonly Row<'fitments.csv'>[],
    needs: string,
  ): string {
    const inside = openKit(number)
    const bought = needs.split('|').filter(need => need !== '' && !inside.has(need))
    const places = listPlacesTaken(number, world.made)
    const together = catalogue['replaced_together.csv'].filter(row => places.has(row.part_number))
    for (const row of together) {
      const isPair = places.has(row.with_part)
      const other = isPair ? number : row.with_part
      const there = isPair ? countPieces(carrying) : (inside.get(other) ?? 0)
      if (there < Number(row.quantity) && !bought.includes(other)) bought.push(other)
    }
    return bought.join('|')
  }

  function openKit(kit: string): Map<string, number> {
    const inside = new Map<string, number>()
    for (const row of catalogue['kits.csv'].filter(one => one.kit === kit)) {
      const pieces = Number(row.quantity)
      const within = [...openKit(row.part_number)].map(([inner, each]) => [inner, each * pieces] as const)
      for (const [inner, count] of [[row.part_number, pieces] as const, ...within])
        inside.set(inner, count + (inside.get(inner) ?? 0))
    }
    return inside
  }

  /**
   * In this order: its own number, or that of a twin which may always stand for it; a number whose place it takes,
   * whose exclusions it does not inherit; its own number for another time; its family, which of a safety device is
   * not enough; and whatever was said of another time.
   */
  function weigh(part: Row<'parts.csv'>, world: World): Weighed {
    const said = (statements.get(`${world.model.brand}\t${world.model.model_number}`) ?? []).map(
      ({ row }) => row,
    )
    const twins = listTwins(part.part_number, world.made)
    const places = listPlacesTaken(part.part_number, world.made)
    const own = said.filter(row => twins.has(row.part_number))
    const replaced = said.filter(row => places.has(row.part_number) && !twins.has(row.part_number))
    const ofFamily = said.filter(row => row.family === part.family)
    const holding = (rows: readonly Row<'fitments.csv'>[], says: string) =>
      rows.filter(row => row.says === says && holds(row, world))
    const includesAny = (rows: readonly Row<'fitments.csv'>[]) => rows.some(row => row.says === 'includes')
    if (holding(own, 'excludes').length > 0) return unsold('no')
    const listed = holding(own, 'includes')
    if (listed.length > 0) return { answer: 'yes', needs: '', carrying: listed }
    const inherited = holding(replaced, 'includes')
    const [place] = inherited
    if (place !== undefined)
      return { answer: 'yes', needs: places.get(place.part_number) ?? '', carrying: inherited }
    if (includesAny(own)) return unsold('no')
    if (holding(ofFamily, 'excludes').length > 0) return unsold('no')
    const onItsWord = holding(ofFamily, 'includes')
    if (onItsWord.length > 0) {
      if (isSafetyDevice.get(part.family) === true) return unsold('silent')
      return { answer: 'yes', needs: '', carrying: onItsWord }
    }
    return unsold(includesAny([...ofFamily, ...replaced]) ? 'no' : 'silent')
  }

  function follow(from: string, made: string): { number: string; needs: string } {
    const step = catalogue['supersessions.csv'].find(
      row => row.way === 'one' && row.old_part === from && isWithin(made, row.made_from, row.made_to),
    )
    if (step === undefined) return { number: from, needs: '' }
    const onward = follow(step.new_part, made)
    return {
      number: onward.number,
      needs: [step.also_needs, onward.needs].filter(need => need !== '').join('|'),
    }
  }

  /** The number and every one that may stand for it whichever way round. */
  function listTwins(number: string, made: string): Set<string> {
    const twins = new Set([number])
    for (const twin of twins) {
      for (const row of catalogue['supersessions.csv']) {
        if (row.way !== 'both' || !isWithin(made, row.made_from, row.made_to)) continue
        if (row.old_part === twin) twins.add(row.new_part)
        if (row.new_part === twin) twins.add(row.old_part)
      }
    }
    return twins
  }

  /** Every number whose place this one takes, with what that needs besides. */
  function listPlacesTaken(number: string, made: string): Map<string, string> {
    const places = new Map([[number, '']])
    for (const [place, needs] of places) {
      for (const row of catalogue['supersessions.csv']) {
        if (!isWithin(made, row.made_from, row.made_to)) continue
        const before =
          row.new_part === place
            ? row.old_part
            : row.way === 'both' && row.old_part === place
              ? row.new_part
              : ''
        if (before !== '' && !places.has(before)) places.set(before, row.also_needs || needs)
      }
    }
    return places
  }

  function attributesAgree(part: Row<'parts.csv'>, world: World): boolean {
    const states = new Map(
      part.attributes.split(';').map(pair => [pair.split('=')[0], pair.split('=')[1] ?? '']),
    )
    const plate: Readonly<Record<string, string>> = {
      volts: world.volts,
      hertz: world.hertz,
      watts: world.watts,
    }
    return (rules.get(part.family) ?? []).every(({ family, attribute, rule, tolerance }) => {
      const offered = states.get(attribute) ?? ''
      const wanted =
        plate[attribute] ??
        needed.get(`${world.model.brand}\t${world.model.model_number}\t${family}\t${attribute}`) ??
        ''
      if (rule === 'equal') return offered === wanted
      const [low = Number.NaN, high = low] = offered.split('..').map(Number)
      const [wantedLow = Number.NaN, wantedHigh = wantedLow] = wanted.split('-').map(Number)
      if (rule === 'at-least') return low >= wantedHigh
      if (rule === 'at-most') return high <= wantedLow
      if (rule === 'covers') return low <= wantedLow && wantedHigh <= high
      return Math.abs(low - wantedLow) <= Number(tolerance) * wantedLow
    })
  }
}

type Weighed = {
  readonly answer: Outcome['outcome']
  readonly needs: string
  /** The rows that carry a yes. */
  readonly carrying: readonly Row<'fitments.csv'>[]
}

function unsold(answer: 'no' | 'silent'): Weighed {
  return { answer, needs: '', carrying: [] }
}

/** Places add up; without a place the largest count is the whole. Nobody's count is one. */
function countPieces(carrying: readonly Row<'fitments.csv'>[]): number {
  const byPlace = Map.groupBy(carrying, row => row.position)
  const most = (rows: readonly Row<'fitments.csv'>[]) =>
    Math.max(...rows.map(row => Number(row.quantity || '1')))
  const whole = most(byPlace.get('') ?? [])
  const placed = [...byPlace].flatMap(([place, rows]) => (place === '' ? [] : [most(rows)]))
  return Math.max(
    whole,
    1,
    placed.reduce((sum, one) => sum + one, 0),
  )
}

type Outcome = {
  readonly outcome: 'yes' | 'no' | 'silent'
  readonly needs: string
  readonly current: string
}

/** What would be sold: nothing is sold on a no, nor where nothing is said. */
function nameSale({ outcome, needs, current }: Outcome): string {
  return outcome === 'yes' ? `yes ${needs} ${current}` : 'nothing'
}

const silence = { outcome: 'silent' as const, needs: '', current: '' }

const readings: Readonly<Record<string, (world: World) => string>> = {
  brand: world => world.model.brand,
  'model-number': world => world.model.model_number,
  made: world => world.made,
  serial: world => world.serial,
  volts: world => world.volts,
  hertz: world => world.hertz,
  watts: world => world.watts,
}

function holds(row: Row<'fitments.csv'>, world: World): boolean {
  return (
    isWithin(world.made, row.made_from, row.made_to) && isWithin(world.serial, row.serial_from, row.serial_to)
  )
}

function isWithin(value: string, from: string, to: string): boolean {
  return (from === '' || value >= from) && (to === '' || value <= to)
}

/** The models that the number leaves open, without those that what else was read contradicts, unless it contradicts them all. */
function listOpenModels(catalogue: Catalogue, question: Question): Row<'models.csv'>[] {
  const numbered = listNumberedSo(catalogue, question)
  const contradictions: ((row: Row<'models.csv'>) => boolean)[] = [
    row => listMonths(catalogue, row, question).length === 0,
    row => contradicts(question.volts, row.volts),
    row => contradicts(question.hertz, row.hertz),
  ]
  return contradictions.reduce((left, isContradicted) => {
    const agreeing = left.filter(row => !isContradicted(row))
    return agreeing.length > 0 ? agreeing : left
  }, numbered)
}

/** `230` does not contradict `220-240`, and nothing contradicts what is not known. */
function contradicts(read: string | undefined, listed: string): boolean {
  if (read === undefined || listed === '') return false
  const [low = Number.NaN, high = low] = read.split('-').map(Number)
  const [listedLow = Number.NaN, listedHigh = listedLow] = listed.split('-').map(Number)
  return high < listedLow || listedHigh < low
}

function listNumberedSo(catalogue: Catalogue, question: Question): Row<'models.csv'>[] {
  const ofBrand = catalogue['models.csv'].filter(
    row => question.brand === undefined || row.brand === question.brand,
  )
  const typed = [...question.model]
    .map(character => (character === '?' ? '.' : numberKey(character)))
    .join('')
  const whole = ofBrand.filter(row => new RegExp(`^${typed}$`, 'u').test(numberKey(row.model_number)))
  if (whole.length > 0) return whole
  return ofBrand.filter(row => new RegExp(`^${typed}`, 'u').test(numberKey(row.model_number)))
}

function listWorlds(catalogue: Catalogue, model: Row<'models.csv'>, question: Question): World[] {
  const volts = [question.volts ?? model.volts].flatMap(value => (value === '' ? ['120', '230'] : [value]))
  const hertz = [question.hertz ?? model.hertz].flatMap(value => (value === '' ? ['50', '60'] : [value]))
  const watts = model.watts === '' ? ['2000', '3500'] : [model.watts]
  const serials =
    question.serial === undefined ? ['10000000', '44999999', '45000000', '99999999'] : [question.serial]
  const ofModel = listMonths(catalogue, model, question)
  // A reading that contradicts the only model left counts for itself: the number is what is doubtful then.
  const months = ofModel.length > 0 ? ofModel : listCalendar(catalogue, model, question)
  return months.flatMap(made =>
    serials.flatMap(serial =>
      volts.flatMap(volt =>
        hertz.flatMap(hertzValue =>
          watts.map(watt => ({ model, made, serial, volts: volt, hertz: hertzValue, watts: watt })),
        ),
      ),
    ),
  )
}

/** The months in which the machine may have been made, as far as plate, serial and catalogue tell. */
function listMonths(catalogue: Catalogue, model: Row<'models.csv'>, question: Question): string[] {
  return listCalendar(catalogue, model, question).filter(month =>
    isWithin(month, model.made_from, model.made_to),
  )
}

/** The months that plate and serial leave open, whatever the catalogue says of the model. */
function listCalendar(catalogue: Catalogue, model: Row<'models.csv'>, question: Question): string[] {
  const read = question.made ?? readSerial(catalogue, model.brand, question.serial ?? '')
  const first = monthCount('2000-01')
  const months = Array.from({ length: monthCount('2026-11') - first + 1 }, (_, index) =>
    monthText(first + index),
  )
  return months.filter(month => month.startsWith(read))
}

function readSerial(catalogue: Catalogue, brand: string, serial: string): string {
  const code = catalogue['date_codes.csv'].find(
    row => row.brand === brand && row.means === 'year=2-digit;week=2-digit',
  )
  const groups = code === undefined ? undefined : new RegExp(code.pattern, 'u').exec(serial)?.groups
  if (groups === undefined) return ''
  // The Thursday of an ISO 8601 week lies in the week's own year; 4 January is always in week 1.
  return dayAfter(`20${groups.year}-01-04`, (Number(groups.week) - 1) * 7).slice(0, 7)
}
