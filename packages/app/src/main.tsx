import '@fontsource-variable/atkinson-hyperlegible-next/index.css'
import './look/look.css'
import './look/drawing.css'
import './look/entries.css'
import './look/pad.css'
import './look/doors.css'
import './look/photos.css'
import './look/help.css'
import './look/large-text.css'
import { createRoot } from 'react-dom/client'
import { App } from './app.tsx'
import { keepOffline } from './offline.ts'
import { screenAhead } from './screens/coming.tsx'
import { spokenAhead } from './words/words.ts'

const place = document.getElementById('app')
if (!place) throw new Error('index.html must have an element with the id app, got none')

void start(place)

/** Asks for everything at once and shows it when it is there: each would else be asked for only by the one before it. */
async function start(place: HTMLElement): Promise<void> {
  await Promise.allSettled([screenAhead(location.hash.replace(/^#/, '')), spokenAhead()]) // what fails is said by the screen
  createRoot(place).render(<App />)
  keepOffline()
}
