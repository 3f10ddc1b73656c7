import { lazy, Suspense, useRef, useState } from 'react'
import { Icon } from '../look/icons.tsx'
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
        <Icon name="settings" />
      </button>
      {open && (
        <Suspense fallback={null}>
          <SettingsPanel button={button} onClose={() => setOpen(false)} />
        </Suspense>
      )}
    </>
  )
}
