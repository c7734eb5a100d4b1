import { type RefObject, useEffect, useRef } from 'react'

/**
 * A sheet that its key opens and Esc closes. Esc is caught before the Counter sees it, which would go back to the
 * plate; printing may have taken the focus away. One sheet is open at a time.
 */
export function useSheet(
  key: string,
  isElsewhere: () => boolean = never,
): RefObject<HTMLDialogElement | null> {
  const sheet = useRef<HTMLDialogElement>(null)
  useEffect(() => {
    const act = (event: KeyboardEvent) => {
      if (event.isComposing || event.altKey || event.ctrlKey || event.metaKey) return
      const isOpen = sheet.current?.open === true
      // While the sheet is open, no key of the screens behind it acts: neither one pressed beside it nor, as the sheet
      // itself sees to, one pressed within.
      if (isOpen && !isWithin(sheet.current, event.target)) event.stopPropagation()
      if (event.key === key && !isOpen && !isAnySheetOpen() && !isElsewhere()) sheet.current?.showModal()
      else if (event.key === 'Escape' && isOpen) sheet.current?.close()
      else return
      event.preventDefault()
    }
    document.addEventListener('keydown', act, { capture: true })
    return () => document.removeEventListener('keydown', act, { capture: true })
  }, [key, isElsewhere])
  return sheet
}

function isWithin(sheet: HTMLDialogElement | null, target: EventTarget | null): boolean {
  return target instanceof Node && sheet?.contains(target) === true
}

const never = () => false

function isAnySheetOpen(): boolean {
  return document.querySelector('dialog[open]') !== null
}
