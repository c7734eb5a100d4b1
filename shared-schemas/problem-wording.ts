import type { Problem } from './problem.ts'

/** One problem in one or two sentences: what happened, then what to do next. */
export function wordProblem(problem: Problem): string {
  switch (problem.code) {
    case 'malformed':
      return `${problem.where ? `${problem.where}: ` : ''}${problem.why}. Mend that and ask again (${problem.request}).`
    case 'unknown-request':
      return `This version knows no request called ${problem.request}. Update Tallyplate and ask again.`
    case 'unexpected':
      return `Something went wrong inside Tallyplate; nothing was changed. Quote ${problem.reference} when you report it.`
    case 'still-starting':
      return 'Tallyplate is still opening the shop. Ask again in a moment.'
    case 'plate-text-too-short':
      return `“${problem.typed}” is too short to look up. Type at least ${problem.needed} characters of the model number.`
    case 'brand-not-found':
      return `No brand is called “${problem.typed}”. ${orNearest(problem.nearest, 'Leave the brand out, or load its models first.')}`
    case 'part-not-found':
      return `No part has the number “${problem.typed}”. ${orNearest(problem.nearest, 'Check the number on the part or its bag.')}`
    case 'model-not-settled':
      return `“${problem.typed}” is not the number of one model. ${orNearest(problem.first, 'Check it against the rating plate.')} Name the full model number, with its brand if two makers share it; nothing was changed.`
    case 'record-not-found':
      return `No record is called ${problem.recordId}. Open the history of the part and model, and settle the return that is listed there.`
    case 'record-not-open':
      return problem.why === 'settled'
        ? `The return ${problem.recordId} has been settled already, and its caution is no longer shown. Nothing is left to do.`
        : `${problem.recordId} records a part that fitted: there is nothing to settle. Name the record of a wrong-fit return.`
    case 'correction-not-standing':
      return `No correction “${problem.source}” of ${problem.part} stands in this model: it was withdrawn already, or never made there. Open the history to see which corrections there were.`
    case 'reading-unreadable':
      return wordUnreadable(problem)
    case 'reading-needs-more':
      return `${problem.check} cannot be judged yet: ${missingFacts[problem.missing]}`
    case 'location-not-found':
      return `No location is called “${problem.typed}”. Known: ${problem.known.join(', ') || 'none yet; load locations.csv first'}.`
    case 'no-such-movement':
      return `Nothing goes from ${problem.from} to ${problem.to}. One side is a location of the shop; the other is another one, or supplier, customer, job or scrap.`
    case 'reference-needed':
      return `Say which ${problem.outside}: give its number or name.`
    case 'not-enough-on-hand':
      return `${problem.location} has ${problem.onHand} of ${problem.part} by the book, not ${problem.wanted}. Look again, or say that it was used before it was booked.`
    case 'kept-for-others':
      return `${problem.location} has ${problem.free} of ${problem.part} that nobody waits for; the rest is kept for ${problem.references.join(', ') || 'others'}.`
    case 'movement-not-found':
      return `There is no movement ${problem.movementId} in the book.`
    case 'movement-is-reversal':
      return `Movement ${problem.movementId} takes another one back. Record the movement that is meant instead.`
    case 'movement-reversed-already':
      return `Movement ${problem.movementId} was taken back already, by ${problem.by}.`
    case 'movement-stands':
      return problem.outside === 'count'
        ? 'That line was booked by a count. Count the part again to correct it.'
        : 'That line is opening stock. Mend opening_stock.csv and load it again.'
    case 'movement-told-otherwise':
      return `${problem.file} tells movement ${problem.movementId} otherwise than the book here. Nothing was taken in; have the file written again.`
    case 'record-told-otherwise':
      return `${problem.file} tells the record ${problem.id} otherwise than it stands here. Nothing was taken in; have the file written again.`
    case 'count-of-other-machine':
      return `That count was begun on ${problem.device} and goes on there. Take its ledger in once it is posted, or begin a count here.`
    case 'count-not-found':
      return `There is no count ${problem.countId}. Begin one, or choose one from the list.`
    case 'count-posted-already':
      return `That count was posted on ${problem.postedAt.slice(0, 10)}. Begin a new one to count again.`
    case 'reading-not-last':
      return 'That reading was taken back already, or the part was read again since. Take its last reading back instead.'
    case 'code-not-attachable':
      return problem.why === 'label'
        ? 'That code is a label of the shop itself. Scan the code that the maker printed on the part.'
        : 'That code was not read right. Scan it again before it is attached to a part.'
    case 'code-of-another-part':
      return `${problem.scanned} stands for ${problem.partNumber} already. Attach it to the other part only if that was wrong.`
    case 'location-not-van':
      return `${problem.location} is no van: only a van has a list to be brought back to.`
    case 'nothing-counted':
      return `Nothing was counted in ${problem.location} yet, so there is nothing to post.`
    case 'reservation-not-open':
      return `Reservation ${problem.reservationId} is not open: it was taken or released, or never was.`
    case 'job-not-found':
      return `There is no job ${problem.typed}. Check the number on its sheet, or open a new job.`
    case 'job-exists':
      return `There is a job ${problem.job} already, and it was left as it was. Open that one, or leave the number out to be given a new one.`
    case 'job-ended':
      return `Job ${problem.job} was ${problem.state === 'finished' ? 'finished' : 'given up'}. Open it again first, or open a new job.`
    case 'job-open':
      return `Job ${problem.job} is open already: nothing is left to do.`
    case 'job-without-van':
      return `Job ${problem.job} names no van. Say which van or shelf it is.`
    case 'part-or-family':
      return problem.both
        ? 'Name a part or a family, not both: a part if only that one will do.'
        : 'Say what is needed: a part number, or a family of parts.'
    case 'family-not-found':
      return `No family of parts is called “${problem.typed}”. Search it by a word of its name, such as “pump”.`
    case 'not-in-hand':
      return `Job ${problem.job} has ${Math.max(0, problem.inHand)} of ${problem.part} in hand, not ${problem.wanted}. Take it for the job first, or mend the number.`
    case 'not-fitted':
      return `Of ${problem.part}, ${problem.fitted} ${problem.fitted === 1 ? 'is' : 'are'} marked as fitted on job ${problem.job}: no more can be taken back.`
    case 'parts-left-in-hand':
      return `Job ${problem.job} still has ${problem.parts.map(({ quantity, partNumber }) => `${quantity} × ${partNumber}`).join(', ')} in hand. Say for each that it is fitted, or where it goes back to; nothing was changed.`
    case 'why-needed':
      return `Say why job ${problem.job} was not finished; nothing was changed.`
    case 'return-not-found':
      return `There is no return ${problem.returnId}, or it was taken back in the ledger. Choose one from the list.`
    case 'return-decided':
      return 'All of that return was decided already. To decide otherwise, take the movement back in the ledger of the part.'
    case 'return-has-fewer':
      return `Only ${problem.undecided} of that return ${problem.undecided === 1 ? 'is' : 'are'} undecided, not ${problem.wanted}. Mend the number.`
    case 'shelf-needed':
      return 'Say on which shelf or in which van it goes back.'
    case 'quarantine-needed':
      return problem.typed === null
        ? 'There is no quarantine to put it in. Add a location of kind quarantine to locations.csv and load it; nothing was changed.'
        : `${problem.typed} is no quarantine. Name one, or leave it out; nothing was changed.`
    case 'appliance-needed':
      return `Name the appliance that ${problem.part} did not fit, by its full model number: the caution is put on that. Nothing was changed.`
    case 'ledger-names-unknown':
      return `${problem.file} names the ${problem.what} “${problem.name}”, which is not here. Load the catalogue that both machines use, then take the file in again; nothing was changed.`
    case 'nothing-used-for':
      return `Nothing went out under “${problem.reference}”. Write the job or the customer’s reference as the ledger has it.`
    case 'symptom-not-in-guide':
      return `The guide has no symptom “${problem.symptom}” of a ${problem.applianceType}. It has: ${problem.known.join('; ') || 'none of that appliance yet; load faults.csv first'}.`
    case 'check-not-in-guide':
      return `The guide has no check “${problem.typed}” for this symptom. It has: ${problem.known.join('; ') || 'none'}.`
    case 'outcome-not-of-check':
      return `“${problem.typed}” is no outcome of ${problem.check}. It is one of: ${problem.known.join(', ')}.`
    case 'supplier-not-found':
      return `No supplier is called “${problem.typed}”. Known: ${problem.known.join(', ') || 'none yet; load suppliers.csv first'}.`
    case 'sheet-not-found':
      return `There is no order sheet ${problem.number}. List the sheets for their numbers.`
    case 'sheet-state-forbids':
      return `Order sheet ${problem.number} is ${wordState(problem.state)}, so it cannot be ${doneToSheet[problem.act]}: only one that is ${problem.allowed.map(wordState).join(' or ')} can. Nothing was changed.`
    case 'sheet-not-exportable':
      return `Order sheet ${problem.number} cannot go to its supplier as it is: ${problem.faults.slice(0, 3).join('; ')}. Make it a draft again and mend that; nothing was written.`
    case 'folder-unwritable':
      return `Nothing can be written into ${problem.folder} (${problem.why}). Name another folder; nothing was changed.`
    case 'line-not-on-sheet':
      return `Order sheet ${problem.number} has no line ${problem.line}. Open the sheet and name one of its lines; nothing was changed.`
    case 'nothing-due':
      return problem.way === 'close'
        ? `Nothing is to come of line ${problem.line} of ${problem.number}, so there is nothing to close.`
        : `Nothing was closed of line ${problem.line} of ${problem.number}, so nothing can be expected again.`
    case 'substitute-not-proved':
      return `${problem.part} came in place of ${problem.ordered}. ${problem.why} Leave it out, or say why it is taken in; nothing was booked.`
    case 'delivery-not-found':
      return `There is no delivery ${problem.receiptId}. Open the order sheet and choose one of its deliveries.`
    case 'delivery-taken-back-already':
      return `That delivery for ${problem.number} was taken back already; its pieces are due again.`
    case 'price-not-known':
      return `${problem.supplier} has no price on record for ${problem.part}. Give the price for one piece, or load the supplier’s offer first; nothing was changed.`
    case 'stop-not-found':
      return `Nothing was recorded: the line of ${problem.partNumber || 'no part'} has no stop called ${problem.stop}. Check the order again and let pass what it shows now.`
    case 'stop-not-overridable':
      return `Nothing was recorded: this cannot be let pass, it must be mended. ${problem.why}`
    case 'file-unreadable':
      return `${problem.file} cannot be read (${problem.why}). Check the path and that nobody has it open, then try again; nothing was changed.`
    case 'file-not-of-catalogue':
      return `${problem.file} is not the name of a catalogue file. Rename it to one of: ${problem.known.join(', ')}. Nothing was changed.`
    case 'wrong-header':
      return `${problem.file}: ${headerFaults(problem)}. Mend the first line and try again; nothing was changed.`
    case 'encoding-not-certain':
      return `${problem.file}: ${encodingDoubt(problem)}. Look at it in a preview and name the encoding; nothing was changed.`
    case 'separator-not-certain':
      return `${problem.file}: ${problem.found.why}. Name the separator in the layout; nothing was changed.`
    case 'sheet-not-settled':
      return `${problem.file} has ${problem.asked === null ? 'several sheets' : `no sheet “${problem.asked}”`}. Name one in the layout: ${problem.sheets.map(wordSheet).join(', ')}. Nothing was changed.`
    case 'layout-not-found':
      return `No layout is called “${problem.name}”. Known: ${problem.known.join(', ') || 'none yet; save one first'}.`
    case 'layout-exists':
      return `A layout is called “${problem.name}” already, and was left as it was. Choose another name, or replace it.`
    case 'layout-misfit':
      return `${problem.file} no longer fits the layout “${problem.layout}”: ${misfits(problem)}. Match the columns anew; nothing was changed.`
    case 'layout-wrong':
      return `The layout “${problem.layout}” cannot be used: ${problem.faults.join('; ')}. Nothing was changed.`
    case 'nothing-to-load':
      return `${problem.folder} holds no catalogue file. Name a folder with files such as models.csv, or one such file.`
    case 'load-stopped':
      return 'The load was stopped; nothing was changed.'
    case 'load-not-found':
      return `There is no load ${problem.loadRunId}. List the loads for their numbers.`
    case 'load-undone-already':
      return `Load ${problem.loadRunId} was undone already, by ${problem.undoneBy}. To have it back, load its files again.`
    case 'load-is-undoing':
      return `${problem.loadRunId} undid load ${problem.undoes}. To have that back, load its files again.`
    case 'load-built-upon':
      return `Load ${problem.later} changed the same rows after load ${problem.loadRunId}. Undo ${problem.later} first; nothing was changed.`
    case 'rows-rejected':
      return `${problem.rejected} ${problem.rejected === 1 ? 'row was' : 'rows were'} rejected, so nothing was loaded. ${wordRejected(problem)} Mend them, or load without --strict to leave them out.`
    case 'database-from-newer-program':
      return `${problem.file} was written by a newer Tallyplate (layout ${problem.found}; this one knows ${problem.known}). Update this program; the file was left as it was.`
    case 'database-damaged':
      return `${problem.file} is damaged (${problem.why}) and was left as it was. Put back the last good copy: tallyplate restore <copy> --file "${problem.file}".`
    case 'database-not-ours':
      return `${problem.file} is an SQLite file of some other program and was left as it was. Name another with --file.`
    case 'database-unopenable':
      return `${problem.file} cannot be opened (${problem.why}). Check the folder and your rights to it, or name another with --file.`
    case 'database-busy':
      return `${problem.file} is being written by another program. Wait until its work is done, then try again; nothing was changed.`
    case 'file-exists':
      return `${problem.file} is there already and was left as it was. Name a new file.`
    case 'database-absent':
      return `There is no shop file ${problem.file} yet. Load catalogue files into it (tallyplate load <folder>), or open the sample shop with npm start.`
    case 'database-in-use':
      return `${problem.file} is open in another program. Close Tallyplate everywhere on this file, then try again; nothing was changed.`
    case 'copy-not-sound':
      return `${problem.file} is not a sound copy (${problem.why}). Name another copy; nothing was changed.`
    case 'program-not-running':
      return 'Tallyplate is no longer running behind this page. Start it again, then reload the page.'
    case 'page-not-admitted':
      return 'This page was not opened by its one-time address, or Tallyplate was started anew since. Open the address that it printed last.'
    case 'port-busy':
      return `Port ${problem.port} is taken by another program. Name a free one with --port, or leave --port out.`
    case 'already-running':
      return `${problem.file} is served already at http://127.0.0.1:${problem.port} (process ${problem.pid}). Use the page that is open, or stop that process and start again.`
  }
}

function wordState(state: string): string {
  return state.replace('-', ' ')
}

const doneToSheet: Record<Extract<Problem, { code: 'sheet-state-forbids' }>['act'], string> = {
  change: 'changed',
  check: 'checked',
  reopen: 'made a draft again',
  send: 'sent',
  receive: 'received against',
  close: 'closed line by line',
  cancel: 'cancelled',
  export: 'written to files',
}

function wordUnreadable({ check, typed, measure }: Extract<Problem, { code: 'reading-unreadable' }>): string {
  if (measure === null) return `${check} measures nothing. Answer with one of its outcomes.`
  const example = readingExamples[measure]
  const how = example === undefined ? 'Write a figure and its unit.' : `Write it as ${example}.`
  return `“${typed}” cannot be read for ${check}. ${how}`
}

const readingExamples: Readonly<Record<string, string>> = {
  resistance: '26.4 Ω, 4.7 kΩ or OL, of a sensor with its temperature: 12.1 kΩ at 20 °C',
  voltage: '230 V',
  current: '0.3 A',
  power: '2000 W',
  capacitance: '12 µF',
  pressure: '2.5 bar or 250 kPa',
  temperature: '60 °C',
  height: '80 cm',
  flow: '8 l, what runs through in a minute',
  pulses: '220, for each litre',
  time: '45 s',
  changeover: 'closed open / open closed: the two contacts at rest, then actuated',
}

const missingFacts: Record<Extract<Problem, { code: 'reading-needs-more' }>['missing'], string> = {
  volts: 'read the volts on the rating plate, and give them.',
  'heater-watts': 'read the watts on the heater, and write them after the reading: 26.4 Ω for 2000 W.',
  temperature: 'take the temperature of the sensor, and write it after the reading: 12.1 kΩ at 20 °C.',
  'ohms-at-25': 'the catalogue does not state what this sensor has at 25 °C. Answer with an outcome instead.',
}

function orNearest(nearest: readonly string[], otherwise: string): string {
  return nearest.length > 0 ? `Nearest: ${nearest.join(', ')}.` : otherwise
}

/** A sentence has room for the first few; the list of all is in the file that --rejects names. */
function wordRejected({ rejected, first }: Extract<Problem, { code: 'rows-rejected' }>): string {
  const shown = first.slice(0, 3)
  const faults = shown.map(
    ({ file, line, column, reason }) => `${file}, line ${line}${column && `, ${column}`} ${reason}`,
  )
  const more = rejected - shown.length
  return `${[...faults, ...(more > 0 ? [`and ${more} more (--rejects writes them all)`] : [])].join('; ')}.`
}

function headerFaults(header: Extract<Problem, { code: 'wrong-header' }>): string {
  const faults = [
    named('unknown column', header.unknown),
    named('missing column', header.missing),
    named('repeated column', header.repeated),
  ]
  return faults.filter(fault => fault !== '').join('; ') || 'there is no header line'
}

function encodingDoubt({ asked, found }: Extract<Problem, { code: 'encoding-not-certain' }>): string {
  const options = found.options.map(
    ({ encoding, samples: [sample] }) => encoding + (sample ? ` (“${sample}”)` : ''),
  )
  const doubt = asked === null ? 'nobody has said how it is encoded' : `the layout says ${asked}`
  return `${doubt}, and ${found.why}; it can be read as ${options.slice(0, mostOptions).join(', ')}`
}

const mostOptions = 4

function wordSheet({ name, hidden }: { readonly name: string; readonly hidden: boolean }): string {
  return hidden ? `${name} (hidden)` : name
}

function misfits(misfit: Extract<Problem, { code: 'layout-misfit' }>): string {
  const faults = [
    named('missing heading', misfit.missing),
    named('new heading', misfit.added),
    named('repeated heading', misfit.repeated),
  ]
  return faults.filter(fault => fault !== '').join('; ')
}

function named(what: string, columns: readonly string[]): string {
  return columns.length === 0 ? '' : `${what}${columns.length === 1 ? '' : 's'} ${columns.join(', ')}`
}
