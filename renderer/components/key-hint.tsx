/** The key that does this, small, beside where it acts. Read out by `aria-keyshortcuts` of the control itself. */
export function KeyHint({ children }: { readonly children: string }) {
  return (
    <span className="key-hint" aria-hidden="true">
      {children}
    </span>
  )
}
