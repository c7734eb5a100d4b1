import { useQuery } from '@tanstack/react-query'
import type { FamilyRead } from '../../shared-schemas/catalogue-lists.ts'
import { hazardWords, safetyDeviceWords } from '../../shared-schemas/hazard-words.ts'
import { ask } from '../bridge/client.ts'
import { CautionList } from '../components/caution-list.tsx'
import { KeyHint } from '../components/key-hint.tsx'
import { LongList } from '../components/long-list.tsx'
import { ProblemNote } from '../components/problem-note.tsx'

interface FamilyFactsProps {
  readonly family: string
  readonly part: string | null
  readonly onPart: (part: string | null) => void
  readonly onWhole: () => void
}

/** One family: what it is, what to mind, and its parts. A part that is chosen has its models shown. */
export function FamilyFacts({ family, part, onPart, onWhole }: FamilyFactsProps) {
  const { data, error, refetch } = useQuery({
    queryKey: ['catalogue.read-family', family],
    queryFn: () => ask('catalogue.read-family', { family }),
    placeholderData: before => before,
  })
  if (error !== null)
    return (
      <ProblemNote problem={error} kept="Nothing was changed by looking." onRetry={() => void refetch()} />
    )
  if (data === undefined) return null
  const { name, function: does, applianceTypes, parts } = data
  return (
    <section aria-labelledby="catalogue-family">
      <h2 id="catalogue-family" className="catalogue__title">
        {name}
      </h2>
      <p className="catalogue__about">
        {[data.family, does, applianceTypes.join(', ')].filter(Boolean).join(' · ')}{' '}
        <button type="button" className="plain-button" aria-keyshortcuts="F6" onClick={onWhole}>
          All models <KeyHint>F6</KeyHint>
        </button>
      </p>
      <CautionList cautions={cautionsOf(data)} />
      <h3 className="catalogue__heading">{parts.length === 1 ? '1 part' : `${parts.length} parts`}</h3>
      <LongList
        key={data.family}
        label="Parts"
        count={parts.length}
        rowPixels={44}
        row={at => {
          const row = parts[at]
          return row !== undefined && <PartRow row={row} chosen={part} onPart={onPart} />
        }}
      />
    </section>
  )
}

function cautionsOf({ hazards, safetyDevice }: FamilyRead) {
  const ofHazards = hazards.flatMap(hazard => {
    const text = hazardWords[hazard]
    return text === undefined ? [] : [{ code: hazard, text }]
  })
  return [...(safetyDevice ? [{ code: 'safety-device', text: safetyDeviceWords }] : []), ...ofHazards]
}

interface PartRowProps {
  readonly row: FamilyRead['parts'][number]
  readonly chosen: string | null
  readonly onPart: (part: string | null) => void
}

/** Pressed, it shows the part's models; pressed again, those of the family. */
function PartRow({ row: { partNumber, kind, maker, description }, chosen, onPart }: PartRowProps) {
  const isChosen = partNumber === chosen
  return (
    <p className="catalogue__part">
      <span className="number">{partNumber}</span>
      <span>
        {kind === 'genuine' ? 'Genuine' : 'Pattern'}
        {maker !== '' && `, ${maker}`}
      </span>
      <span className="quiet">{description}</span>
      <button
        type="button"
        className="plain-button"
        aria-pressed={isChosen}
        onClick={() => onPart(isChosen ? null : partNumber)}
      >
        {isChosen ? 'Shown below' : 'Its models'}
        <span className="unseen"> {partNumber}</span>
      </button>
    </p>
  )
}
