import type { ModelPage } from '../../shared-schemas/model-list.ts'

/** How many the words leave: `149 of 6,100 models match “12”, of 2 brands.` */
export function wordModels({ count, matching, brands }: ModelPage, words: string): string {
  if (matching === 0) return `None of ${wordCount(count)} matches “${words}”. Type less of it.`
  const of = brands.length > 1 ? `, of ${brands.length} brands` : `, of ${brands[0]?.brand ?? 'one brand'}`
  return `${figure.format(matching)} of ${wordCount(count)} ${matching === 1 ? 'matches' : 'match'} “${words}”${of}.`
}

/** `1 model`, `6,100 models`. */
export function wordCount(models: number): string {
  return `${figure.format(models)} ${models === 1 ? 'model' : 'models'}`
}

const figure = new Intl.NumberFormat('en')
