import { firstDoor, firstSensors } from '@sillsight/document'
import { called } from '@sillsight/report'
import { lazy, Suspense, useMemo, useState } from 'react'
import { Link, useLocation } from 'wouter'
import { hardly, USUAL_MM } from '../entry/doubts.ts'
import { isPlainMm, shownFigure } from '../entry/kinds.ts'
import { Sentence } from '../entry/sentence.tsx'
import { WordsHere } from '../help/words-here.tsx'
import { Icon } from '../look/icons.tsx'
import { doors } from '../store/doors.ts'
import { useReader } from '../words/reader.ts'
import { useWords } from '../words/words.ts'
import { type BegunDoor, begunDoor, forgetBegun, keepBegun, LENGTHS, type LengthName } from './begun-door.ts'
import { SettingsButton } from './settings.tsx'

const Pad = lazy(() => import('../entry/pad.tsx').then(({ Pad }) => ({ default: Pad })))

/** A first door from six values: an undimensioned sketch whose dimensions are what to take. */
export function NewDoorScreen() {
  const words = useWords()
  const [, go] = useLocation()
  const sensors = useMemo(firstSensors, [])
  const [begun, setBegun] = useState(begunDoor)
  const { lengths, name, side } = begun
  const sensor = (sensors.find(({ id }) => id === begun.sensor) ?? sensors[0])?.id ?? ''
  const begin = (more: Partial<BegunDoor>) => {
    const now = { ...begun, ...more }
    keepBegun(now) // before it is shown: what stands on the screen is there again tomorrow
    setBegun(now)
  }
  const [open, setOpen] = useState<LengthName>()
  const [refused, setRefused] = useState<string>()
  const reader = useReader()
  const show = (mm: number) => shownFigure(mm, 'length', reader)
  const labels: Readonly<Record<LengthName, readonly [label: string, hint: string]>> = {
    width: [words.first.width, words.first.widthHint],
    height: [words.first.height, words.first.heightHint],
    mounting: [words.first.mounting, words.first.mountingHint],
    offset: [words.first.offset, words.first.offsetHint],
  }
  const usual = {
    width: USUAL_MM.openingWidth,
    height: USUAL_MM.openingHeight,
    mounting: USUAL_MM.mountingHeight,
    offset: USUAL_MM.offset,
  }
  const left = LENGTHS.filter((length) => lengths[length] === undefined)
  const judge = async () => {
    const { width, height, mounting, offset } = lengths
    if (!width || !height || !mounting || !offset) return
    const sideName = side.trim() || words.first.thisSide
    const made = firstDoor(
      name.trim() || words.first.title,
      { width, height, side: sideName, sensor, mountingHeight: mounting, offset },
      { otherSide: words.first.otherSide, offeredBy: 'nobody' },
    )
    if (!made.ok) {
      setRefused(made.issues.map(({ path, expected, got }) => `${path}: ${expected}, ${got}`).join('; '))
      return
    }
    const asTyped = { mountingHeight_mm: mounting.typed, offset_mm: offset.typed }
    const door = await doors.make(
      made.document,
      { deed: 'made', name: made.document.name ?? '' },
      Object.fromEntries(
        Object.entries(asTyped)
          .filter(([, typed]) => !isPlainMm(typed))
          .map(([key, typed]) => [`sensors/0/${key}`, typed]),
      ),
    )
    await door.settled()
    if (door.snapshot().saving.kind === 'saved') forgetBegun() // a door that could not be written is made again from them
    go(`/door/${door.id}/judge`)
  }
  const dimension = (length: LengthName) => {
    const value = lengths[length]
    return (
      <button type="button" className="first-figure" data-missing={value === undefined || undefined} onClick={() => setOpen(length)}>
        <span className="first-label">{labels[length][0]}</span>
        <strong>{value ? show(value.mm) : '?'}</strong>
        <span className="quiet">{value && value.typed !== String(value.mm) ? value.typed : labels[length][1]}</span>
      </button>
    )
  }
  return (
    <main className="first">
      <header className="doors-head">
        <Link href="/" className="head-back" aria-label={words.backToDoors}>
          <Icon name="back" />
        </Link>
        <div>
          <h1>{words.first.title}</h1>
          <p>{words.first.lead}</p>
        </div>
        <WordsHere />
        <SettingsButton />
      </header>
      <div className="first-sheet">
        <Sketch />
        <div className="first-figures">
          {LENGTHS.map((length) => (
            <div key={length}>{dimension(length)}</div>
          ))}
        </div>
      </div>
      <section className="first-words">
        <p>
          <Sentence
            text={words.first.words}
            figures={{
              sensor: (
                <select
                  className="choose"
                  aria-label={words.first.sensor}
                  value={sensor}
                  onChange={(event) => begin({ sensor: event.target.value })}
                >
                  {sensors.map((each) => (
                    <option key={each.id} value={each.id}>
                      {called(each.name, reader)}
                    </option>
                  ))}
                </select>
              ),
              side: (
                <Line
                  label={words.first.side}
                  hint={words.first.sideHint}
                  maxLength={40}
                  value={side}
                  onChange={(written) => begin({ side: written })}
                />
              ),
              name: (
                <Line
                  label={words.first.name}
                  hint={words.first.title}
                  maxLength={200}
                  value={name}
                  onChange={(written) => begin({ name: written })}
                />
              ),
            }}
          />
        </p>
        <p className="quiet">{words.first.sensorHint}</p>
      </section>
      {refused !== undefined && (
        <p className="entry-doubt" role="alert">
          {refused}
        </p>
      )}
      <div className="first-go">
        {left.length > 0 ? (
          <button type="button" className="primary" onClick={() => setOpen(left[0])}>
            {labels[left[0] ?? 'width'][0]}
            <span> · {words.first.left(left.length)}</span>
          </button>
        ) : (
          <button type="button" className="primary" onClick={judge}>
            {words.first.go}
          </button>
        )}
      </div>
      {open && (
        <Suspense fallback={null}>
          <Pad
            onClose={() => setOpen(undefined)}
            asked={{
              label: labels[open][0],
              hint: labels[open][1],
              kind: 'length',
              value: lengths[open]?.mm,
              typed: lengths[open]?.typed,
              question: hardly(words, usual[open], show),
              onEnter: (mm, typed) => begin({ lengths: { ...lengths, [open]: { mm, typed } } }),
            }}
          />
        </Suspense>
      )}
    </main>
  )
}

interface LineProps {
  readonly label: string
  /** Stands there while nothing is written. */
  readonly hint: string
  readonly maxLength: number
  readonly value: string
  readonly onChange: (value: string) => void
}

/** A name written in a sentence: one line, however many it takes to show it. */
function Line({ label, hint, maxLength, value, onChange }: LineProps) {
  return (
    <textarea
      className="name"
      rows={1}
      aria-label={label}
      placeholder={hint}
      maxLength={maxLength}
      value={value}
      onChange={(event) => onChange(event.target.value.replaceAll(/\s*\n\s*/g, ' '))}
      onKeyDown={(event) => event.key === 'Enter' && event.preventDefault()}
    />
  )
}

/** A doorway without figures: what the four lengths are, before anybody reads a word. */
function Sketch() {
  return (
    <svg className="sketch" viewBox="0 0 240 190" aria-hidden="true">
      <path className="s-wall" d="M20 20h200v150h-30V52H50v118H20z" />
      <path className="s-line" d="M50 170V52h140v118" />
      <path className="s-help" d="M6 170h228" />
      <rect className="s-ink" x="113" y="40" width="14" height="8" />
      <path className="s-help" d="M120 48L60 170M120 48L90 170M120 48L120 170M120 48L150 170M120 48L180 170" />
      <path className="s-dim" d="M50 180h140M46 184l8-8M186 184l8-8" />
      <path className="s-dim" d="M204 52v118M200 56l8-8M200 174l8-8" />
      <path className="s-dim" d="M34 44v126M30 48l8-8M30 174l8-8" />
      <path className="s-dim" d="M113 32h14M109 36l8-8M123 36l8-8" />
    </svg>
  )
}
