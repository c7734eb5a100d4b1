import { useRef, useState } from 'react'
import { ask } from '../bridge/client.ts'
import { focusAndSelect } from '../components/focus-and-select.ts'
import { KeyHint } from '../components/key-hint.tsx'
import { ModelsByBrand } from '../components/models-by-brand.tsx'
import { useModelList } from '../components/use-model-list.ts'
import { useScreenKeys } from '../components/use-screen-keys.ts'
import { wordCount } from '../components/word-models.ts'
import { Sheet } from './sheet.tsx'
import { useSheet } from './use-sheet.ts'

/** F10: every model that the part goes into, on a sheet; Esc goes back to what was there. */
export function ModelsView({ part }: { readonly part: string }) {
  const sheet = useSheet('F10')
  const [isOpen, setOpen] = useState(false)
  return (
    <>
      <button
        type="button"
        className="plain-button"
        aria-keyshortcuts="F10"
        aria-haspopup="dialog"
        onClick={() => sheet.current?.showModal()}
      >
        Its models <KeyHint>F10</KeyHint>
      </button>
      <Sheet
        sheet={sheet}
        title={
          <>
            Models of <span className="number">{part}</span>
          </>
        }
        isPrinted={false}
        onToggle={setOpen}
      >
        {isOpen && <ModelsOfPart part={part} />}
      </Sheet>
    </>
  )
}

function ModelsOfPart({ part }: { readonly part: string }) {
  const filterField = useRef<HTMLInputElement>(null)
  const list = useModelList(['fit-check.list-fitted-models', part], asked =>
    ask('fit-check.list-fitted-models', { part, ...asked }),
  )
  useScreenKeys(
    { F2: () => focusAndSelect(filterField.current), F8: () => void list.copy() },
    { isOnSheet: true },
  )
  return (
    <ModelsByBrand
      list={list}
      filterField={filterField}
      isFieldFirst={true}
      sentence={({ count, brands }) =>
        count === 0
          ? 'No model is on record for it.'
          : `It goes into ${wordCount(count)}${brands.length > 1 ? ` of ${brands.length} brands` : ''}.`
      }
    />
  )
}
