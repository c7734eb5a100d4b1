import { fitmentRow } from '../fitments/fitment-row.ts'
import { FitmentGatherer } from '../fitments/gather-fitments.ts'
import { openPlainFitments } from '../fitments/plain-fitment-lines.ts'
import { defineFile } from '../loading/catalogue-file.ts'

/**
 * A statement is its subject, conditions, position and source; of a model it says one thing. There may be twenty million
 * rows, so they are gathered and stored together.
 */
export const fitmentsFile = defineFile({
  name: 'fitments.csv',
  row: fitmentRow,
  neededColumns: ['says', 'brand', 'model_number', 'source'],
  open: run => {
    const gatherer = new FitmentGatherer(run)
    return {
      take: (fitment, line, cells) => gatherer.take(fitment, line, cells),
      takeRepeated: (cells, line) => gatherer.takeRepeated(cells, line),
      store: () => gatherer.store(),
      retireUnsaid: () => gatherer.retireUnsaid(),
      openPlain: (header, takeSlowly) => openPlainFitments({ run, gatherer, header, takeSlowly }),
    }
  },
})
