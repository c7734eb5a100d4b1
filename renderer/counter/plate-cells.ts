import type { FoundModels, ModelCandidate } from '../../shared-schemas/model-lookup.ts'
import { type AlignedColumn, alignWithKey } from './align-with-key.ts'
import { type PlateStroke, readStrokes } from './plate-strokes.ts'

/**
 * How a character cell stands.
 * `read`: typed, and nothing says otherwise. `unreadable`: typed as `?`. `differs`: the catalogue reads another.
 * `surplus`: typed, and the catalogue has nothing there. `open`: not typed, and not known. `known`: not typed, but the
 * same in every model that is open.
 */
export type CellMark = 'read' | 'unreadable' | 'differs' | 'surplus' | 'open' | 'known'

export interface CharacterCell {
  readonly kind: 'character'
  readonly mark: CellMark
  readonly typed: string
  /** What the catalogue has there, where that may be said. */
  readonly catalogue: string
  /** From 1 over the plate key. */
  readonly position: number | null
  /** Which typed character stands here, counted from 0. */
  readonly typedAt: number | null
  readonly isAsked: boolean
}

export interface PrintedCell {
  /** `name`: part of the sales name that was typed in place of the number. */
  readonly kind: 'separator' | 'word' | 'name'
  readonly text: string
  readonly typedAt: number | null
}

export type PlateCell = CharacterCell | PrintedCell

export interface PlateToDraw {
  readonly typed: string
  readonly found: Pick<FoundModels, 'setAside' | 'candidates' | 'openModels'> | null
  /** The candidate that a person points at or took. */
  readonly pointedAt: ModelCandidate | null
  /** Positions that would decide, from 1 over the plate key. */
  readonly asked: readonly number[]
}

/** The plate's number as cells, in the order in which they stand: every typed character once, and what is still open. */
export function drawPlateCells(plate: PlateToDraw): readonly PlateCell[] {
  if (plate.typed.trim() === '') return blankCells
  const strokes = readStrokes(plate.typed, plate.found?.setAside ?? [])
  const shape = shapeOf(plate)
  if (shape?.model.matched === 'sales-name') return layBesideName(strokes, shape, plate.asked)
  const columns = shape && alignWithKey(keyOf(strokes), shape.model)
  return shape === undefined || columns === undefined
    ? strokes.map(cellAsTyped)
    : layBesideCatalogue(strokes, columns, shape, plate.asked)
}

const blankCells: readonly PlateCell[] = Array.from({ length: 9 }, () => openCell())

function openCell(): CharacterCell {
  return {
    kind: 'character',
    mark: 'open',
    typed: '',
    catalogue: '',
    position: null,
    typedAt: null,
    isAsked: false,
  }
}

function keyOf(strokes: readonly PlateStroke[]): string {
  return strokes.map(({ key }) => key).join('')
}

/** A model whose printed form the cells follow, and which of its characters may be shown where nothing was typed. */
interface PlateShape {
  readonly model: ModelCandidate
  readonly isKnown: (position: number) => boolean
}

/** What one model says is shown when it is the only one or a person points at it; else only what all open models share. */
function shapeOf({ found, pointedAt }: PlateToDraw): PlateShape | undefined {
  const model = pointedAt ?? found?.candidates[0]
  if (model === undefined || found === null) return undefined
  if (pointedAt !== null || found.openModels === 1) return { model, isKnown: () => true }
  const open = found.candidates.slice(0, found.openModels)
  const allListed = open.length === found.openModels
  return {
    model,
    isKnown: position =>
      allListed && open.every(({ key }) => key.charAt(position - 1) === model.key.charAt(position - 1)),
  }
}

function cellAsTyped(stroke: PlateStroke, typedAt: number): PlateCell {
  if (stroke.as !== 'number') return { kind: stroke.as, text: stroke.text, typedAt }
  const mark = stroke.key === '?' ? 'unreadable' : 'read'
  return { ...openCell(), mark, typed: stroke.text, typedAt }
}

/** A sales name is not on the plate: it stands as typed, and after it the number that it covers, still to be read. */
function layBesideName(
  strokes: readonly PlateStroke[],
  shape: PlateShape,
  asked: readonly number[],
): readonly PlateCell[] {
  const name = strokes.map(({ text }, typedAt): PlateCell => ({ kind: 'name', text, typedAt }))
  const columns = Array.from(shape.model.key, (_, catalogue) => ({ typed: null, catalogue }))
  return [...name, ...layBesideCatalogue([], columns, shape, asked)]
}

function layBesideCatalogue(
  strokes: readonly PlateStroke[],
  columns: readonly AlignedColumn[],
  shape: PlateShape,
  asked: readonly number[],
): readonly PlateCell[] {
  const strokeOfKey = strokes.flatMap((stroke, at) => Array.from(stroke.key, () => at))
  const separatorsBefore = separatorsOfPrinted(shape.model)
  const cells: PlateCell[] = []
  let next = 0
  const drawPrinted = (until: number) => {
    for (; next < until; next++) {
      const stroke = strokes[next]
      if (stroke !== undefined && stroke.as !== 'number') cells.push(cellAsTyped(stroke, next))
    }
  }
  const drawSeparators = () => {
    while (strokes[next]?.as === 'separator') drawPrinted(next + 1)
  }
  const drawCatalogueSeparator = (catalogue: number | null) => {
    const printed = catalogue === null ? '' : (separatorsBefore[catalogue] ?? '')
    if (printed !== '' && cells.length > 0 && cells.at(-1)?.kind === 'character')
      cells.push({ kind: 'separator', text: printed, typedAt: null })
  }

  for (const { typed, catalogue } of columns) {
    const strokeAt = typed === null ? null : (strokeOfKey[typed] ?? null)
    // A character that NFKC spells with two has one cell, that of the first.
    if (strokeAt !== null && strokeAt < next) continue
    if (strokeAt === null) drawSeparators()
    else drawPrinted(strokeAt)
    drawCatalogueSeparator(catalogue)
    cells.push(cellOfColumn({ stroke: strokes[strokeAt ?? -1], strokeAt, catalogue }, shape, asked))
    if (strokeAt !== null) next = strokeAt + 1
  }
  drawPrinted(strokes.length)
  return cells
}

/** What the maker prints before each character of the key. */
function separatorsOfPrinted({ modelNumber }: ModelCandidate): readonly string[] {
  const before: string[] = []
  let printed = ''
  for (const stroke of readStrokes(modelNumber, [])) {
    if (stroke.key === '') printed += stroke.text
    for (const _ of stroke.key) {
      before.push(printed)
      printed = ''
    }
  }
  return before
}

function cellOfColumn(
  {
    stroke,
    strokeAt,
    catalogue,
  }: {
    readonly stroke: PlateStroke | undefined
    readonly strokeAt: number | null
    readonly catalogue: number | null
  },
  { model, isKnown }: PlateShape,
  asked: readonly number[],
): CharacterCell {
  const position = catalogue === null ? null : catalogue + 1
  const isAsked = position !== null && asked.includes(position)
  const has = catalogue === null ? '' : model.key.charAt(catalogue)
  const mayShow = position !== null && isKnown(position) && !isAsked
  const at = { kind: 'character', position, typedAt: strokeAt, isAsked } as const
  if (stroke === undefined)
    return { ...at, mark: mayShow ? 'known' : 'open', typed: '', catalogue: mayShow ? has : '' }
  if (stroke.key === '?')
    return { ...at, mark: 'unreadable', typed: stroke.text, catalogue: mayShow ? has : '' }
  if (position === null) return { ...at, mark: 'surplus', typed: stroke.text, catalogue: '' }
  return { ...at, mark: stroke.key === has ? 'read' : 'differs', typed: stroke.text, catalogue: has }
}
