/** The order as it stands in the field, and as it was when it was last checked. */
export interface DraftOrder {
  readonly text: string
  /** What the text is called when something is wrong with it. */
  readonly name: string
  readonly supplier: string
  /** What was asked for last; null until something is. */
  readonly asked: AskedOrder | null
  readonly openLine: number | null
  /** Kept from one stop to the next: the same person lets several pass. */
  readonly initials: string
}

export interface AskedOrder {
  readonly text: string
  readonly name: string
  readonly supplier: string
}

export type DraftStep =
  | { readonly do: 'type'; readonly text: string }
  /** Pasted or opened whole: it is checked at once. */
  | { readonly do: 'take'; readonly text: string; readonly name: string }
  | { readonly do: 'choose-supplier'; readonly supplier: string }
  | { readonly do: 'check' }
  | { readonly do: 'open-line'; readonly line: number | null }
  | { readonly do: 'sign'; readonly initials: string }

/** What an order is called that came from no file. */
export const pastedName = 'the order in the field'

export const emptyDraft: DraftOrder = {
  text: '',
  name: pastedName,
  supplier: '',
  asked: null,
  openLine: null,
  initials: '',
}

export function takeStep(draft: DraftOrder, step: DraftStep): DraftOrder {
  switch (step.do) {
    case 'type':
      return { ...draft, text: step.text }
    case 'take':
      return check({ ...draft, text: step.text, name: step.name, openLine: null })
    case 'choose-supplier':
      return draft.asked === null
        ? { ...draft, supplier: step.supplier }
        : check({ ...draft, supplier: step.supplier })
    case 'check':
      return check(draft)
    case 'open-line':
      return { ...draft, openLine: step.line }
    case 'sign':
      return { ...draft, initials: step.initials }
  }
}

/** An empty field asks for nothing. */
function check({ text, name, supplier, ...rest }: DraftOrder): DraftOrder {
  const asked = text.trim() === '' ? null : { text, name, supplier }
  return { ...rest, text, name, supplier, asked }
}

/** Whether what stands in the field is not what the answer below it is about. */
export function isChangedSince({ text, asked }: DraftOrder): boolean {
  return asked !== null && asked.text !== text
}
