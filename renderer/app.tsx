import { CounterScreen } from './counter/counter-screen.tsx'
import { StartUpScreen } from './start-up/start-up-screen.tsx'
import { useStartUp } from './start-up/use-start-up.ts'

/** Shows how far the opening of the shop is, then the Counter. */
export function App() {
  const startUp = useStartUp()
  return startUp.state === 'ready' ? <CounterScreen /> : <StartUpScreen startUp={startUp} />
}
