import type { RefObject } from 'react'
import type { Remedy, WeighedFaults } from '../../shared-schemas/fault-finding.ts'
import { endWords, nameRemedy, wordEnd, wordLicensed, wordShare } from '../../shared-schemas/word-faults.ts'
import { KeyHint } from '../components/key-hint.tsx'
import { ProblemNote } from '../components/problem-note.tsx'
import { KeepForJob } from './keep-for-job.tsx'
import type { Faults } from './use-faults.ts'
import { familiesOf, useWorth } from './use-worth.ts'
import { WorthOrdering } from './worth-ordering.tsx'

interface EndingProps {
  readonly faults: Faults
  readonly weighed: WeighedFaults
  readonly heading: RefObject<HTMLHeadingElement | null>
}

/** What it comes to: a part that is worth ordering and what to test first, or that none is needed. */
export function Ending({ faults: { enquiry, step }, weighed, heading }: EndingProps) {
  const { end, settledOn, remedies, checks } = weighed
  const shown = remedies.slice(0, end === 'settled' ? settledOn : mostNamed)
  const worth = useWorth(enquiry.appliance, shown)
  const [first] = settledOn === 0 ? [] : shown
  const needed = first && familiesOf(first, worth.families ?? [])[0]?.family
  return (
    <section className="ending" aria-labelledby="ending">
      <h2 id="ending" className="ending__sentence" ref={heading} tabIndex={-1}>
        {wordEnd(weighed)}
      </h2>
      {end === 'cannot-tell' && <p>What is likeliest, none of it likely enough:</p>}
      {settledOn === 2 && <p>It is one of these two, and no check that is left tells them apart.</p>}
      {shown.map(remedy => (
        <RemedyPart key={remedy.remedy} remedy={remedy} appliance={enquiry.appliance} worth={worth} />
      ))}
      {worth.error !== null && (
        <ProblemNote
          problem={worth.error}
          kept="What was found so far is kept."
          onRetry={() => void worth.refetch()}
        />
      )}
      <p className="stock-acts">
        {checks.length > 0 && (
          <button type="button" className="plain-button" onClick={() => step({ do: 'go-on' })}>
            Go on checking, to be surer
          </button>
        )}
        <button type="button" className="plain-button" aria-keyshortcuts="F8" onClick={() => window.print()}>
          Print the check sheet <KeyHint>F8</KeyHint>
        </button>
      </p>
      <KeepForJob enquiry={enquiry} weighed={weighed} family={needed} />
    </section>
  )
}

const mostNamed = 2

interface RemedyPartProps {
  readonly remedy: Remedy
  readonly appliance: Faults['enquiry']['appliance']
  readonly worth: ReturnType<typeof useWorth>
}

function RemedyPart({ remedy, appliance, worth }: RemedyPartProps) {
  const { endsIn, licensedFor, causes, advice, probability } = remedy
  if (endsIn === 'licensed')
    return (
      <article className="remedy remedy--licensed">
        <p className="asked-sentence">{wordLicensed(licensedFor)}</p>
        <p>
          Likely: {causes.join('; ')} ({wordShare(probability)}). No steps are given for it here.
        </p>
      </article>
    )
  return (
    <article className="remedy">
      <h3 className="remedy__name">{nameRemedy(remedy)}</h3>
      <p>
        {wordShare(probability)}, {endWords[endsIn]}
        {endsIn === 'part' && `: ${causes.join('; ')}`}.
      </p>
      {advice.length > 0 && (
        <>
          <h4 className="remedy__before">{endsIn === 'part' ? 'Test first' : 'What to do'}</h4>
          <ul className="remedy__advice">
            {advice.map(line => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </>
      )}
      {endsIn === 'part' && <WorthOrdering remedy={remedy} appliance={appliance} families={worth.families} />}
    </article>
  )
}
