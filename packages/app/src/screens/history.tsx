import type { Door } from '@sillsight/engine'
import { needWords, type Reader } from '@sillsight/report'
import { useState, useSyncExternalStore } from 'react'
import { Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components'
import { useWritten } from '../entry/written.ts'
import { Icon } from '../look/icons.tsx'
import type { HistoryEntry, Moment } from '../store/contract.ts'
import { doors } from '../store/doors.ts'
import type { Words } from '../words/en.ts'
import { useReader } from '../words/reader.ts'
import { shownTime } from '../words/time.ts'
import { useWords } from '../words/words.ts'
import { useDoor } from './at-door.ts'

const AT_ONCE = 100

interface Props {
  readonly onClose: () => void
  readonly onMoment: (moment: Moment) => void
}

/** Who did what and when, newest first; each moment can be looked at as it was. */
export function History({ onClose, onMoment }: Props) {
  const words = useWords()
  const reader = useReader()
  const { door, answers } = useDoor()
  const author = useSyncExternalStore(doors.subscribe, doors.author)
  const [most, setMost] = useState(AT_ONCE)
  const entries = door.history()
  const { leave: _, ...name } = useWritten(author, doors.setAuthor)
  return (
    <ModalOverlay className="pad-veil" isDismissable isOpen onOpenChange={(open) => !open && onClose()}>
      <Modal className="why">
        <Dialog>
          <div className="pad-head">
            <Heading slot="title">{words.history.title}</Heading>
            <button type="button" className="quiet-button" aria-label={words.pad.close} onClick={onClose}>
              <Icon name="cross" />
            </button>
          </div>
          <label className="field">
            <span>{words.history.yourName}</span>
            <input className="name" maxLength={100} {...name} />
          </label>
          <ol className="history">
            {entries.slice(0, most).map((entry) => (
              <li key={entry.moment}>
                <span className="quiet">{shownTime(entry.at_ms)}</span>
                <span>
                  {entry.author !== '' && <strong>{entry.author}: </strong>}
                  {entryWords(entry, words, answers.shown?.door, reader)}
                </span>
                <button type="button" className="link" onClick={() => onMoment(entry.moment)}>
                  {words.history.look}
                </button>
              </li>
            ))}
          </ol>
          {entries.length > most && (
            <button type="button" className="second" onClick={() => setMost(most + AT_ONCE)}>
              {words.history.more}
            </button>
          )}
        </Dialog>
      </Modal>
    </ModalOverlay>
  )
}

function entryWords({ deed, undoes, redoes }: HistoryEntry, words: Words, door: Door | undefined, reader: Reader): string {
  const { path = '' } = deed
  const ofPhotos = Object.hasOwn(words.photos.places, path) ? words.photos.places[path] : undefined
  const thing = ofPhotos ?? deed.name ?? (door ? needWords(door, path, reader) : path)
  const said = words.history.deeds[deed.deed](thing, deed.typed)
  return undoes !== undefined ? words.history.undone(said) : redoes !== undefined ? words.history.redone(said) : said
}
