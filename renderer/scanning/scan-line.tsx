import { useMutation } from '@tanstack/react-query'
import { type FormEvent, useId, useRef, useState } from 'react'
import { AskProblem } from '../bridge/ask-problem.ts'
import { ask } from '../bridge/client.ts'
import { KeyHint } from '../components/key-hint.tsx'
import { useScreenKeys } from '../components/use-screen-keys.ts'
import type { ScanNote } from './use-scanned.ts'

interface ScanLineProps {
  readonly note: ScanNote | null
  /** Told when a code was attached, so that it is used at once as if it had been known. */
  readonly onAttached: (code: string) => void
}

/** What the last scan came to. One that nobody knows is attached to a part here. */
export function ScanLine({ note, onAttached }: ScanLineProps) {
  return (
    <div className="scan-line" data-sound={note?.sound}>
      <p className="scan-line__text" role="status">
        {note?.text ?? ''}
      </p>
      {note?.unknown != null && (
        <AttachCode key={note.unknown.code} unknown={note.unknown} onAttached={onAttached} />
      )}
    </div>
  )
}

interface AttachCodeProps {
  readonly unknown: NonNullable<ScanNote['unknown']>
  readonly onAttached: (code: string) => void
}

function AttachCode({ unknown: { code, packOf }, onAttached }: AttachCodeProps) {
  const id = useId()
  const [part, setPart] = useState(packOf ?? '')
  const [pieces, setPieces] = useState(packOf === null ? '1' : '')
  const attach = useMutation({
    mutationFn: (instead: boolean) =>
      ask('stock-ledger.attach-code', { code, part, pieces: Number(pieces), instead }),
    networkMode: 'always',
    onSuccess: () => onAttached(code),
  })
  const field = useRef<HTMLInputElement>(null)
  useScreenKeys({ F7: () => field.current?.focus() })
  const isTaken = attach.error instanceof AskProblem && attach.error.problem.code === 'code-of-another-part'
  const onSubmit = (event: FormEvent) => {
    event.preventDefault()
    if (!attach.isPending) attach.mutate(false)
  }
  return (
    <form className="attach-code" aria-label="Attach the code" onSubmit={onSubmit}>
      <p>
        {packOf === null
          ? 'If you know the part, attach the code to it: it is found by it from then on.'
          : `It looks like the code of a pack of ${packOf}. Say how many are in it.`}
      </p>
      <label htmlFor={`${id}-part`}>
        Part number <KeyHint>F7</KeyHint>
      </label>
      <input
        ref={field}
        aria-keyshortcuts="F7"
        id={`${id}-part`}
        className="text-field number"
        value={part}
        maxLength={60}
        autoComplete="off"
        spellCheck={false}
        onChange={event => setPart(event.target.value)}
      />
      <label htmlFor={`${id}-pieces`}>Pieces it stands for</label>
      <input
        id={`${id}-pieces`}
        className="text-field stock-short"
        inputMode="numeric"
        value={pieces}
        onChange={event => setPieces(event.target.value)}
      />
      <button type="submit" className="order-button">
        Attach
      </button>
      {isTaken && (
        <button type="button" className="order-button" onClick={() => attach.mutate(true)}>
          It was wrong: attach it to {part}
        </button>
      )}
      {attach.error !== null && (
        <p className="problem-note" role="alert">
          {attach.error.message}
        </p>
      )}
    </form>
  )
}
