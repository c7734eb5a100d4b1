import { useQuery } from '@tanstack/react-query'
import { useEffect, useRef, useState } from 'react'
import { initials as someInitials } from '../../shared-schemas/initials.ts'
import { ask } from '../bridge/client.ts'
import { type NamedScreen, TopLine } from '../components/top-line.tsx'
import { ListOptions } from './list-options.tsx'
import { LoadsSoFar } from './loads-so-far.tsx'
import { type ChosenList, PathField } from './path-field.tsx'
import { RunProgress } from './run-progress.tsx'
import { RunReport } from './run-report.tsx'
import { SupplierFile } from './supplier/supplier-list.tsx'
import { useSupplierList } from './supplier/use-supplier-list.ts'
import { type AskedList, useListRun } from './use-list-run.ts'
import { useListsKeys } from './use-lists-keys.ts'
import { addCounts, wordOutcome } from './word-figures.ts'

/** The catalogue keeper's screen: a list is looked at, tried and loaded, and what was loaded can be undone. */
export function ListsScreen({ screens }: { readonly screens: readonly NamedScreen[] }) {
  const [typed, setTyped] = useState('')
  const [chosen, setChosen] = useState<ChosenList | null>(null)
  const [isEdition, setEdition] = useState(false)
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
    const missing = asked === null ? wordMissing : findMissing(asked, run.isTriedAsItStands, initials)
    setMissing(missing)
    if (missing === undefined && asked !== null && !run.isRunning) run.load.mutate({ list: asked, initials })
  }
  const toField = () => {
    field.current?.focus()
    field.current?.select()
  }
  useListsKeys({
    onField: toField,
    onLoads: () => setShowsLoads(true),
    onTry: () => tryOut(asked),
    onLoad: load,
  })
  useEffect(() => {
    field.current?.focus()
    field.current?.select()
  }, [])
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
            <LoadsSoFar />
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

/** What is still wanted before the list can be loaded. */
function findMissing(asked: AskedList, isTried: boolean, initials: string): string | undefined {
  if (!isTried) return 'See what it would do first: F9 does a dry run of it as it stands.'
  if (asked.trialLayout !== undefined)
    return 'Save the match under a name first: a list is loaded by a saved layout, so that it can be told later.'
  if (!someInitials.safeParse(initials).success) return 'Sign with your initials: one to six letters.'
  return undefined
}
