import { v7 as newId } from 'uuid'
import { openApplication } from '../../../electron/application.ts'
import type { Output } from '../../../shared-schemas/index.ts'
import type { Reply } from '../../../shared-schemas/request.ts'

/** A program of its own that records one movement after the other, and says each id once it was acknowledged. */
const [databaseFile = ''] = process.argv.slice(2)
const application = openApplication({
  databaseFile,
  sampleFolder: null,
  now: () => new Date(),
  newId: () => newId(),
  device: 'killed-counter',
  logDefect: (_reference, _request, defect) => {
    throw defect
  },
})
await application.opened
process.send?.({ ready: true })
for (let number = 0; ; number++) {
  const [from, to] = number % 2 === 0 ? ['supplier', 'shop'] : ['shop', 'van-1']
  const reply = (await application.ask('stock-ledger.record-movement', {
    ...{ part: '480121', quantity: 1, from, to, reason: `number ${number}` },
  })) as Reply<Output<'stock-ledger.record-movement'>>
  if (!reply.ok) throw new Error(`a movement was refused: ${JSON.stringify(reply.problem)}`)
  process.send?.({ acknowledged: reply.value.movement.movementId })
}
