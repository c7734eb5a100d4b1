/** Changes of the program that no test can tell, and why none could. */
export interface ExplainedSurvivor {
  readonly file: string
  /** The line in which the change begins, and the text that is changed; runs of white space as one space. */
  readonly text: string
  readonly original: string
  readonly becomes: readonly string[]
  readonly why: string
}

export const explainedSurvivors: readonly ExplainedSurvivor[] = [
  {
    file: 'electron/catalogue/compare-serials.ts',
    text: "return [...serial].map(character => (/\\d/.test(character) ? 'D' : 'L')).join('')",
    original: '/\\d/',
    becomes: ['/\\D/'],
    why: 'Forms are only compared with each other, however their characters are named and joined.',
  },
  {
    file: 'electron/catalogue/compare-serials.ts',
    text: "return [...serial].map(character => (/\\d/.test(character) ? 'D' : 'L')).join('')",
    original: "''",
    becomes: ['"Stryker was here!"'],
    why: 'Forms are only compared with each other, however their characters are named and joined.',
  },
  {
    file: 'electron/catalogue/date-code-meaning.ts',
    text: "const [, first = '', number, skipped = ''] = letters",
    original: "''",
    becomes: ['"Stryker was here!"'],
    why: 'The pattern always has this group; what stands for a missing one is never used.',
  },
  {
    file: 'electron/catalogue/date-code-meaning.ts',
    text: "numbers: new Map(pairs.map(([, shown = '', year]) => [shown.toUpperCase(), Number(year)])),",
    original: "''",
    becomes: ['"Stryker was here!"'],
    why: 'The pattern always has this group; what stands for a missing one is never used.',
  },
  {
    file: 'electron/catalogue/measured-values.ts',
    text: 'if (factor === undefined) return undefined',
    original: 'factor === undefined',
    becomes: ['false'],
    why: 'Without a factor neither end is a number, and the comparison of the ends refuses them.',
  },
  {
    file: 'electron/catalogue/measured-values.ts',
    text: 'return anyCase === undefined ? { base: unit.toLowerCase(), power: 0 } : splitUnit(anyCase)',
    original: 'unit.toLowerCase()',
    becomes: ['unit.toUpperCase()'],
    why: 'Units are only compared with each other, both written alike.',
  },
  {
    file: 'electron/fit-check/compare-attributes.ts',
    text: "if (offered.kind !== 'words' || wanted.kind !== 'words') return 'unknown'",
    original: "'unknown'",
    becomes: ['""'],
    why: 'Both are read in one unit, so both are words or both are numbers; the types cannot say so.',
  },
  {
    file: 'electron/fit-check/compare-attributes.ts',
    text: "if (offered.kind === 'words' || wanted.kind === 'words') return compareWords(rule, offered, wanted)",
    original: "offered.kind === 'words' || wanted.kind === 'words'",
    becomes: ["offered.kind === 'words' && wanted.kind === 'words'"],
    why: 'Both are read in one unit, so both are words or both are numbers; the types cannot say so.',
  },
  {
    file: 'electron/fit-check/compare-attributes.ts',
    text: "if (offered.kind === 'words' || wanted.kind === 'words') return compareWords(rule, offered, wanted)",
    original: "offered.kind === 'words'",
    becomes: ['false'],
    why: 'Both are read in one unit, so both are words or both are numbers; the types cannot say so.',
  },
  {
    file: 'electron/fit-check/compare-attributes.ts',
    text: "if (offered.kind === 'words' || wanted.kind === 'words') return compareWords(rule, offered, wanted)",
    original: "'words'",
    becomes: ['""'],
    why: 'Both are read in one unit, so both are words or both are numbers; the types cannot say so.',
  },
  {
    file: 'electron/fit-check/compare-attributes.ts',
    text: "if (offered.kind === 'words' || wanted.kind === 'words') return compareWords(rule, offered, wanted)",
    original: "wanted.kind === 'words'",
    becomes: ['false'],
    why: 'Both are read in one unit, so both are words or both are numbers; the types cannot say so.',
  },
  {
    file: 'electron/fit-check/compare-attributes.ts',
    text: "if (offered.kind !== 'words' || wanted.kind !== 'words') return 'unknown'",
    original: "offered.kind !== 'words' || wanted.kind !== 'words'",
    becomes: ['false', "offered.kind !== 'words' && wanted.kind !== 'words'"],
    why: 'Both are read in one unit, so both are words or both are numbers; the types cannot say so.',
  },
  {
    file: 'electron/fit-check/compare-attributes.ts',
    text: "if (offered.kind !== 'words' || wanted.kind !== 'words') return 'unknown'",
    original: "offered.kind !== 'words'",
    becomes: ['false'],
    why: 'Both are read in one unit, so both are words or both are numbers; the types cannot say so.',
  },
  {
    file: 'electron/fit-check/compare-attributes.ts',
    text: "if (offered.kind !== 'words' || wanted.kind !== 'words') return 'unknown'",
    original: "wanted.kind !== 'words'",
    becomes: ['false'],
    why: 'Both are read in one unit, so both are words or both are numbers; the types cannot say so.',
  },
  {
    file: 'electron/fit-check/compare-attributes.ts',
    text: "return found === null ? undefined : { series: found[1] ?? '', number: Number(found[2]) }",
    original: "''",
    becomes: ['"Stryker was here!"'],
    why: 'The pattern always has this group; what stands for a missing one is never used.',
  },
  {
    file: 'electron/fit-check/compare-attributes.ts',
    text: 'return Math.abs(one - other) <= roundingError * Math.max(Math.abs(one), Math.abs(other))',
    original: 'Math.max(Math.abs(one), Math.abs(other))',
    becomes: ['Math.min(Math.abs(one), Math.abs(other))'],
    why: 'Of two numbers as near as this, the smaller leaves the same room as the larger, to its billionth part.',
  },
  {
    file: 'electron/fit-check/compare-attributes.ts',
    text: 'return one <= other || near(one, other)',
    original: 'one <= other',
    becomes: ['one < other'],
    why: 'Equal numbers are near each other, which is asked next.',
  },
  {
    file: 'electron/fit-check/confirm-model.ts',
    text: 'while (start < typed.length && typed[start] === catalogue[start]) start += 1',
    original: 'start < typed.length',
    becomes: ['start <= typed.length'],
    why: 'Only two equal numbers get so far, and of those no position differs.',
  },
  {
    file: 'electron/fit-check/read-date-code.ts',
    text: "readGroup(groups[group] ?? '', meanings.get(group) ?? figures, group)",
    original: "''",
    becomes: ['"Stryker was here!"'],
    why: 'A group that is not there stands for nothing, as does any text without figures.',
  },
  {
    file: 'electron/fit-check/rule-out-models.ts',
    text: "if (one.kind === 'words' || other.kind === 'words') {",
    original: "one.kind === 'words' || other.kind === 'words'",
    becomes: ["one.kind === 'words' && other.kind === 'words'"],
    why: 'Both are read in one unit, so both are words or both are numbers; the types cannot say so.',
  },
  {
    file: 'electron/fit-check/rule-out-models.ts',
    text: "if (one.kind === 'words' || other.kind === 'words') {",
    original: "one.kind === 'words'",
    becomes: ['false'],
    why: 'Both are read in one unit, so both are words or both are numbers; the types cannot say so.',
  },
  {
    file: 'electron/fit-check/rule-out-models.ts',
    text: "if (one.kind === 'words' || other.kind === 'words') {",
    original: "'words'",
    becomes: ['""'],
    why: 'Both are read in one unit, so both are words or both are numbers; the types cannot say so.',
  },
  {
    file: 'electron/fit-check/rule-out-models.ts',
    text: "if (one.kind === 'words' || other.kind === 'words') {",
    original: "other.kind === 'words'",
    becomes: ['false'],
    why: 'Both are read in one unit, so both are words or both are numbers; the types cannot say so.',
  },
  {
    file: 'electron/fit-check/rule-out-models.ts',
    text: "return one.kind === 'words' && other.kind === 'words' && one.words !== other.words",
    original: "one.kind === 'words' && other.kind === 'words'",
    becomes: ['true', "one.kind === 'words' || other.kind === 'words'"],
    why: 'Both are read in one unit, so both are words or both are numbers; the types cannot say so.',
  },
  {
    file: 'electron/fit-check/rule-out-models.ts',
    text: "return one.kind === 'words' && other.kind === 'words' && one.words !== other.words",
    original: "one.kind === 'words'",
    becomes: ['true'],
    why: 'Both are read in one unit, so both are words or both are numbers; the types cannot say so.',
  },
  {
    file: 'electron/fit-check/rule-out-models.ts',
    text: "return one.kind === 'words' && other.kind === 'words' && one.words !== other.words",
    original: "other.kind === 'words'",
    becomes: ['true'],
    why: 'Both are read in one unit, so both are words or both are numbers; the types cannot say so.',
  },
]
