import { Activity, type ComponentType } from 'react'
import { CatalogueScreen } from './catalogue/catalogue-screen.tsx'
import type { NamedScreen } from './components/top-line.tsx'
import { CounterScreen } from './counter/counter-screen.tsx'
import { FaultsScreen } from './faults/faults-screen.tsx'
import { GoodsInScreen } from './goods-in/goods-in-screen.tsx'
import { HandOverContext } from './hand-over.ts'
import { JobsScreen } from './jobs/jobs-screen.tsx'
import { ListsScreen } from './lists/lists-screen.tsx'
import { OrderScreen } from './order-check/order-screen.tsx'
import { ReorderScreen } from './reorder/reorder-screen.tsx'
import { ReturnsScreen } from './returns/returns-screen.tsx'
import { ShelvesScreen } from './shelves/shelves-screen.tsx'
import { StartUpScreen } from './start-up/start-up-screen.tsx'
import { useStartUp } from './start-up/use-start-up.ts'
import { type ScreenName, useScreens } from './use-screens.ts'
import { VansScreen } from './vans/vans-screen.tsx'

/** Shows how far the opening of the shop is, then the screens. */
export function App() {
  const startUp = useStartUp()
  return startUp.state === 'ready' ? <Screens /> : <StartUpScreen startUp={startUp} />
}

const screenOf: Readonly<Record<ScreenName, ComponentType<{ readonly screens: readonly NamedScreen[] }>>> = {
  Counter: CounterScreen,
  'Order check': OrderScreen,
  Shelves: ShelvesScreen,
  Vans: VansScreen,
  Jobs: JobsScreen,
  Returns: ReturnsScreen,
  Reorder: ReorderScreen,
  'Goods-in': GoodsInScreen,
  Faults: FaultsScreen,
  Lists: ListsScreen,
  Catalogue: CatalogueScreen,
}

/** A screen that was left keeps what was typed into it; its keys and fields rest until it shows again. */
function Screens() {
  const { showing, shown, screens, handOver } = useScreens()
  return (
    <HandOverContext value={handOver}>
      {[...shown].map(name => {
        const Screen = screenOf[name]
        return (
          <Activity key={name} mode={name === showing ? 'visible' : 'hidden'}>
            <Screen screens={screens} />
          </Activity>
        )
      })}
    </HandOverContext>
  )
}
