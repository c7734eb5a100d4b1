import type { Problem } from '../../../shared-schemas/problem.ts'

/** 0 done; 1 done, and a person must look; 2 wrong use or bad input, nothing changed; 3 a defect. */
export type ExitCode = 0 | 1 | 2 | 3

/** What a script is told of a problem: the question was refused (1), something handed in is wrong (2), or we are (3). */
export function exitCodeOf(code: Problem['code']): ExitCode {
  switch (code) {
    case 'unexpected':
    case 'program-not-running':
    case 'page-not-admitted':
    case 'still-starting':
      return 3
    case 'plate-text-too-short':
    case 'brand-not-found':
    case 'part-not-found':
    case 'location-not-found':
    case 'reading-unreadable':
    case 'reading-needs-more':
    case 'model-not-settled':
    case 'record-not-found':
    case 'record-not-open':
    case 'correction-not-standing':
    case 'rows-rejected':
    case 'no-such-movement':
    case 'reference-needed':
    case 'not-enough-on-hand':
    case 'kept-for-others':
    case 'movement-not-found':
    case 'movement-is-reversal':
    case 'movement-reversed-already':
    case 'movement-stands':
    case 'movement-told-otherwise':
    case 'reservation-not-open':
    case 'count-not-found':
    case 'count-posted-already':
    case 'location-not-van':
    case 'nothing-counted':
    case 'reading-not-last':
    case 'code-not-attachable':
    case 'code-of-another-part':
    case 'job-not-found':
    case 'job-exists':
    case 'job-ended':
    case 'job-open':
    case 'job-without-van':
    case 'part-or-family':
    case 'family-not-found':
    case 'not-in-hand':
    case 'not-fitted':
    case 'parts-left-in-hand':
    case 'why-needed':
    case 'return-not-found':
    case 'return-decided':
    case 'return-has-fewer':
    case 'shelf-needed':
    case 'quarantine-needed':
    case 'appliance-needed':
    case 'ledger-names-unknown':
    case 'load-stopped':
    case 'load-not-found':
    case 'load-undone-already':
    case 'load-is-undoing':
    case 'load-built-upon':
    case 'sheet-not-found':
    case 'sheet-state-forbids':
    case 'sheet-not-exportable':
    case 'price-not-known':
    case 'stop-not-found':
    case 'stop-not-overridable':
    case 'symptom-not-in-guide':
    case 'check-not-in-guide':
    case 'outcome-not-of-check':
      return 1
    case 'malformed':
    case 'unknown-request':
    case 'nothing-used-for':
    case 'supplier-not-found':
    case 'file-unreadable':
    case 'file-not-of-catalogue':
    case 'wrong-header':
    case 'encoding-not-certain':
    case 'separator-not-certain':
    case 'sheet-not-settled':
    case 'layout-not-found':
    case 'layout-exists':
    case 'layout-misfit':
    case 'layout-wrong':
    case 'nothing-to-load':
    case 'database-from-newer-program':
    case 'database-damaged':
    case 'database-not-ours':
    case 'database-unopenable':
    case 'database-busy':
    case 'database-absent':
    case 'database-in-use':
    case 'copy-not-sound':
    case 'file-exists':
    case 'folder-unwritable':
    case 'port-busy':
    case 'already-running':
      return 2
  }
}
