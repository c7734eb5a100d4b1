import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { beforeAll, expect, test } from 'vitest'
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader'
import { drawOrderPdf } from '../../../../electron/order-sheets/export/draw-order-pdf.ts'
import { documentOf } from './sheet-documents.ts'

// Its module of machine code is read from the disk: by itself it would fetch it from a server.
beforeAll(async () => {
  const module = fileURLToPath(import.meta.resolve('zxing-wasm/reader/zxing_reader.wasm'))
  const wasmBinary = new Uint8Array(readFileSync(module)).buffer
  await prepareZXingModule({ overrides: { wasmBinary }, fireImmediately: true })
})

const many = documentOf(
  Array.from({ length: 40 }, (_, at) => ({
    partNumber: `QV-${100 + at}/B`,
    description: at === 3 ? 'Run capacitor 16 µF ±5 %, 450 V' : 'Drain pump, left hand, with hose',
    supplierCode: `D${at}`,
    job: at === 5 ? 'J731' : '',
  })),
)
const bytes = drawOrderPdf(many)

interface ReadPage {
  readonly text: string
  readonly image: { readonly data: Uint8ClampedArray; readonly width: number; readonly height: number }
}

/** Read and drawn by pdf.js, which knows nothing of how it was written; three dots to a point are 216 to an inch. */
async function readPages(pdf: Uint8Array): Promise<ReadPage[]> {
  const document = await getDocument({ data: new Uint8Array(pdf), verbosity: 0 }).promise
  const pages: ReadPage[] = []
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number)
    const viewport = page.getViewport({ scale: 3 })
    // The factory's own type is left open by pdf.js.
    const factory = document.canvasFactory as {
      create(width: number, height: number): { canvas: HTMLCanvasElement; context: CanvasRenderingContext2D }
    }
    const [width, height] = [Math.floor(viewport.width), Math.floor(viewport.height)]
    const { canvas, context } = factory.create(width, height)
    await page.render({ canvas, canvasContext: context, viewport }).promise
    const { items } = await page.getTextContent()
    pages.push({
      text: items
        .map(item => ('str' in item ? item.str : ''))
        .join(' ')
        .replaceAll(/\s+/g, ' '),
      image: context.getImageData(0, 0, width, height),
    })
  }
  return pages
}

test('number, parties, lines and totals are read back, and every page says which it is', async () => {
  const pages = await readPages(bytes)
  expect(pages.length).toBeGreaterThan(1)
  const [first] = pages
  for (const text of [
    'Order 2026-0007',
    '23 November 2026',
    'Sallowbridge Spares',
    '3 Weir Lane',
    'Dale Spares',
    'Our account: AC-20931',
  ])
    expect(first?.text).toContain(text)
  const whole = pages.map(({ text }) => text).join(' ')
  for (const { partNumber, supplierCode } of many.lines) {
    expect(whole).toContain(partNumber)
    expect(whole).toContain(` ${supplierCode} `)
  }
  // The faces draw the micro sign as the Greek letter only.
  expect(whole).toContain('16 μF ±5 %, 450 V')
  expect(whole).toContain('For job J731')
  expect(whole).toContain(many.total)
  expect(pages.map(({ text }) => /page \d+ of \d+/.exec(text)?.[0])).toEqual(
    pages.map((_, at) => `page ${at + 1} of ${pages.length}`),
  )
}, 30_000)

test('the bar code of the order number is read by a reader of codes', async () => {
  const [first] = await readPages(bytes)
  if (first === undefined) throw new Error('an order has a page')
  const { data, width, height } = first.image
  const codes = await readBarcodes({ data, width, height, colorSpace: 'srgb' } as ImageData, {
    formats: ['Code128'],
  })
  expect(codes.map(({ text }) => text)).toEqual(['2026-0007'])
}, 30_000)

test('letters are drawn, not only named: the title has ink', async () => {
  const [first] = await readPages(bytes)
  if (first === undefined) throw new Error('an order has a page')
  const { data, width } = first.image
  // The word “Order” stands from 40 points down and right; a face that cannot be drawn leaves the paper white.
  let dark = 0
  for (let y = 40 * 3; y < 60 * 3; y++)
    for (let x = 40 * 3; x < 95 * 3; x++) if ((data[(y * width + x) * 4] ?? 255) < 100) dark++
  expect(dark).toBeGreaterThan(500)
}, 30_000)

test('the same sheet gives the same bytes', () => {
  expect(Buffer.compare(drawOrderPdf(many), bytes)).toBe(0)
}, 30_000)
