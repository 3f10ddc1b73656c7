import { lazy, Suspense, useEffect, useRef, useState } from 'react'
import { Link } from 'wouter'
import { Icon } from '../look/icons.tsx'
import { PARTS, type Part } from '../parts.ts'
import type { Moment, Saving } from '../store/contract.ts'
import { useWords } from '../words/words.ts'
import { useDoor } from './at-door.ts'
import { SettingsButton } from './settings.tsx'

const History = lazy(() => import('./history.tsx').then(({ History }) => ({ default: History })))

/** The head of every sheet: which door, whether it is saved, undo and redo, and how this device shows things. */
export function Head({ onMoment }: { readonly onMoment: (moment: Moment) => void }) {
  const [history, setHistory] = useState(false)
  const words = useWords()
  const { door, snapshot } = useDoor()
  useUndoKeys(door.undo, door.redo)
  return (
    <header className="head">
      <Link href="/" className="head-back" aria-label={words.backToDoors}>
        <Icon name="back" />
      </Link>
      <div className="head-words">
        <h1 className="head-name">{snapshot.file.name ?? words.unnamed}</h1>
        <p className="head-saved" role="status" data-state={snapshot.saving.kind}>
          {savingWords(snapshot.saving, words)}
          {snapshot.onlyHere && snapshot.saving.kind !== 'not-saved' && <span> · {words.onlyHere}</span>}
        </p>
      </div>
      <div className="head-tools">
        <button
          type="button"
          className="quiet-button"
          data-stop="undo"
          disabled={!snapshot.undo || snapshot.readOnly !== undefined}
          onClick={door.undo}
          aria-label={words.undo}
        >
          <Icon name="undo" />
        </button>
        <button
          type="button"
          className="quiet-button"
          disabled={!snapshot.redo || snapshot.readOnly !== undefined}
          onClick={door.redo}
          aria-label={words.redo}
        >
          <Icon name="redo" />
        </button>
        <button type="button" className="quiet-button" aria-label={words.history.open} onClick={() => setHistory(true)}>
          <Icon name="history" />
        </button>
        <SettingsButton />
        {history && (
          <Suspense fallback={null}>
            <History
              onClose={() => setHistory(false)}
              onMoment={(moment) => {
                setHistory(false)
                onMoment(moment)
              }}
            />
          </Suspense>
        )}
      </div>
    </header>
  )
}

/** The seven parts along one blade. Nothing on it is locked; it can be pulled sideways where it is longer than the screen. */
export function Tape({ part }: { readonly part: Part }) {
  const words = useWords()
  const { door } = useDoor()
  const tape = useRef<HTMLElement>(null)
  const here = useRef<HTMLAnchorElement>(null)
  // biome-ignore lint/correctness/useExhaustiveDependencies: pulled to the part that was chosen
  useEffect(() => {
    const [blade, chosen] = [tape.current, here.current]
    if (!blade || !chosen) return
    const pull = () => {
      const [around, at] = [blade.getBoundingClientRect(), chosen.getBoundingClientRect()]
      blade.scrollLeft += at.left + at.width / 2 - around.left - around.width / 2
    }
    // told at once, and whenever type arrives, text is made larger or the device is turned
    const watch = new ResizeObserver(pull)
    watch.observe(blade)
    watch.observe(chosen)
    return () => watch.disconnect()
  }, [part])
  return (
    <nav className="tape" aria-label={words.partsNav} ref={tape}>
      <ol>
        {PARTS.map((name) => (
          <li key={name} data-here={name === part || undefined}>
            <Link
              href={`/door/${door.id}/${name}`}
              aria-current={name === part ? 'page' : undefined}
              ref={name === part ? here : undefined}
            >
              {words.parts[name]}
            </Link>
          </li>
        ))}
      </ol>
    </nav>
  )
}

/** Ctrl or Cmd with Z, with Shift to bring back; not while a text is being written. */
function useUndoKeys(undo: () => void, redo: () => void): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== 'z') return
      if (event.target instanceof HTMLInputElement || event.target instanceof HTMLTextAreaElement) return
      event.preventDefault()
      if (event.shiftKey) redo()
      else undo()
    }
    window.addEventListener('keydown', onKey)
    return () => window.removeEventListener('keydown', onKey)
  }, [undo, redo])
}

function savingWords(saving: Saving, words: ReturnType<typeof useWords>): string {
  if (saving.kind === 'saving') return words.saving
  if (saving.kind === 'not-saved') return words.notSaved[saving.reason]
  const time = new Date(saving.at_ms)
  return words.saved(`${String(time.getHours()).padStart(2, '0')}:${String(time.getMinutes()).padStart(2, '0')}`)
}
