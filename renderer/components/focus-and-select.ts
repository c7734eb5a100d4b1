/** Typing goes on in the field, and takes the place of what stands there. */
export function focusAndSelect(field: HTMLInputElement | HTMLTextAreaElement | null): void {
  field?.focus()
  field?.select()
}
