import './bridge/no-generated-code.ts'
import '@fontsource-variable/atkinson-hyperlegible-mono'
import '@fontsource-variable/atkinson-hyperlegible-next'
import './look/layers.css'
import './look/tokens.css'
import './look/base.css'
import './look/parts.css'
import './look/plate.css'
import './look/models.css'
import './look/card.css'
import './look/order.css'
import './look/lists.css'
import './look/catalogue.css'
import './look/stock.css'
import './look/jobs.css'
import './look/reorder.css'
import './look/goods-in.css'
import './look/faults.css'
import './look/why.css'
import { QueryClient, QueryClientProvider } from '@tanstack/react-query'
import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { App } from './app.tsx'

const queries = new QueryClient({
  defaultOptions: {
    // The engine is on this machine: it answers whether or not there is a network, and asking again without need
    // gives the same problem again.
    queries: { networkMode: 'always', retry: false, staleTime: 5000, refetchOnWindowFocus: false },
  },
})

const page = document.getElementById('page')
if (page === null) throw new Error('index.html has an element called page')
createRoot(page).render(
  <StrictMode>
    <QueryClientProvider client={queries}>
      <App />
    </QueryClientProvider>
  </StrictMode>,
)
