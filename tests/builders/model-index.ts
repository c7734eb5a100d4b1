import { normaliseNumber } from '../../electron/catalogue/normalise-number.ts'
import { indexModels, type ModelIndex } from '../../electron/model-lookup/index-models.ts'

export interface ListedBrand {
  /** Model numbers as printed, or pairs with their kind of appliance. */
  readonly models?: readonly (string | readonly [modelNumber: string, applianceType: string])[]
  /** By sales name: the model numbers that it covers. */
  readonly salesNames?: Readonly<Record<string, readonly string[]>>
}

/** An index over these models alone, in the order in which the database would list them. */
export function anIndex(brands: Readonly<Record<string, ListedBrand>>): ModelIndex {
  const listed = Object.entries(brands).flatMap(([brand, { models = [] }]) =>
    models.map(model => {
      const [modelNumber, applianceType] = typeof model === 'string' ? [model, 'washer'] : model
      return { brand, modelNumber, applianceType, key: normaliseNumber(modelNumber) }
    }),
  )
  const models = listed.sort(byKey).map((model, at) => ({ ...model, modelId: at + 1 }))
  const salesNames = Object.entries(brands).flatMap(([brand, { salesNames: names = {} }]) =>
    Object.entries(names).flatMap(([salesName, covered]) =>
      models
        .filter(model => model.brand === brand && covered.includes(model.modelNumber))
        .map(({ modelId }) => ({ brand, salesName, key: normaliseNumber(salesName), modelId })),
    ),
  )
  return indexModels({
    catalogueVersion: 1,
    brands: Object.keys(brands),
    models,
    salesNames: salesNames.sort(byKey),
  })
}

function byKey(one: { readonly key: string }, other: { readonly key: string }): number {
  return one.key < other.key ? -1 : one.key > other.key ? 1 : 0
}
