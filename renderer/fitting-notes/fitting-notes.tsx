import { useQuery } from '@tanstack/react-query'
import { ask } from '../bridge/client.ts'

/**
 * What to mind of parts of these families, in the order of the work, with a box to tick; the same note once. Nothing
 * where the guide says nothing of them.
 */
export function FittingNotes({ families }: { readonly families: readonly string[] }) {
  const { data } = useQuery({
    queryKey: ['fault-guide.list-fitting-notes', families],
    queryFn: () => ask('fault-guide.list-fitting-notes', { families: [...families] }),
    enabled: families.length > 0,
  })
  const notes = (data?.families ?? []).flatMap(family => family.notes)
  const stages = stageWords.map(({ stage, words }) => ({
    words,
    notes: [...new Set(notes.filter(one => one.stage === stage).map(({ note }) => note))],
  }))
  if (notes.length === 0) return null
  return (
    <>
      <h3>Taking out, fitting and testing</h3>
      <p className="quiet">Common practice. What the maker says goes before it.</p>
      {stages
        .filter(({ notes: ofStage }) => ofStage.length > 0)
        .map(({ words, notes: ofStage }) => (
          <section key={words} className="fitting-notes">
            <h4>{words}</h4>
            <ul>
              {ofStage.map(note => (
                <li key={note}>{note}</li>
              ))}
            </ul>
          </section>
        ))}
    </>
  )
}

const stageWords = [
  { stage: 'before', words: 'Before it comes out' },
  { stage: 'fitting', words: 'As it goes in' },
  { stage: 'test', words: 'Before you leave' },
] as const
