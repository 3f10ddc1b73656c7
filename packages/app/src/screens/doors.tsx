import { type ChangeEvent, lazy, Suspense, useRef, useState, useSyncExternalStore } from 'react'
import { Link, useLocation } from 'wouter'
import { demoDoor, demoDoorNames } from '../demo-doors.ts'
import { handOver } from '../hand-over.ts'
import { TakeTour, TourOffer } from '../help/tour-offer.tsx'
import { useTouring } from '../help/touring.ts'
import { WordsHere } from '../help/words-here.tsx'
import type { DoorCard } from '../store/contract.ts'
import { doors } from '../store/doors.ts'
import { useIssueWords, useWords } from '../words/words.ts'
import { SettingsButton } from './settings.tsx'

const DoorMenu = lazy(() => import('./door-menu.tsx').then(({ DoorMenu }) => ({ default: DoorMenu })))

/** The doors of this device, and the invented ones to look at. */
export function DoorsScreen() {
  const words = useWords()
  const cards = useSyncExternalStore(doors.subscribe, doors.cards)
  const [sought, setSought] = useState('')
  const [told, setTold] = useState<string>()
  const { door: toured } = useTouring()
  const here = cards.filter(({ id, away }) => !away && id !== toured)
  const found = here.filter(({ name, note }) => matches(`${name} ${note}`, sought))
  const away = cards.filter((card) => card.away)
  return (
    <main className="doors">
      <header className="doors-head">
        <div>
          <h1>Sillsight</h1>
          <p>{words.doors.lead}</p>
        </div>
        <SettingsButton />
      </header>
      <TourOffer isFirst={cards.length === 0} />
      <section aria-labelledby="mine">
        <div className="doors-row">
          <h2 id="mine">{words.doors.mine}</h2>
          {here.length > 1 && (
            <input
              type="search"
              className="name"
              aria-label={words.doors.search}
              placeholder={words.doors.search}
              value={sought}
              onChange={(event) => setSought(event.target.value)}
            />
          )}
        </div>
        {here.length === 0 && <p>{words.doors.none}</p>}
        {here.length > 0 && found.length === 0 && <p>{words.doors.nothingFound(sought)}</p>}
        <ul className="door-list">
          {found.map((card) => (
            <DoorItem key={card.id} card={card} />
          ))}
        </ul>
        {told !== undefined && (
          <p className="entry-doubt" role="status">
            {told}
          </p>
        )}
        <div className="row">
          <Link href="/new" className="primary">
            {words.doors.newDoor}
          </Link>
          <Bring onTold={setTold} />
          {here.length > 0 && (
            <button type="button" className="second" onClick={async () => handOver(await doors.backup(), 'sillsight-backup')}>
              {words.doors.backup}
            </button>
          )}
        </div>
        {away.length > 0 && (
          <details>
            <summary>
              {words.doors.away} ({away.length})
            </summary>
            <ul className="door-list">
              {away.map((card) => (
                <DoorItem key={card.id} card={card} />
              ))}
            </ul>
          </details>
        )}
      </section>
      {here.length > 0 && <Keeping />}
      <Demos />
    </main>
  )
}

/** Whether the browser has promised to keep the doors, and what can be done about a door that cannot be read. */
function Keeping() {
  const words = useWords().doors
  const { persistent, private: keepsNothing } = useSyncExternalStore(doors.subscribe, doors.health)
  const damaged = useSyncExternalStore(doors.subscribe, doors.cards).some((card) => card.damaged)
  const [nothing, setNothing] = useState(false)
  const rescue = async () => {
    const bytes = await doors.rescue()
    if (bytes) handOver(bytes, 'sillsight-rescued')
    else setNothing(true)
  }
  if (keepsNothing) return null
  return (
    <section>
      <p>{words.persistence[persistent]}</p>
      {persistent === 'unknown' && (
        <button type="button" className="second" onClick={() => doors.askToPersist()}>
          {words.askToKeep}
        </button>
      )}
      {damaged && (
        <div className="entry-doubt" role="alert">
          <p>{words.damagedNote}</p>
          <button type="button" className="second" onClick={rescue}>
            {words.saveReadable}
          </button>
          {nothing && <p>{words.nothingReadable}</p>}
        </div>
      )}
    </section>
  )
}

function Demos() {
  const words = useWords()
  const { known, door } = useTouring()
  const [, go] = useLocation()
  const open = async (name: string) => {
    const file = await demoDoor(name, (text) => words.demoTexts[text] ?? text)
    const door = await doors.make(file, { deed: 'imported', name: file.name ?? name })
    go(`/door/${door.id}/judge`)
  }
  return (
    <section aria-labelledby="demo">
      <h2 id="demo">{words.doors.demo}</h2>
      <p className="quiet">{words.doors.demoNote}</p>
      <ul className="door-list">
        {demoDoorNames.map((name) => (
          <li key={name}>
            <button type="button" className="door-link" onClick={() => open(name)}>
              {words.demoDoors[name as keyof typeof words.demoDoors] ?? name}
            </button>
          </li>
        ))}
      </ul>
      <div className="row">
        {known && door === undefined && <TakeTour words={words.help.tour.again} />}
        <WordsHere />
      </div>
    </section>
  )
}

function DoorItem({ card }: { readonly card: DoorCard }) {
  const words = useWords()
  const button = useRef<HTMLButtonElement>(null)
  const [open, setOpen] = useState(false)
  return (
    <li>
      <Link href={`/door/${card.id}/judge`} className="door-link">
        <span>{card.name || words.unnamed}</span>
        <span className="quiet">{card.damaged ? words.doors.damaged : card.onlyHere ? words.onlyHere : ''}</span>
      </Link>
      <button
        ref={button}
        type="button"
        className="quiet-button"
        aria-label={words.doors.more(card.name || words.unnamed)}
        aria-expanded={open}
        onClick={() => setOpen(true)}
      >
        <svg viewBox="0 0 20 20" aria-hidden="true">
          <path d="M4 10h.1M10 10h.1M16 10h.1" strokeLinecap="round" strokeWidth="3.4" />
        </svg>
      </button>
      {open && (
        <Suspense fallback={null}>
          <DoorMenu card={card} button={button} onClose={() => setOpen(false)} />
        </Suspense>
      )}
    </li>
  )
}

/** Reads door files, doors with history and backups; says what became of them. */
function Bring({ onTold }: { readonly onTold: (told: string) => void }) {
  const words = useWords()
  const say = useIssueWords()
  const input = useRef<HTMLInputElement>(null)
  const take = async (event: ChangeEvent<HTMLInputElement>) => {
    const told: string[] = []
    for (const file of event.target.files ?? []) {
      const result = await doors.read(new Uint8Array(await file.arrayBuffer()), file.name)
      told.push(
        result.ok ? words.doors.brought(result.doors.length) : `${file.name}: ${words.doors.refused} ${result.issues.map(say).join('; ')}`,
      )
    }
    event.target.value = ''
    onTold(told.join(' '))
  }
  return (
    <>
      <button type="button" className="second" onClick={() => input.current?.click()}>
        {words.doors.bring}
      </button>
      <input ref={input} type="file" multiple hidden accept=".json,.sillsight" aria-label={words.doors.bring} onChange={take} />
    </>
  )
}

function matches(text: string, sought: string): boolean {
  const lower = text.toLocaleLowerCase()
  return sought
    .toLocaleLowerCase()
    .split(/\s+/)
    .every((word) => lower.includes(word))
}
