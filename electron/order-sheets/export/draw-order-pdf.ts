import path from 'node:path'
import PDFDocument from 'pdfkit'
import { encodeCode128 } from '../../../shared-schemas/code-128.ts'
import type { DocumentLine, SheetDocument } from './sheet-document.ts'
import { wordDay } from './write-order-message.ts'

/**
 * The sheet on A4, with the order number as a code and room to tick what came. The same sheet gives the same bytes: its
 * date is the only one in it.
 */
export function drawOrderPdf(sheet: SheetDocument): Uint8Array {
  const written = new Date(`${sheet.date}T00:00:00Z`)
  const page = new PDFDocument({
    size: 'A4',
    margin: edge,
    bufferPages: true,
    lang: 'en-GB',
    displayTitle: true,
    pdfVersion: '1.7',
    info: {
      Title: `Order ${sheet.number}`,
      Author: sheet.buyer.name,
      Creator: 'Tallyplate',
      Producer: 'Tallyplate',
      CreationDate: written,
      ModDate: written,
    },
    // A face of ours from the beginning: the standard one would be read from files that a bundle does not have.
    font: faceFile('atkinson-hyperlegible-next-regular'),
  })
  page.registerFont('text', faceFile('atkinson-hyperlegible-next-regular'))
  page.registerFont('strong', faceFile('atkinson-hyperlegible-next-bold'))
  page.registerFont('number', faceFile('atkinson-hyperlegible-mono-regular'))
  const below = drawHead(page, sheet)
  const after = drawLines(page, sheet, below)
  drawTotals(page, sheet, after)
  drawFeet(page, sheet)
  page.end()
  return readAll(page)
}

type Page = InstanceType<typeof PDFDocument>

/** Points, of which 72 make an inch. */
const edge = 40
const right = 595.28 - edge
const bottom = 841.89 - edge - 30

/** Where the faces stand: beside this file, or beside the bundle that it is part of. */
function faceFile(name: string): string {
  return path.join(import.meta.dirname, 'faces', `${name}.ttf`)
}

function drawHead(page: Page, { number, date, buyer, supplier }: SheetDocument): number {
  page.font('strong').fontSize(20).text('Order', edge, edge, { lineBreak: false })
  page
    .font('number')
    .fontSize(20)
    .text(number, edge + 66, edge, { lineBreak: false })
  page
    .font('text')
    .fontSize(10)
    .text(wordDay(date), edge, edge + 28, { lineBreak: false })
  drawCode(page, number, { x: right - 170, y: edge, width: 170, height: 34 })
  page
    .font('number')
    .fontSize(10)
    .text(number, right - 170, edge + 37, { width: 170, align: 'center' })
  const address = [buyer.street, [buyer.postcode, buyer.town].filter(Boolean).join(' '), buyer.country]
  const from = drawBlock(page, edge, 'From', [buyer.name, ...address, buyer.telephone, buyer.email])
  const account = supplier.account === '' ? '' : `Our account: ${supplier.account}`
  const to = drawBlock(page, edge + 260, 'To', [supplier.name, account])
  return Math.max(from, to) + 18
}

function drawBlock(page: Page, x: number, title: string, lines: readonly string[]): number {
  page
    .font('strong')
    .fontSize(9)
    .text(title, x, edge + 66, { width: 240 })
  page.font('text').fontSize(10)
  for (const line of lines.filter(Boolean)) page.text(line, x, page.y, { width: 240 })
  return page.y
}

/** Code 128 (ISO/IEC 15417) in bars of whole widths, with the ten modules of quiet that it asks for on both sides. */
function drawCode(
  page: Page,
  text: string,
  {
    x,
    y,
    width,
    height,
  }: { readonly x: number; readonly y: number; readonly width: number; readonly height: number },
): void {
  const widths = encodeCode128(text)
  if (widths === undefined) throw new Error(`an order number is digits and a hyphen, but is ${text}`)
  const modules = widths.reduce((sum, bar) => sum + bar, 0)
  const module = width / (modules + 20)
  let at = x + 10 * module
  for (const [place, bar] of widths.entries()) {
    if (place % 2 === 0) page.rect(at, y, bar * module, height)
    at += bar * module
  }
  page.fill('#000000')
}

interface Column {
  readonly title: string
  readonly x: number
  readonly width: number
  readonly isFigure: boolean
  /** What stands there, each in its face and below the one before. */
  readonly of: (line: DocumentLine) => readonly (readonly ['text' | 'number', string])[]
}

const columns: readonly Column[] = [
  { title: '', x: 40, width: 20, isFigure: true, of: ({ line }) => [['text', String(line)]] },
  { title: 'Your number', x: 66, width: 90, isFigure: false, of: line => [['number', line.supplierCode]] },
  {
    title: 'Part',
    x: 160,
    width: 172,
    isFigure: false,
    of: ({ partNumber, description, job }) => [
      ['number', partNumber],
      ['text', description],
      ['text', job === '' ? '' : `For job ${job}`],
    ],
  },
  { title: 'Pieces', x: 336, width: 40, isFigure: true, of: line => [['text', String(line.quantity)]] },
  { title: 'Each', x: 380, width: 54, isFigure: true, of: ({ unitPrice }) => [['text', unitPrice]] },
  { title: 'Amount', x: 438, width: 58, isFigure: true, of: ({ amount }) => [['text', amount]] },
]

/** Where a person writes what came. */
const came = { x: 506, width: right - 506 }

function drawLines(page: Page, { lines }: SheetDocument, from: number): number {
  let y = drawTitles(page, from)
  for (const line of lines) {
    const height = Math.max(...columns.map(column => heightOf(page, column, line))) + 7
    if (y + height > bottom) {
      page.addPage()
      y = drawTitles(page, edge)
    }
    for (const column of columns) drawCell(page, column, line, y + 3)
    page.rect(came.x, y + 3, came.width, height - 6)
    page.lineWidth(0.5).stroke('#000000')
    y += height
    page.moveTo(edge, y).lineTo(right, y).lineWidth(0.3).stroke('#777777')
  }
  return y
}

function drawCell(page: Page, { x, width, isFigure, of }: Column, line: DocumentLine, y: number): void {
  page.y = y
  for (const [face, text] of of(line))
    if (text !== '')
      page
        .font(face)
        .fontSize(9.5)
        // Figures of one width stand under each other.
        .text(drawable(text), x, page.y, { width, align: isFigure ? 'right' : 'left', features: ['tnum'] })
}

function heightOf(page: Page, { width, of }: Column, line: DocumentLine): number {
  return of(line)
    .filter(([, text]) => text !== '')
    .reduce(
      (sum, [face, text]) => sum + page.font(face).fontSize(9.5).heightOfString(drawable(text), { width }),
      0,
    )
}

/** The faces draw the micro of capacitors as the Greek letter only. */
function drawable(text: string): string {
  return text.replaceAll('\u00b5', '\u03bc')
}

function drawTitles(page: Page, y: number): number {
  page.font('strong').fontSize(9)
  for (const { title, x, width, isFigure } of columns)
    page.text(title, x, y, { width, align: isFigure ? 'right' : 'left' })
  page.text('Came', came.x, y, { width: came.width })
  page
    .moveTo(edge, y + 14)
    .lineTo(right, y + 14)
    .lineWidth(1)
    .stroke('#000000')
  return y + 16
}

/** The totals and the room for who received it stay together on one page. */
function drawTotals(page: Page, sheet: SheetDocument, from: number): void {
  const needs = 110
  if (from + needs > bottom) page.addPage()
  let y = from + needs > bottom ? edge : from + 8
  const rows = [
    ['Lines', sheet.net],
    ['Carriage', sheet.carriage],
    [`In all, ${sheet.currency}`, sheet.total],
  ] as const
  for (const [at, [title, amount]] of rows.entries()) {
    page.font(at === rows.length - 1 ? 'strong' : 'text').fontSize(10)
    page.text(title, 300, y, { width: 130, align: 'right' })
    page.text(amount, 438, y, { width: 58, align: 'right', features: ['tnum'] })
    y += 15
  }
  page.font('text').fontSize(9.5)
  page.text(`Please put our order number ${sheet.number} on the delivery note.`, edge, y + 8, {
    width: right - edge,
  })
  page.text('Received by', edge, y + 40, { lineBreak: false })
  page.text('On', edge + 230, y + 40, { lineBreak: false })
  page.text('Delivery note', edge + 350, y + 40, { lineBreak: false })
  page.moveTo(edge + 56, y + 51).lineTo(edge + 220, y + 51)
  page.moveTo(edge + 248, y + 51).lineTo(edge + 340, y + 51)
  page.moveTo(edge + 414, y + 51).lineTo(right, y + 51)
  page.lineWidth(0.5).stroke('#000000')
}

function drawFeet(page: Page, { number, buyer }: SheetDocument): void {
  const { count } = page.bufferedPageRange()
  for (let at = 0; at < count; at++) {
    page.switchToPage(at)
    // Below the lower margin, where pdfkit would otherwise begin another page.
    page.page.margins.bottom = 0
    page.font('text').fontSize(9)
    page.text(buyer.name, edge, 841.89 - edge, { width: 250, lineBreak: false })
    page.text(`Order ${number}, page ${at + 1} of ${count}`, right - 250, 841.89 - edge, {
      width: 250,
      align: 'right',
    })
  }
}

/** Everything is written by the time the document is ended, since pdfkit compresses without waiting. */
function readAll(page: Page): Uint8Array {
  const chunks: Uint8Array[] = []
  for (let chunk = page.read(); chunk !== null; chunk = page.read()) chunks.push(chunk as Uint8Array)
  return Buffer.concat(chunks)
}
