import { useQuery } from '@tanstack/react-query'
import { useEffect, useRef, useState } from 'react'
import { initials as someInitials } from '../../shared-schemas/initials.ts'
import { ask } from '../bridge/client.ts'
import { focusAndSelect } from '../components/focus-and-select.ts'
import { type NamedScreen, TopLine } from '../components/top-line.tsx'
import { useScreenKeys } from '../components/use-screen-keys.ts'
import { ListOptions } from './list-options.tsx'
import { LoadsSoFar } from './loads-so-far.tsx'
import { type ChosenList, PathField } from './path-field.tsx'
import { RunProgress } from './run-progress.tsx'
import { RunReport } from './run-report.tsx'
import { SavedLayouts } from './saved-layouts.tsx'
import { SupplierFile } from './supplier/supplier-list.tsx'
import { useSupplierList } from './supplier/use-supplier-list.ts'
import { type AskedList, type ListRun, useListRun } from './use-list-run.ts'
import { addCounts, wordOutcome, wordRows } from './word-figures.ts'

/** The catalogue keeper's screen: a list is looked at, tried and loaded, and what was loaded can be undone. */
export function ListsScreen({ screens }: { readonly screens: readonly NamedScreen[] }) {
  const [typed, setTyped] = useState('')
  const [chosen, setChosen] = useState<ChosenList | null>(null)
  const [isEdition, setEdition] = useState(false)
  const [isStrict, setStrict] = useState(false)
  const [initials, setInitials] = useState('')
  const [showsLoads, setShowsLoads] = useState(true)
  const [missing, setMissing] = useState<string>()
  const field = useRef<HTMLInputElement>(null)
  const supplierPath = chosen?.kind === 'supplier' ? chosen.path : null
  const supplier = useSupplierList(supplierPath)
  const given = chosen === null ? null : { path: chosen.path, edition: isEdition }
  const asked = given === null || supplierPath === null ? given : supplier.ask(given)
  const likenessOf = ({ path, edition }: AskedList) =>
    JSON.stringify([path, edition, path === supplierPath && supplier.likeness])
  const run = useListRun(asked === null ? '' : likenessOf(asked))
  const summary = useQuery({
    queryKey: ['catalogue.read-summary'],
    queryFn: () => ask('catalogue.read-summary', {}),
    staleTime: Number.POSITIVE_INFINITY,
  })
  const wordMissing =
    supplierPath === null
      ? 'Name the list first: a folder of catalogue files, or one file.'
      : (supplier.missing ?? 'The file is not read yet.')
  const tryOut = (list: AskedList | null) => {
    setMissing(list === null ? wordMissing : undefined)
    if (list === null || run.isRunning) return
    run.forget()
    setShowsLoads(false)
    // What it says stands at the top, above a match that may be long.
    window.scrollTo({ top: 0 })
    run.trial.mutate({ list, likeness: likenessOf(list) })
  }
  const take = (taken: ChosenList) => {
    setChosen(taken)
    setMissing(undefined)
    run.forget()
    supplier.restart()
    setShowsLoads(false)
    if (taken.kind === 'catalogue') tryOut({ path: taken.path, edition: isEdition })
  }
  const load = () => {
    const missing = asked === null ? wordMissing : findMissing(asked, { run, isStrict, initials })
    setMissing(missing)
    if (missing === undefined && asked !== null && !run.isRunning)
      run.load.mutate({ list: asked, strict: isStrict, initials })
  }
  useScreenKeys({
    Escape: () => focusAndSelect(field.current),
    F2: () => setShowsLoads(true),
    F6: () => document.getElementById('take-proposals')?.click(),
    F8: () => document.getElementById('save-rejected')?.click(),
    F9: () => tryOut(asked),
    F10: load,
  })
  useEffect(() => focusAndSelect(field.current), [])
  const told = run.isRunning ? undefined : (run.load.data ?? run.trial.data)
  const shop = summary.data?.locations.find(({ kind }) => kind === 'shop')?.name ?? 'Tallyplate'
  return (
    <div className="counter">
      <TopLine screens={screens} shop={shop} />
      <main className="order-bench lists">
        <h1 className="unseen">Lists</h1>
        <section className="lists__given" aria-label="The list to load">
          <PathField field={field} typed={typed} onType={setTyped} onTake={take} />
          <ListOptions
            run={run}
            isEdition={isEdition}
            onEdition={setEdition}
            isStrict={isStrict}
            onStrict={setStrict}
            initials={initials}
            onInitials={setInitials}
            missing={missing}
            onTry={() => tryOut(asked)}
            onLoad={load}
            onShowLoads={() => setShowsLoads(true)}
          />
        </section>
        <div className="lists__found">
          <RunProgress isRunning={run.trial.isPending} what="Dry run" />
          <RunProgress isRunning={run.load.isPending} what="Loading" />
          {showsLoads ? (
            <>
              <LoadsSoFar />
              <SavedLayouts />
            </>
          ) : (
            <>
              <RunReport
                key={run.trial.submittedAt}
                run={run}
                asked={asked}
                onShowLoads={() => setShowsLoads(true)}
              />
              {supplierPath !== null && <SupplierFile list={supplier} initials={initials} />}
            </>
          )}
        </div>
        <p className="unseen" role="status">
          {told === undefined ? '' : wordOutcome(addCounts(told.files), told.dryRun)}
        </p>
      </main>
    </div>
  )
}

interface Readiness {
  readonly run: ListRun
  readonly isStrict: boolean
  readonly initials: string
}

/** What is still wanted before the list can be loaded. */
function findMissing(asked: AskedList, { run, isStrict, initials }: Readiness): string | undefined {
  if (!run.isTriedAsItStands) return 'See what it would do first: F9 does a dry run of it as it stands.'
  if (asked.trialLayout !== undefined)
    return 'Save the match under a name first: a list is loaded by a saved layout, so that it can be told later.'
  const rejected = run.trial.data?.rejected.length ?? 0
  if (isStrict && rejected > 0)
    return `${wordRows(rejected)} rejected, and it is to be loaded whole or not at all. Mend them, or take “Only if every row is sound” out.`
  if (!someInitials.safeParse(initials).success) return 'Sign with your initials: one to six letters.'
  return undefined
}
