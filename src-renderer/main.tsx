import './first-thing.ts'
import '@mantine/core/styles.layer.css'
import './tokens.css'
import { MantineProvider } from '@mantine/core'
import { QueryClient, QueryClientProvider } from '@tanstack/react-query'
import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { Router } from 'wouter'
import { useHashLocation } from 'wouter/use-hash-location'
import { App } from './app.tsx'
import { schemeVariables, theme } from './theme.ts'

const queries = new QueryClient({
  defaultOptions: {
    queries: { networkMode: 'always', retry: false, refetchOnWindowFocus: false },
    mutations: { networkMode: 'always', retry: false },
  },
})

const root = document.getElementById('root')
if (root === null) throw new Error('The page has no root element')
createRoot(root).render(
  <StrictMode>
    <MantineProvider theme={theme} cssVariablesResolver={schemeVariables} defaultColorScheme="auto">
      <QueryClientProvider client={queries}>
        <Router hook={useHashLocation}>
          <App />
        </Router>
      </QueryClientProvider>
    </MantineProvider>
  </StrictMode>,
)
