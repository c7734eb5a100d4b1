import { useMutation } from '@tanstack/react-query'
import type { SheetLine } from '../../shared-schemas/order-sheets.ts'
import { ask } from '../bridge/client.ts'
import { ReasonForm } from './reason-form.tsx'
import type { GoodsIn } from './use-goods-in.ts'

interface CloseLineProps {
  readonly goods: GoodsIn
  readonly number: string
  readonly line: SheetLine
}

/** What is still due of a line will not come after all; or what was closed is expected again. */
export function CloseLine({ goods, number, line: { line, toCome, closed } }: CloseLineProps) {
  const close = useMutation({
    mutationFn: async ({ reason, way }: { readonly reason: string; readonly way: 'close' | 'again' }) => {
      const asked = { number, line, reason, ...goods.signed }
      await (way === 'close' ? ask('goods-in.close-line', asked) : ask('goods-in.expect-again', asked))
      await goods.refresh()
    },
    networkMode: 'always',
  })
  const shared = { about: `line ${line}`, problem: close.error, isBusy: close.isPending }
  return (
    <>
      {toCome > 0 && (
        <ReasonForm
          key={`close ${toCome}`}
          {...shared}
          name="Will not come"
          asks={`Why will the ${toCome} due not come?`}
          onReason={reason => close.mutate({ reason, way: 'close' })}
        />
      )}
      {closed > 0 && (
        <ReasonForm
          key={`again ${closed}`}
          {...shared}
          name="Expect again"
          asks={`Why are the ${closed} closed expected again?`}
          onReason={reason => close.mutate({ reason, way: 'again' })}
        />
      )}
    </>
  )
}
