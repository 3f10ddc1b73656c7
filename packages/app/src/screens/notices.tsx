import type { DoorFile } from '@sillsight/document'
import { figure, needWords, type Reader } from '@sillsight/report'
import { type ReactNode, useSyncExternalStore } from 'react'
import { handOver } from '../hand-over.ts'
import { plainPlace } from '../store/begun.ts'
import type { Conflict } from '../store/contract.ts'
import { doors } from '../store/doors.ts'
import { isNamed, nameIn } from '../store/twins.ts'
import { useReader } from '../words/reader.ts'
import { shownTime } from '../words/time.ts'
import { useWords } from '../words/words.ts'
import { useDoor } from './at-door.ts'

/** What must be known before going on: nothing is saved, somebody else wrote the same, this is the past. Nothing where all is well, but for a tour. */
export function Notices({ onNow, children }: { readonly onNow: () => void; readonly children: ReactNode }) {
  const words = useWords().notices
  const { door, snapshot } = useDoor()
  const health = useSyncExternalStore(doors.subscribe, doors.health)
  const backup = async () => handOver(await doors.exportDoor(door.id), snapshot.file.name ?? '')
  const { saving, readOnly, conflicts } = snapshot
  const quiet = readOnly === undefined && saving.kind !== 'not-saved' && !health.low && conflicts.length === 0
  return (
    <aside className="notices" hidden={quiet && !children}>
      {readOnly === 'past' && (
        <p className="notice">
          {words.past}
          <button type="button" className="link" onClick={onNow}>
            {words.now}
          </button>
        </p>
      )}
      {readOnly === 'newer-version' && (
        <p className="notice" role="alert">
          {words.newer}
          <button type="button" className="link" onClick={() => location.reload()}>
            {words.reload}
          </button>
        </p>
      )}
      {saving.kind === 'not-saved' && (
        <p className="notice" role="alert">
          {words.notSaved[saving.reason]}
          <button type="button" className="link" onClick={backup}>
            {words.keepFile}
          </button>
        </p>
      )}
      {saving.kind !== 'not-saved' && health.low && (
        <p className="notice">
          {words.low}
          <button type="button" className="link" onClick={backup}>
            {words.keepFile}
          </button>
        </p>
      )}
      {conflicts.map((conflict) => (
        <TwoValues key={conflict.path} conflict={conflict} />
      ))}
      {children}
    </aside>
  )
}

/** Two people wrote one place apart: both values, who and when, and the choice between them. */
function TwoValues({ conflict }: { readonly conflict: Conflict }) {
  const words = useWords().notices
  const reader = useReader()
  const { door, answers } = useDoor()
  const { path, values, together } = conflict
  const place = answers.shown ? needWords(answers.shown.door, plainPlace(path), reader) : path
  return (
    <div className="notice" role="group" aria-label={words.twoValues(place)}>
      <p>{words.twoValues(place)}</p>
      <div className="row">
        {values.map(({ value, author, at_ms }, i) => (
          <button
            // biome-ignore lint/suspicious/noArrayIndexKey: two values may be told apart by their order alone
            key={i}
            type="button"
            className="second"
            onClick={() => door.choose(path, i)}
          >
            {words.value(
              isWiring(value) ? words.wiring(...sizeOf(value)) : (lengthWords(path, value, reader) ?? plainly(value)),
              author || words.somebody,
              shownTime(at_ms),
            )}
          </button>
        ))}
        {together !== undefined && (
          <button type="button" className="second" onClick={() => door.choose(path, 'all')}>
            {words.allOfIt}
          </button>
        )}
      </div>
    </div>
  )
}

/** A length in the reader's units: a bare number leaves open what it counts. */
function lengthWords(path: string, value: unknown, reader: Reader): string | undefined {
  const number = typeof value === 'object' && value !== null && 'value' in value ? value.value : value
  return path.endsWith('_mm') && typeof number === 'number' ? figure({ value: number, unit: 'mm' }, reader) : undefined
}

type FileWiring = NonNullable<DoorFile['wiring']>

/** A whole wiring is chosen by how much it is, by whose and by when: written out, two of them begin alike. */
function isWiring(value: unknown): value is FileWiring {
  return typeof value === 'object' && value !== null && 'cables' in value && 'control' in value
}

function sizeOf({ cables }: FileWiring): [cables: number, cores: number] {
  return [cables.length, cables.reduce((sum, { cores }) => sum + cores.length, 0)]
}

function plainly(value: unknown): string {
  if (typeof value === 'object' && value !== null && 'value' in value) return plainly('typed' in value ? value.typed : value.value) // begun
  if (isNamed(value)) return shortened(value.map((thing) => called(thing)).join(', '))
  if (typeof value === 'string') return value
  return nameIn(value) === undefined ? shortened(JSON.stringify(value)) : `${called(value)}: ${shortened(JSON.stringify(value))}`
}

/** A thing of the door by the name that the site gave it, or by its id. */
function called(thing: unknown): string {
  const { name } = thing as { readonly name?: unknown }
  return typeof name === 'string' ? name : (nameIn(thing) ?? '')
}

function shortened(text: string): string {
  return text.length > 60 ? `${text.slice(0, 60)}…` : text
}
