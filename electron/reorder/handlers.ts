import type { HandlersOf } from '../requests/handlers.ts'
import type { Shop } from '../requests/shop.ts'
import { changeSettings, markOneOff, setShelfLimit } from './handle-settings.ts'
import { listLevels } from './list-levels.ts'
import { readReorderSettings } from './plan-queries.ts'
import type { PlanningShop } from './plan-stock.ts'
import { playLastYear } from './play-last-year.ts'
import { readPart } from './read-part.ts'

export function reorderHandlers(shop: Shop & PlanningShop): HandlersOf<'reorder'> {
  return {
    'reorder.list-levels': asked => listLevels(shop, asked),
    'reorder.play-last-year': (asked, task) => playLastYear(shop, asked, task),
    'reorder.read-settings': () => readReorderSettings(shop.database),
    'reorder.change-settings': changes => changeSettings(shop, changes),
    'reorder.read-part': asked => readPart(shop, asked),
    'reorder.set-shelf-limit': limit => setShelfLimit(shop, limit),
    'reorder.mark-one-off': mark => markOneOff(shop, mark),
  }
}
