import { useQuery } from '@tanstack/react-query'
import { type KeyboardEvent, type RefObject, useEffect } from 'react'
import type { FitAnswer } from '../../shared-schemas/fit-check.ts'
import type { ApplianceQuestion } from '../../shared-schemas/plate-reading.ts'
import { ask } from '../bridge/client.ts'
import { Sheet } from './sheet.tsx'
import { useSheet } from './use-sheet.ts'
import { WhySheet } from './why-sheet.tsx'

interface RowWhyProps {
  readonly part: string
  readonly question: ApplianceQuestion
  readonly onClose: () => void
}

/** The whole reasoning of a part from the list: the same question as for a part in the hand, asked when it is opened. */
export function RowWhy({ part, question, onClose }: RowWhyProps) {
  const sheet = useSheet('F9')
  const { data, error } = useQuery({
    queryKey: ['fit-check.judge-fit', question, part],
    queryFn: () => ask('fit-check.judge-fit', { ...question, part }),
  })
  const isAnswered = data !== undefined || error !== null
  useEffect(() => {
    if (isAnswered && sheet.current?.open === false) sheet.current.showModal()
  }, [isAnswered, sheet])
  return <Answered sheet={sheet} part={part} answer={data} problem={error} onClose={onClose} />
}

interface AnsweredProps {
  readonly sheet: RefObject<HTMLDialogElement | null>
  readonly part: string
  readonly answer: FitAnswer | undefined
  readonly problem: Error | null
  readonly onClose: () => void
}

function Answered({ sheet, part, answer, problem, onClose }: AnsweredProps) {
  if (answer !== undefined) return <WhySheet sheet={sheet} answer={answer} onClose={onClose} />
  if (problem === null) return null
  return (
    <Sheet sheet={sheet} title={part} onToggle={isOpen => !isOpen && onClose()}>
      <p className="problem-note" role="alert">
        {problem.message}
      </p>
    </Sheet>
  )
}

/** Whether a row of the list has the focus, whose part F9 then speaks of. */
export function isRowSelected(): boolean {
  return partOfSelectedRow() !== null
}

function partOfSelectedRow(): string | null {
  return document.activeElement?.closest('[data-why-part]')?.getAttribute('data-why-part') ?? null
}

/** F9 on a row of the list asks for the reasoning of its part. */
export function askWhyOfRow(event: KeyboardEvent, onWhy: (part: string) => void): void {
  if (event.key !== 'F9' || event.altKey || event.ctrlKey || event.metaKey) return
  const part = partOfSelectedRow()
  if (part === null) return
  event.preventDefault()
  onWhy(part)
}
