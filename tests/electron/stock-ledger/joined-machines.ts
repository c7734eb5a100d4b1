import path from 'node:path'
import type { TestShop } from '../../builders/open-test-shop.ts'
import { ledgerCatalogue } from './ledger-catalogue.ts'

/** The parts and places of the ledger's own tests, with an appliance for jobs and returns to be about. */
export const joinedCatalogue = {
  ...ledgerCatalogue,
  'brands.csv': 'brand\nQuorvane\n',
  'models.csv': 'brand,model_number\nQuorvane,QV-1042/A\nQuorvane,QV-1042/B\n',
  'fitments.csv': 'says,part_number,brand,model_number,source\nincludes,480121,Quorvane,QV-1042/A,list\n',
}

/** Has one machine take in what another has, by a file in this folder. */
export async function carry(from: TestShop, to: TestShop, folder: string) {
  const file = path.join(folder, `${Math.random().toString(36).slice(2)}.ledger`)
  await from.answer('stock-ledger.export-ledger', { file })
  return to.answer('stock-ledger.import-ledger', { file })
}

/** All that a machine holds of what is joined, whatever the order in which it came there. */
export async function contentsOf(shop: TestShop) {
  const { rows } = await shop.answer('stock-ledger.list-on-hand', {})
  const { reservations } = await shop.answer('stock-ledger.list-reservations', {})
  const { counts } = await shop.answer('van-counts.list-counts', {})
  const sheets = []
  for (const { countId } of counts)
    sheets.push(await shop.answer('van-counts.read-count', { countId, compare: true }))
  const { jobs } = await shop.answer('jobs.list-jobs', { state: 'all', most: 500 })
  const told = []
  for (const { job } of jobs) told.push(await shop.answer('jobs.read-job', { job }))
  const { returns } = await shop.answer('returns.list-returns', { state: 'all', most: 500 })
  const finished = await shop.answer('jobs.list-finished-jobs', {})
  const { conflicts } = await shop.answer('stock-ledger.list-conflicts', {})
  const codes = []
  for (const code of ['BAG-1', 'BAG-2'])
    codes.push((await shop.answer('stock-ledger.find-code', { code })).found)
  const fit = await shop.answer('fit-check.judge-fit', { model: 'QV-1042/A', part: '480121' })
  return { rows, reservations, counts, sheets, jobs, told, returns, finished, conflicts, codes, fit }
}
