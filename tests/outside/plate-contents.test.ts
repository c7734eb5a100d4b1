import { beforeAll, describe, expect, test } from 'vitest'
import { openTestShop } from '../builders/open-test-shop.ts'

/**
 * What a rating plate must carry: IEC 60335-1:2010 clause 7.1 (from memory): rated voltage or voltage range in volts,
 * nature of supply, rated power input in watts or current in amperes, the maker's or vendor's name or mark, the model
 * or type reference, the symbol for class II where it applies, and the IP number other than IPX0. A whole plate typed
 * at once must lead to its model, with every other mark set aside and none taken for the number.
 */
describe('a whole plate is typed', () => {
  let find: (text: string) => Promise<{ outcome: string; models: string[]; setAside: string[] }>
  beforeAll(async () => {
    const shop = await openTestShop({
      'brands.csv': 'brand\nVelmara\n',
      'models.csv':
        'brand,model_number,appliance_type,volts,hertz,watts\nVelmara,QT-100/1,washer,220-240,50,2200\nVelmara,QT-200/1,washer,220-240,50,2200\n',
    })
    find = async text => {
      const found = await shop.answer('model-lookup.find-models', { text })
      return {
        outcome: found.outcome,
        models: found.candidates.map(({ modelNumber }) => modelNumber),
        setAside: found.setAside.map(({ word }) => word),
      }
    }
  })

  const check = async (text: string, marks: string[]) => {
    const { outcome, models, setAside } = await find(text)
    const [best] = models
    expect({ outcome, best }).toEqual({ outcome: 'exact', best: 'QT-100/1' })
    for (const mark of marks) expect(setAside.join(' ')).toContain(mark)
  }
  test.each([
    ['VELMARA QT-100/1 220-240V~ 50Hz 2200W', ['VELMARA', '220-240V~', '50Hz', '2200W']],
    ['Model QT-100/1 230 V 10 A IPX4', ['Model', 'IPX4']],
    ['Type: QT-100/1  S/N 1420 12345  220-240 V ~ 50 Hz', ['Type', 'S/N']],
  ])('%s', check)
})
