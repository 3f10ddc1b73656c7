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

const place = document.getElementById('app')
if (!place) throw new Error('index.html must have an element with the id app, got none')
createRoot(place).render(<App />)
keepOffline()
