import { useMemo, useReducer } from 'react'
import { choosePlateQuestion } from './choose-plate-question.ts'
import { emptyEnquiry, takeStep } from './counter-enquiry.ts'
import { fillAskedCells } from './fill-asked-cells.ts'
import { decidedModel } from './model-region.tsx'
import { drawPlateCells } from './plate-cells.ts'
import { slipOfAnswers } from './slip-of-answers.ts'
import { useCounterAnswers } from './use-counter-answers.ts'

/** The enquiry at the counter, what was answered to it, and what follows from both for the plate and the slip. */
export function useCounter() {
  const [enquiry, step] = useReducer(takeStep, emptyEnquiry)
  const answers = useCounterAnswers(enquiry)
  const isTyped = enquiry.text.trim() !== ''
  const found = isTyped ? answers.found.data : undefined
  const list =
    found !== undefined && found.openModels > 0 && !answers.isTooWide ? answers.fitting.data : undefined
  const families = list?.families
  const openFamily = families?.find(({ family }) => family === enquiry.openFamily)
  const part = isTyped ? answers.verdict : undefined
  const question = useMemo(
    () => choosePlateQuestion({ families: families ?? [], openFamily, part }),
    [families, openFamily, part],
  )
  const pointedAt = enquiry.pointedAt ?? (found && decidedModel(found, enquiry)) ?? null
  const cells = useMemo(
    () =>
      drawPlateCells({
        typed: enquiry.text,
        found: found ?? null,
        pointedAt,
        asked: question?.readings.flatMap(({ positions = [] }) => positions) ?? [],
      }),
    [enquiry.text, found, pointedAt, question],
  )
  const shop = answers.summary.data?.locations.find(({ kind }) => kind === 'shop')?.name ?? 'Tallyplate'
  const slip = answers.isListStale
    ? null
    : slipOfAnswers({ shop, enquiry, found, openModels: list?.models ?? 0, openFamily, part })
  return {
    enquiry,
    step,
    answers,
    found,
    list,
    openFamily,
    part,
    question,
    cells,
    shop,
    slip,
    fill: (value: string) => {
      const text = fillAskedCells(cells, value)
      return text === undefined ? undefined : () => step({ do: 'type-plate', text })
    },
  }
}

export type Counter = ReturnType<typeof useCounter>
