import type { HandlersOf } from '../requests/handlers.ts'
import { listLevels } from './list-levels.ts'
import type { PlanningShop } from './plan-stock.ts'

export function reorderHandlers(shop: PlanningShop): HandlersOf<'reorder'> {
  return {
    'reorder.list-levels': asked => listLevels(shop, asked),
  }
}
