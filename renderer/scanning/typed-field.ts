/** A field as it was before the first key of a code went into it. */
export interface FieldBefore {
  readonly field: HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement
  readonly value: string
  readonly selection: readonly [number, number] | null
}

export function noteField(): FieldBefore | null {
  const field = document.activeElement
  if (field instanceof HTMLSelectElement) return { field, value: field.value, selection: null }
  if (!(field instanceof HTMLInputElement || field instanceof HTMLTextAreaElement)) return null
  const { value, selectionStart, selectionEnd } = field
  const selection =
    selectionStart === null || selectionEnd === null ? null : ([selectionStart, selectionEnd] as const)
  return { field, value, selection }
}

/** Puts back what was in the field, so that a scan leaves no trace in what a person was typing. */
export function giveBack(before: FieldBefore | null): void {
  if (before === null || before.field.value === before.value) return
  const { field, value, selection } = before
  // React remembers what it last saw in the field; only the element's own setter is noticed by it.
  const prototype = Object.getPrototypeOf(field)
  Object.getOwnPropertyDescriptor(prototype, 'value')?.set?.call(field, value)
  field.dispatchEvent(new Event(field instanceof HTMLSelectElement ? 'change' : 'input', { bubbles: true }))
  if (selection !== null && !(field instanceof HTMLSelectElement)) field.setSelectionRange(...selection)
}

/**
 * Types what was held back after all, into the field in which its keys were struck. Undo in the field goes on working, as
 * if they had come by themselves, unless the person has gone on to another field meanwhile.
 */
export function typeInto(field: Element | null, text: string): void {
  if (field === document.activeElement) document.execCommand('insertText', false, text)
  else if (field instanceof HTMLInputElement || field instanceof HTMLTextAreaElement) {
    field.setRangeText(text, field.selectionStart ?? 0, field.selectionEnd ?? 0, 'end')
    field.dispatchEvent(new Event('input', { bubbles: true }))
  }
}
