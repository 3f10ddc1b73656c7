import { lazy, Suspense, useId, useState } from 'react'
import { Button, Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components'
import { Explained } from '../help/explained.tsx'
import { WordsHere } from '../help/words-here.tsx'
import { levelMayBeThere, mayListen } from '../level/listening.ts'
import type { LevelWish } from '../level/wish.ts'
import { Icon } from '../look/icons.tsx'
import { useReader } from '../words/reader.ts'
import { useWords } from '../words/words.ts'
import { type Kind, readFigure, shownFigure } from './kinds.ts'
import { erased, type Key, pressed } from './typing.ts'

/** What is asked for. */
export interface Asked {
  readonly label: string
  /** Where it is measured, in one phrase. */
  readonly hint?: string | undefined
  readonly kind: Kind
  readonly value: number | undefined
  /** As it was typed, where the file keeps the exact value beside it. */
  readonly typed?: string | undefined
  readonly signed?: boolean
  /** How far it may be off, in mm, and where that is kept. */
  readonly tolerance_mm?: number | undefined
  readonly onTolerance?: ((tolerance_mm: number) => void) | undefined
  /** A question about a value that is hardly meant, in place. */
  readonly question?: ((value: number) => string | undefined) | undefined
  readonly onEnter: (value: number, typed: string) => void
  /** Takes the value away; absent where the file needs one. */
  readonly onClear?: (() => void) | undefined
  /** Several are entered one after another: what the key for the next one says, and the one that ends it. */
  readonly series?: { readonly next: string; readonly done: string } | undefined
  /** An angle that the device itself can read where it has the sensor. */
  readonly level?: LevelWish | undefined
}

const Level = lazy(() => import('../level/level.tsx').then(({ Level }) => ({ default: Level })))

const ROWS: readonly (readonly Key[])[] = [
  ['7', '8', '9', 'half', 'ft'],
  ['4', '5', '6', 'quarter', 'in'],
  ['1', '2', '3', 'eighth', 'm'],
]
const FACES: Partial<Record<Key, string>> = { half: '\u00bd', quarter: '\u00bc', eighth: '\u215b', sixteenth: '1/16' }
const TOLERANCES_MM = { metric: [1, 3, 5, 10], 'feet-inches': [25.4 / 16, 25.4 / 8, 25.4 * (3 / 16), 25.4 * (3 / 8)] } as const

/** The number pad: a sheet of its own that takes what a tape says, with the thumb or with a keyboard. */
export function Pad({ asked, onClose }: { readonly asked: Asked; readonly onClose: () => void }) {
  return (
    <ModalOverlay className="pad-veil" isDismissable isOpen onOpenChange={(open) => !open && onClose()}>
      <Modal className="pad">
        <Dialog className="pad-sheet">
          <PadSheet asked={asked} onClose={onClose} />
        </Dialog>
      </Modal>
    </ModalOverlay>
  )
}

function PadSheet({ asked, onClose }: { readonly asked: Asked; readonly onClose: () => void }) {
  const words = useWords()
  const reader = useReader()
  const { units } = reader
  const { label, hint, kind, value, signed = false, question } = asked
  const decimal = words.decimal
  const [text, setText] = useState('')
  const [taken, setTaken] = useState<{ readonly text: string; readonly said: string }>()
  const [level, setLevel] = useState<'closed' | 'open' | 'denied'>('closed')
  const told = useId()
  const read = text === '' ? undefined : readFigure(text, kind, units)
  const outOfSign = read?.ok && !signed && read.value < 0
  const doubt = read?.ok && !outOfSign ? question?.(read.value) : undefined
  /** How a figure came about that was read and not typed. */
  const said = taken?.text === text ? taken.said : undefined
  const enter = () => {
    if (!read?.ok || outOfSign) return
    asked.onEnter(read.value, said === undefined ? text.trim() : `${text} (${said})`)
    if (asked.series) setText('')
    else onClose()
  }
  const press = (key: Key) => setText((now) => pressed(now, key, decimal))
  const head = (
    <div className="pad-head">
      <Heading slot="title">
        <Explained text={label} />
      </Heading>
      <WordsHere />
      <Button className="quiet-button" aria-label={words.pad.close} onPress={onClose}>
        <Icon name="cross" />
      </Button>
    </div>
  )
  if (level === 'open' && asked.level)
    return (
      <>
        {head}
        <Suspense fallback={null}>
          <Level
            wish={asked.level}
            kind={kind}
            onBack={() => setLevel('closed')}
            onTake={(figure, how) => {
              setText(figure)
              setTaken({ text: figure, said: how })
              setLevel('closed')
            }}
          />
        </Suspense>
      </>
    )
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault()
        enter()
      }}
    >
      {head}
      {hint !== undefined && (
        <p className="pad-hint">
          <Explained text={hint} />
        </p>
      )}
      <div className="pad-figure">
        {signed && (
          <Button
            className="pad-sign"
            aria-label={words.pad.sign}
            onPress={() => setText((now) => (/^[-\u2212]/.test(now) ? now.slice(1) : `-${now}`))}
          >
            ±
          </Button>
        )}
        <input
          // biome-ignore lint/a11y/noAutofocus: the pad is opened to type
          autoFocus
          inputMode="none"
          autoComplete="off"
          spellCheck={false}
          maxLength={40}
          aria-label={label}
          aria-describedby={told}
          placeholder={value === undefined ? '\u2013' : shownFigure(value, kind, reader)}
          value={text}
          onChange={(event) => setText(event.target.value)}
        />
      </div>
      <p className="pad-told" id={told} role="status">
        {read === undefined
          ? asked.typed !== undefined
            ? words.pad.wasTyped(asked.typed)
            : words.pad.example[kind === 'length' ? units : 'number']
          : !read.ok
            ? words.pad.notUnderstood(kind === 'length' ? words.pad.example[units] : words.pad.example.number)
            : outOfSign
              ? words.pad.notNegative
              : said !== undefined
                ? said
                : kind === 'length'
                  ? words.pad.exactly(`${String(Math.round(read.value * 1000) / 1000).replace('.', decimal)} mm`)
                  : ''}
      </p>
      {asked.level && levelMayBeThere() && (
        <div className="pad-level">
          <button type="button" className="second" onClick={async () => setLevel((await mayListen()) ? 'open' : 'denied')}>
            {words.level.open}
          </button>
          {level === 'denied' && <p role="alert">{words.level.denied}</p>}
        </div>
      )}
      {asked.onTolerance && (
        <fieldset className="pad-tolerance">
          <legend>{words.pad.goodTo}</legend>
          <div className="switch">
            {TOLERANCES_MM[units].map((tolerance_mm) => (
              <button
                key={tolerance_mm}
                type="button"
                aria-pressed={Math.abs((asked.tolerance_mm ?? -1) - tolerance_mm) < 0.01}
                onClick={() => asked.onTolerance?.(tolerance_mm)}
              >
                ± {shownFigure(tolerance_mm, 'length', reader)}
              </button>
            ))}
          </div>
        </fieldset>
      )}
      {doubt !== undefined && <p className="pad-doubt">{doubt}</p>}
      <div className="pad-keys" role="group" aria-label={words.pad.keys} data-plain={kind === 'length' ? undefined : true}>
        {ROWS.flatMap((row) => row.map((key) => <PadKey key={key} name={key} kind={kind} onPress={press} />))}
        <Button excludeFromTabOrder aria-label={words.pad.erase} onPress={() => setText(erased)}>
          <svg viewBox="0 0 24 20" aria-hidden="true">
            <path d="M8 3h14v14H8l-6-7zM11.5 7l6 6M17.5 7l-6 6" />
          </svg>
        </Button>
        <PadKey name="0" kind={kind} onPress={press} />
        <Button excludeFromTabOrder aria-label={words.pad.point} onPress={() => press('point')}>
          {decimal}
        </Button>
        <PadKey name="sixteenth" kind={kind} onPress={press} />
        <PadKey name="mm" kind={kind} onPress={press} />
      </div>
      <div className="pad-done">
        {asked.series && (
          <Button
            className="second"
            onPress={() => {
              enter()
              onClose()
            }}
          >
            {asked.series.done}
          </Button>
        )}
        {asked.onClear && value !== undefined && (
          <Button
            className="second"
            onPress={() => {
              asked.onClear?.()
              onClose()
            }}
          >
            {words.pad.clear}
          </Button>
        )}
        <Button type="submit" className="primary" isDisabled={!read?.ok || outOfSign === true}>
          {doubt !== undefined ? words.pad.enterAnyway : (asked.series?.next ?? words.pad.enter)}
        </Button>
      </div>
    </form>
  )
}

/** The keys take no focus: a keyboard types into the field itself. */
function PadKey({ name, kind, onPress }: { readonly name: Key; readonly kind: Kind; readonly onPress: (key: Key) => void }) {
  const words = useWords()
  const forLengths = !/^\d$/.test(name)
  if (forLengths && kind !== 'length') return null
  const face = FACES[name] ?? name
  const called = name in words.pad.keyNames ? words.pad.keyNames[name as keyof typeof words.pad.keyNames] : undefined
  const unit = name === 'ft' || name === 'in' || name === 'm' || name === 'mm'
  return (
    <Button
      excludeFromTabOrder
      className={unit ? 'pad-unit' : 'pad-key'}
      aria-label={called === undefined ? name : /^[\w/]+$/.test(face) ? `${face}, ${called}` : called} // what is read aloud holds what is seen
      onPress={() => onPress(name)}
    >
      {face}
    </Button>
  )
}
