import { useQuery, useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import { type BuyerDetails, buyerDetails } from '../../shared-schemas/order-sheets.ts'
import { ask } from '../bridge/client.ts'
import { KeptField, KeptForm } from './kept-form.tsx'

/** Who orders, as the sheets and files name it. */
export function BuyerForm() {
  const queries = useQueryClient()
  const [changed, setChanged] = useState<Partial<BuyerDetails>>({})
  const read = useQuery({ queryKey, queryFn: () => ask('order-sheets.read-buyer', {}) })
  if (read.data === undefined) return read.error === null ? null : <p role="alert">{read.error.message}</p>
  const { buyer, isSaved } = read.data
  const shown = { ...buyer, ...changed }
  return (
    <>
      {!isSaved && <p className="quiet">Nobody has said yet who orders: the sheets name the shop alone.</p>}
      <KeptForm
        label="Who orders"
        fault={findFault(shown)}
        isChanged={Object.keys(changed).length > 0}
        onKeep={async () => {
          const saved = await ask('order-sheets.save-buyer', { buyer: shown })
          queries.setQueryData(queryKey, { ...saved, isSaved: true })
          setChanged({})
        }}
      >
        {fields.map(([field, label, longest]) => (
          <KeptField
            key={field}
            label={label}
            longest={longest}
            isShort={longest <= 20}
            value={shown[field]}
            onChange={value => setChanged(before => ({ ...before, [field]: value }))}
          />
        ))}
      </KeptForm>
    </>
  )
}

const queryKey = ['order-sheets.read-buyer']

const fields: readonly (readonly [field: keyof BuyerDetails, label: string, longest: number])[] = [
  ['name', 'Name', 100],
  ['street', 'Street', 100],
  ['town', 'Town', 60],
  ['postcode', 'Postcode', 20],
  ['country', 'Country', 2],
  ['telephone', 'Telephone', 40],
  ['email', 'E-mail', 100],
]

function findFault(buyer: BuyerDetails): string | undefined {
  if (buyer.name.trim() === '') return 'Write the name that orders.'
  return buyerDetails.safeParse(buyer).success
    ? undefined
    : 'Write the country as two capital letters, as GB, or leave it empty.'
}
