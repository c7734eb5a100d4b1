import path from 'node:path'
import type { Output } from '../../../shared-schemas/index.ts'
import { restoreDatabase } from '../../database/restore-database.ts'
import { Refusal } from '../../requests/refusal.ts'
import type { Command, Desk } from './command.ts'

export const backup: Command = {
  name: 'backup',
  words: '<new file>',
  leastWords: 1,
  mostWords: 1,
  does: "writes a consistent, checked copy of the shop's file, while others work on",
  options: {},
  shop: 'must-exist',
  async run(given, { ask }) {
    const made = await ask('database.back-up', { file: path.resolve(given.words[0] ?? '') })
    const text = `The shop is copied to ${made.file} (${made.bytes.toLocaleString('en')} bytes) and the copy is checked.`
    return { value: made, text, needsPerson: false }
  },
}

export const restore: Command = {
  name: 'restore',
  words: '<copy>',
  leastWords: 1,
  mostWords: 1,
  does: "puts a copy back as the shop's file; the present one is kept beside it",
  options: {},
  shop: 'may-make',
  async run(given, { databaseFile }) {
    const copy = path.resolve(given.words[0] ?? '')
    const restored = restoreDatabase({ copy, file: databaseFile, now: new Date() })
    const kept = restored.kept === null ? '' : ` The file that stood there is kept as ${restored.kept}.`
    return { value: restored, text: `${databaseFile} is now ${copy}.${kept}`, needsPerson: false }
  },
}

export const verify: Command = {
  name: 'verify',
  words: '',
  leastWords: 0,
  mostWords: 0,
  does: "checks the shop's whole file: its pages, its references and the ledger's laws",
  options: {},
  shop: 'must-exist',
  async run(_given, desk) {
    const found = await verifyEvenDamaged(desk)
    const lines = found.checks.map(({ name, ok, detail }) => `${ok ? 'ok   ' : 'FAULT'}  ${name}: ${detail}`)
    const advice = `Put back the last good copy: tallyplate restore <copy> --file "${desk.databaseFile}".`
    return {
      value: found,
      text: [...lines, ...(found.ok ? [] : [advice])].join('\n'),
      needsPerson: !found.ok,
    }
  },
}

/** A file too damaged to open is not a failed check: it is what the check found. */
async function verifyEvenDamaged({ reply }: Desk): Promise<Output<'database.verify'>> {
  const checked = await reply('database.verify', {})
  // The reply is to this very request, so its value is that request's output.
  if (checked.ok) return checked.value as Output<'database.verify'>
  if (checked.problem.code !== 'database-damaged') throw new Refusal(checked.problem)
  return { ok: false, checks: [{ name: 'pages and indexes', ok: false, detail: checked.problem.why }] }
}
