import type { RefObject } from 'react'
import { Dialog, Popover, Radio, RadioGroup } from 'react-aria-components'
import { type Preferences, setPreferences, usePreferences } from '../preferences.ts'
import { useWords } from '../words/words.ts'

interface Props {
  readonly button: RefObject<HTMLButtonElement | null>
  readonly onClose: () => void
}

/** Theme, units and language of this device. */
export function SettingsPanel({ button, onClose }: Props) {
  const words = useWords()
  const { theme, units, language } = usePreferences()
  return (
    <Popover className="popover" placement="bottom end" triggerRef={button} isOpen onOpenChange={(open) => !open && onClose()}>
      <Dialog aria-label={words.settings.title}>
        <Choice<Preferences['theme']>
          label={words.settings.theme}
          value={theme}
          options={words.settings.themes}
          onChange={(chosen) => setPreferences({ theme: chosen })}
        />
        <Choice<Preferences['units']>
          label={words.settings.units}
          value={units}
          options={words.settings.unitNames}
          onChange={(chosen) => setPreferences({ units: chosen })}
        />
        <Choice<Preferences['language']>
          label={words.settings.language}
          value={language}
          options={words.settings.languages}
          onChange={(chosen) => setPreferences({ language: chosen })}
        />
      </Dialog>
    </Popover>
  )
}

/** One of a few words, as a row of buttons. */
function Choice<T extends string>(props: {
  readonly label: string
  readonly value: T | undefined
  readonly options: Readonly<Record<T, string>>
  readonly onChange: (chosen: T) => void
}) {
  const { label, value, options, onChange } = props
  return (
    <RadioGroup
      className="choice"
      aria-label={label}
      value={value ?? null}
      onChange={(chosen) => onChange(chosen as T)}
      orientation="horizontal"
    >
      <span className="choice-label" aria-hidden="true">
        {label}
      </span>
      <div className="switch">
        {(Object.entries(options) as [T, string][]).map(([key, word]) => (
          <Radio key={key} value={key}>
            {word}
          </Radio>
        ))}
      </div>
    </RadioGroup>
  )
}
