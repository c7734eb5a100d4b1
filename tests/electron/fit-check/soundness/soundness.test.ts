import { expect, test } from 'vitest'
import { findFault } from './check-question.ts'
import { generateQuestion } from './generate-questions.ts'

const questions = 20_000

test(`${questions} generated questions: every verdict is proved, and nothing is asked in vain`, {
  timeout: 120_000,
}, () => {
  for (let seed = 1; seed <= questions; seed++) {
    const fault = findFault(generateQuestion(seed))
    expect(fault, `question ${seed}`).toBeUndefined()
  }
})
