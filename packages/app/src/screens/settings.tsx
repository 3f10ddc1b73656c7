import { lazy, Suspense, useRef, useState } from 'react'
import { useWords } from '../words/words.ts'

const SettingsPanel = lazy(() => import('./settings-panel.tsx').then(({ SettingsPanel }) => ({ default: SettingsPanel })))

/** Opens what this device shows things like; the panel is loaded when somebody asks for it. */
export function SettingsButton() {
  const words = useWords()
  const button = useRef<HTMLButtonElement>(null)
  const [open, setOpen] = useState(false)
  return (
    <>
      <button
        ref={button}
        type="button"
        className="quiet-button"
        aria-label={words.settings.title}
        aria-expanded={open}
        onClick={() => setOpen(true)}
      >
        <svg viewBox="0 0 20 20" aria-hidden="true">
          <path d="M2 5h9M15 5h3M2 15h3M9 15h9M13 2.5v5M7 12.5v5" />
        </svg>
      </button>
      {open && (
        <Suspense fallback={null}>
          <SettingsPanel button={button} onClose={() => setOpen(false)} />
        </Suspense>
      )}
    </>
  )
}
