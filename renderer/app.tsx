import { Activity } from 'react'
import { CatalogueScreen } from './catalogue/catalogue-screen.tsx'
import { CounterScreen } from './counter/counter-screen.tsx'
import { FaultsScreen } from './faults/faults-screen.tsx'
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

/** A screen that was left keeps what was typed into it; its keys and fields rest until it shows again. */
function Screens() {
  const { showing, shown, screens, handOver } = useScreens()
  const modeOf = (name: ScreenName) => (name === showing ? 'visible' : 'hidden')
  return (
    <HandOverContext value={handOver}>
      <Activity mode={modeOf('Counter')}>
        <CounterScreen screens={screens} />
      </Activity>
      {shown.has('Order check') && (
        <Activity mode={modeOf('Order check')}>
          <OrderScreen screens={screens} />
        </Activity>
      )}
      {shown.has('Lists') && (
        <Activity mode={modeOf('Lists')}>
          <ListsScreen screens={screens} />
        </Activity>
      )}
      {shown.has('Catalogue') && (
        <Activity mode={modeOf('Catalogue')}>
          <CatalogueScreen screens={screens} />
        </Activity>
      )}
      {shown.has('Shelves') && (
        <Activity mode={modeOf('Shelves')}>
          <ShelvesScreen screens={screens} />
        </Activity>
      )}
      {shown.has('Jobs') && (
        <Activity mode={modeOf('Jobs')}>
          <JobsScreen screens={screens} />
        </Activity>
      )}
      {shown.has('Returns') && (
        <Activity mode={modeOf('Returns')}>
          <ReturnsScreen screens={screens} />
        </Activity>
      )}
      {shown.has('Reorder') && (
        <Activity mode={modeOf('Reorder')}>
          <ReorderScreen screens={screens} />
        </Activity>
      )}
      {shown.has('Vans') && (
        <Activity mode={modeOf('Vans')}>
          <VansScreen screens={screens} />
        </Activity>
      )}
      {shown.has('Faults') && (
        <Activity mode={modeOf('Faults')}>
          <FaultsScreen screens={screens} />
        </Activity>
      )}
    </HandOverContext>
  )
}
