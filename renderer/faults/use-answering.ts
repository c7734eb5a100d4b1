import { useMutation } from '@tanstack/react-query'
import type { CheckAnswer } from '../../shared-schemas/fault-finding.ts'
import { ask } from '../bridge/client.ts'
import { questionOf } from './fault-enquiry.ts'
import type { Faults } from './use-faults.ts'

/** Answering the check that stands. A reading is judged before it counts: one that cannot be read stays in its field. */
export function useAnswering({ enquiry, step, check, isCurrent }: Faults) {
  const judge = useMutation({
    networkMode: 'always',
    mutationFn: async (answer: CheckAnswer) => {
      if (enquiry.symptom === null) return answer
      await ask('fault-guide.weigh-faults', { ...questionOf(enquiry, enquiry.symptom), answers: [answer] })
      return answer
    },
    onSuccess: answer => step({ do: 'answer', answer }),
  })
  const answer = (given: CheckAnswer) => {
    judge.reset()
    step({ do: 'answer', answer: given })
  }
  // While the next check is on its way, the one that is still shown takes no further answer.
  const name = isCurrent ? check?.check : undefined
  return {
    problem: judge.error,
    onOutcome: (outcome: string) => name !== undefined && answer({ check: name, outcome }),
    onMeasured: (measured: string) => name !== undefined && judge.mutate({ check: name, measured }),
    onLeave: (left: 'skipped' | 'could-not-tell') => name !== undefined && answer({ check: name, left }),
  }
}

export type Answering = ReturnType<typeof useAnswering>
