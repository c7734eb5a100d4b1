import { useQuery, useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import { type OrderingLayout, orderingLayout } from '../../shared-schemas/order-sheets.ts'
import { ask } from '../bridge/client.ts'
import { type LaidColumn, layColumns } from './change-columns.ts'
import { KeptChoice, KeptField, KeptForm } from './kept-form.tsx'
import { OrderColumns } from './order-columns.tsx'

/** How a supplier wants its orders: under which account, and the signs, dates and columns of its file. */
export function SupplierOrderingForm() {
  const [chosen, setChosen] = useState<string>()
  const listed = useQuery({
    queryKey: ['order-check.list-suppliers'],
    queryFn: () => ask('order-check.list-suppliers', {}),
  })
  const suppliers = listed.data?.suppliers ?? []
  const supplier = chosen ?? suppliers[0]?.supplier
  const read = useQuery({
    queryKey: ['order-sheets.read-ordering', supplier],
    queryFn: () => ask('order-sheets.read-ordering', { supplier: supplier ?? '' }),
    enabled: supplier !== undefined,
  })
  const problem = listed.error ?? read.error
  if (problem !== null) return <p role="alert">{problem.message}</p>
  if (supplier === undefined)
    return listed.data === undefined ? null : <p>There is no supplier yet. Load its list first (Alt+L).</p>
  return (
    <>
      <div className="stock-form">
        <KeptChoice
          label="Supplier"
          value={supplier}
          words={Object.fromEntries(suppliers.map(each => [each.supplier, each.name || each.supplier]))}
          onChange={setChosen}
        />
      </div>
      {read.data !== undefined && (
        <OrderingFields key={supplier} supplier={supplier} kept={read.data.ordering} />
      )}
    </>
  )
}

interface OrderingFieldsProps {
  readonly supplier: string
  readonly kept: OrderingLayout
}

interface TypedOrdering extends Omit<OrderingLayout, 'columns'> {
  readonly columns: readonly LaidColumn[]
}

function OrderingFields({ supplier, kept }: OrderingFieldsProps) {
  const queries = useQueryClient()
  const [typed, setTyped] = useState<TypedOrdering>()
  const shown = typed ?? { ...kept, columns: layColumns(kept.columns) }
  const change = (changed: Partial<TypedOrdering>) => setTyped({ ...shown, ...changed })
  const ordering = { ...shown, columns: shown.columns.map(({ heading, holds }) => ({ heading, holds })) }
  return (
    <KeptForm
      label={`How ${supplier} wants its orders`}
      fault={findFault(ordering)}
      isChanged={typed !== undefined}
      onKeep={async () => {
        const saved = await ask('order-sheets.save-ordering', { supplier, ordering })
        queries.setQueryData(['order-sheets.read-ordering', supplier], saved)
        setTyped(undefined)
      }}
    >
      <KeptField
        label="Our account with it"
        longest={60}
        value={shown.account}
        onChange={account => change({ account })}
      />
      <KeptChoice
        label="Between columns"
        value={shown.separator}
        words={separators}
        onChange={separator => change({ separator })}
      />
      <KeptChoice
        label="Decimal sign"
        value={shown.decimalSign}
        words={decimalSigns}
        onChange={decimalSign => change({ decimalSign })}
      />
      <KeptChoice
        label="Dates"
        value={shown.dateOrder}
        words={dateOrders}
        onChange={dateOrder => change({ dateOrder })}
      />
      <OrderColumns columns={shown.columns} onChange={columns => change({ columns })} />
    </KeptForm>
  )
}

const separators = { ',': 'comma', ';': 'semicolon', '\t': 'tab', '|': 'upright stroke' } as const
const decimalSigns = { '.': 'point, as 12.50', ',': 'comma, as 12,50' } as const
const dateOrders = { ymd: 'year, month, day', dmy: 'day, month, year', mdy: 'month, day, year' } as const

function findFault(ordering: OrderingLayout): string | undefined {
  const issue = orderingLayout.safeParse(ordering).error?.issues[0]
  return issue === undefined ? undefined : `It cannot be kept yet: ${issue.message}.`
}
