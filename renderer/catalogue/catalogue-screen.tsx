import { useQuery } from '@tanstack/react-query'
import { useEffect, useRef, useState } from 'react'
import { ask } from '../bridge/client.ts'
import { focusAndSelect } from '../components/focus-and-select.ts'
import { ModelsByBrand } from '../components/models-by-brand.tsx'
import { type NamedScreen, TopLine } from '../components/top-line.tsx'
import { useModelList } from '../components/use-model-list.ts'
import { useScreenKeys } from '../components/use-screen-keys.ts'
import { wordCount } from '../components/word-models.ts'
import { FamilyFacts } from './family-facts.tsx'
import { FamilyList } from './family-list.tsx'

/** What the models on the right are of: a part or a family that was chosen, or the whole catalogue. */
interface Chosen {
  readonly family: string | null
  readonly part: string | null
}

/** The catalogue at any size: its families, the parts of one, and the models of either or of all. */
export function CatalogueScreen({ screens }: { readonly screens: readonly NamedScreen[] }) {
  const [chosen, setChosen] = useState<Chosen>({ family: null, part: null })
  const familyField = useRef<HTMLInputElement>(null)
  const summary = useQuery({
    queryKey: ['catalogue.read-summary'],
    queryFn: () => ask('catalogue.read-summary', {}),
    staleTime: Number.POSITIVE_INFINITY,
  })
  useScreenKeys({
    Escape: () => focusAndSelect(familyField.current),
    F6: () => setChosen({ family: null, part: null }),
  })
  useEffect(() => focusAndSelect(familyField.current), [])
  const shop = summary.data?.locations.find(({ kind }) => kind === 'shop')?.name ?? 'Tallyplate'
  return (
    <div className="counter">
      <TopLine screens={screens} shop={shop} />
      <main className="catalogue">
        <h1 className="unseen">Catalogue</h1>
        <FamilyList
          field={familyField}
          chosen={chosen.family}
          onChoose={family => setChosen({ family, part: null })}
        />
        <div className="catalogue__chosen">
          {chosen.family !== null && (
            <FamilyFacts
              family={chosen.family}
              part={chosen.part}
              onPart={part => setChosen({ ...chosen, part })}
              onWhole={() => setChosen({ family: null, part: null })}
            />
          )}
          <ChosenModels key={JSON.stringify(chosen)} chosen={chosen} />
        </div>
      </main>
    </div>
  )
}

function ChosenModels({ chosen }: { readonly chosen: Chosen }) {
  const field = useRef<HTMLInputElement>(null)
  const list = useModelList(['models of', chosen], asked => askModels(chosen, asked))
  useScreenKeys({ F2: () => focusAndSelect(field.current), F8: () => void list.copy() })
  return (
    <section aria-labelledby="catalogue-models">
      <h2 id="catalogue-models" className="catalogue__heading">
        {nameModels(chosen)}
      </h2>
      <ModelsByBrand list={list} filterField={field} sentence={({ count }) => wordWhole(chosen, count)} />
    </section>
  )
}

type Asked = Parameters<Parameters<typeof useModelList>[1]>[0]

function askModels({ family, part }: Chosen, asked: Asked) {
  if (part !== null) return ask('fit-check.list-fitted-models', { part, ...asked })
  return ask('catalogue.list-models', { ...(family === null ? {} : { family }), ...asked })
}

function nameModels({ family, part }: Chosen): string {
  if (part !== null) return `Models of ${part}`
  return family === null ? 'All models' : 'Models of the family'
}

function wordWhole({ family, part }: Chosen, count: number): string {
  if (part !== null)
    return count === 0 ? 'No model is on record for it.' : `It goes into ${wordCount(count)}.`
  if (family === null) return `The catalogue has ${wordCount(count)}.`
  if (count === 0) return 'No source lists it for any model.'
  return `It or one of its parts is listed for ${wordCount(count)}. That is no verdict yet: the Counter judges one model.`
}
