import { expect, test } from 'vitest'
import { openTestShop } from '../../builders/open-test-shop.ts'
import { smallCatalogue } from '../../builders/small-catalogue.ts'

async function openShop(changed: Readonly<Record<string, string>> = {}) {
  const shop = await openTestShop()
  await shop.load({ ...smallCatalogue, ...changed })
  return shop
}

test('notes come in the order of the work, each family once and as it was asked', async () => {
  const shop = await openShop()
  const families = ['door-lock', 'drain-pump', 'door-lock', 'unheard-of']
  const told = await shop.answer('fault-guide.list-fitting-notes', { families })
  expect(told.families).toEqual([
    {
      family: 'door-lock',
      name: 'Door lock',
      safetyDevice: true,
      licensedFor: null,
      notes: [
        {
          stage: 'fitting',
          note: 'Seat the seal dry and check it all round.',
          source: 'common practice',
        },
      ],
    },
    {
      family: 'drain-pump',
      name: 'Drain pump',
      safetyDevice: false,
      licensedFor: null,
      notes: [
        expect.objectContaining({ stage: 'fitting' }),
        { stage: 'test', note: 'Watch the first run for leaks.', source: null },
      ],
    },
  ])
  shop.close()
})

test('a family that becomes licensed work has no notes from then on', async () => {
  const shop = await openShop()
  await shop.load({ 'families.csv': smallCatalogue['families.csv'].replace('mains|water|moving', 'gas') })
  const { families } = await shop.answer('fault-guide.list-fitting-notes', { families: ['drain-pump'] })
  expect(families).toMatchObject([{ family: 'drain-pump', licensedFor: 'gas', notes: [] }])
  shop.close()
})
