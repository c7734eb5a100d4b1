import { type KeyboardEvent, useEffect, useRef } from 'react'
import type { ApplianceQuestion } from '../../shared-schemas/plate-reading.ts'
import { focusAndSelect } from '../components/focus-and-select.ts'
import { KeyHint } from '../components/key-hint.tsx'
import { ProblemNote } from '../components/problem-note.tsx'
import { type NamedScreen, TopLine } from '../components/top-line.tsx'
import { useHanded, useHandOn } from '../hand-over.ts'
import { ScanLine } from '../scanning/scan-line.tsx'
import { CardFields } from './card-fields.tsx'
import { CardRegion } from './card-region.tsx'
import { CopySlip } from './copy-slip.tsx'
import { questionOf } from './counter-enquiry.ts'
import { EmptyCard } from './empty-card.tsx'
import { decideEnter } from './enter-on-plate.ts'
import { optionId } from './model-list.tsx'
import { decidedModel, ModelRegion, modelListId } from './model-region.tsx'
import { nextCandidate } from './next-candidate.ts'
import { PartAlone } from './part-alone.tsx'
import { Plate } from './plate.tsx'
import { PlateFields } from './plate-fields.tsx'
import { isTooShort, PlateLine } from './plate-line.tsx'
import { PlateNumber } from './plate-number.tsx'
import { useAnnouncement } from './use-announcement.ts'
import { useCopySlip } from './use-copy-slip.ts'
import { type Counter, useCounter } from './use-counter.ts'
import { useCounterKeys } from './use-counter-keys.ts'
import { type PlateScan, useCounterScans } from './use-counter-scans.ts'
import { useEarlyEnter } from './use-early-enter.ts'
import { wordAnnouncement } from './word-announcement.ts'

/** The Counter: the plate on the left, what it means and what fits on the right. */
export function CounterScreen({ screens }: { readonly screens: readonly NamedScreen[] }) {
  const counter = useCounter()
  const plateField = useRef<HTMLInputElement>(null)
  const partField = useRef<HTMLInputElement>(null)
  const filterField = useRef<HTMLInputElement>(null)
  const { outcome, copy } = useCopySlip(counter.slip)
  const onCopySlip = () => void copy()
  const handOn = useHandOn()
  const onFindFault = () => handOn({ to: 'Faults', appliance: applianceInHand(counter) })
  useCounterKeys({ plateField, partField, onCopySlip, onFindFault })
  useHanded('Counter', ({ part }) => counter.step({ do: 'type-part', part }))
  useEffect(() => focusAndSelect(plateField.current), [])
  const { note, take, plateScan } = useCounterScans(counter)
  const announcement = useAnnouncement(wordAnnouncement(counter))
  const { enquiry, found, step } = counter

  return (
    <div className="counter">
      <TopLine screens={screens} shop={counter.shop} />
      <main className="counter__bench">
        <h1 className="unseen">Counter</h1>
        <div className="counter__plate">
          <PlateRegion
            counter={counter}
            plateField={plateField}
            onEnter={() => filterField.current?.focus()}
            plateScan={plateScan}
          />
          {found !== undefined && <FindFault onFindFault={onFindFault} />}
          {note !== null && <ScanLine note={note} onAttached={take} />}
        </div>
        <div className="counter__card">
          {found !== undefined && <ModelRegion found={found} enquiry={enquiry} onStep={step} />}
          <FindProblem counter={counter} />
          <CardFields enquiry={enquiry} filterField={filterField} partField={partField} onStep={step} />
          {enquiry.text.trim() === '' ? (
            <NothingTyped counter={counter} />
          ) : (
            <CardRegion counter={counter} filterField={filterField} />
          )}
        </div>
        <CopySlip slip={counter.slip} outcome={outcome} onCopy={onCopySlip} />
        <p className="unseen" role="status">
          {announcement}
        </p>
      </main>
    </div>
  )
}

/** The model once it is decided, else the number as it was read, with every reading. */
function applianceInHand({ enquiry, found }: Counter): ApplianceQuestion {
  const model = found && decidedModel(found, enquiry)
  return questionOf(model === undefined ? enquiry : { ...enquiry, taken: model })
}

function FindFault({ onFindFault }: { readonly onFindFault: () => void }) {
  return (
    <p>
      <button type="button" className="plain-button" aria-keyshortcuts="Alt+W" onClick={onFindFault}>
        What is wrong with it? <KeyHint>Alt+W</KeyHint>
      </button>
    </p>
  )
}

function NothingTyped({ counter: { enquiry, answers } }: { readonly counter: Counter }) {
  return enquiry.part.trim() === '' ? (
    <EmptyCard summary={answers.summary.data} />
  ) : (
    <div className="card">
      <PartAlone part={enquiry.part} />
    </div>
  )
}

function FindProblem({ counter: { answers } }: { readonly counter: Counter }) {
  const { error, refetch } = answers.found
  if (error === null || isTooShort(error)) return null
  return <ProblemNote problem={error} kept="What you typed is kept." onRetry={() => void refetch()} />
}

interface PlateRegionProps {
  readonly counter: Counter
  readonly plateField: React.RefObject<HTMLInputElement | null>
  readonly onEnter: () => void
  /** A number that was scanned off a plate: it is answered as if Enter had been pressed after it. */
  readonly plateScan: PlateScan | null
}

function PlateRegion({ counter, plateField, onEnter, plateScan }: PlateRegionProps) {
  const { enquiry, found, step, question, cells, answers } = counter
  const asked = new Set(question?.readings.map(({ reading }) => reading))
  const isListShown = found !== undefined && found.candidates.length > 0 && !decidedModel(found, enquiry)
  const { pointedAt } = enquiry

  const isAnswered = found !== undefined && !answers.found.isPlaceholderData
  const act = () => {
    const means = decideEnter(found, enquiry)
    if (means.do === 'point-at' || means.do === 'take') step(means)
    if (means.do === 'go-to-card' || means.do === 'take') onEnter()
  }
  const keepEnter = useEarlyEnter(enquiry.text, isAnswered, act)
  const acted = useRef(plateScan)
  useEffect(() => {
    if (plateScan === null || acted.current === plateScan || enquiry.text !== plateScan.text) return
    acted.current = plateScan
    if (isAnswered) act()
    else keepEnter(plateScan.text)
  })

  const onKeyDown = (event: KeyboardEvent) => {
    if (event.nativeEvent.isComposing) return
    if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
      const model = nextCandidate(found?.candidates ?? [], pointedAt, event.key)
      if (model === undefined) return
      event.preventDefault()
      step({ do: 'point-at', model, isConfirming: false })
    }
    if (event.key === 'Enter') {
      event.preventDefault()
      if (isAnswered) act()
      else keepEnter(enquiry.text)
    }
  }

  return (
    <Plate
      brand={enquiry.brand}
      brands={answers.summary.data?.brands ?? []}
      decided={found && decidedModel(found, enquiry)}
      isBrandAsked={asked.has('brand')}
      onBrand={brand => step({ do: 'choose-brand', brand })}
      number={
        <PlateNumber
          field={plateField}
          text={enquiry.text}
          cells={cells}
          onType={text => step({ do: 'type-plate', text })}
          onKeyDown={onKeyDown}
          listId={isListShown ? modelListId : undefined}
          activeOptionId={isListShown && pointedAt !== null ? optionId(modelListId, pointedAt) : undefined}
        />
      }
      line={
        <PlateLine
          enquiry={enquiry}
          found={found}
          isAnswered={counter.list !== undefined && !answers.isListStale}
          cells={cells}
          question={question}
          problem={answers.found.error}
          onStep={step}
          onFill={counter.fill}
        />
      }
      fields={<PlateFields enquiry={enquiry} asked={asked} onStep={step} />}
    />
  )
}
