import { createRoot } from 'react-dom/client'
import { App } from './app.tsx'

/** Shows the app in an element of the page, for as long as the page is there. */
export function show(place: HTMLElement): void {
  createRoot(place).render(<App />)
}
