import { useState } from 'react'
import type { ListedModel, ModelPage } from '../../shared-schemas/model-list.ts'
import { writeModels } from './models-csv.ts'
import { usePages } from './use-pages.ts'
import { wordCount } from './word-models.ts'

export type AskModels = (asked: {
  readonly words: string
  readonly from: number
  readonly most: number
}) => Promise<ModelPage>

/** A list of models that words narrow, and what the words leave as CSV on the clipboard. */
export function useModelList(name: readonly unknown[], askModels: AskModels) {
  const [words, setWords] = useState('')
  const wanted = words.trim()
  const pages = usePages({
    name: [...name, wanted],
    // With the words that it answers, since it stays until the next words are answered.
    askPage: async (from, most) => ({ ...(await askModels({ words: wanted, from, most })), words: wanted }),
    rowsOf: page => page.models,
  })
  const [said, setSaid] = useState({ of: wanted, words: '' })
  const copy = async () => setSaid({ of: wanted, words: await copyModels(askModels, wanted) })
  return { words, setWords, pages, copy, copied: said.of === wanted ? said.words : '' }
}

export type ModelList = ReturnType<typeof useModelList>

async function copyModels(askModels: AskModels, words: string): Promise<string> {
  try {
    const models = await listAll(askModels, words)
    if (models === 'too-many')
      return `More than ${wordCount(mostCopied)} are too much for the clipboard. Narrow the list first.`
    await navigator.clipboard.writeText(writeModels(models))
    return `Copied ${wordCount(models.length)}. They are on the clipboard.`
  } catch (thrown) {
    return thrown instanceof DOMException
      ? 'The clipboard was refused. Allow it for this page, then copy again.'
      : String((thrown as Error).message)
  }
}

async function listAll(askModels: AskModels, words: string): Promise<ListedModel[] | 'too-many'> {
  const models: ListedModel[] = []
  for (;;) {
    const page = await askModels({ words, from: models.length, most: copiedAtOnce })
    if (page.matching > mostCopied) return 'too-many'
    models.push(...page.models)
    if (models.length >= page.matching || page.models.length === 0) return models
  }
}

/** A few megabytes of text; spreadsheets take rather more rows than this. */
const mostCopied = 100_000
const copiedAtOnce = 10_000
