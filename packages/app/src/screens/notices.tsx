import type { DoorFile } from '@sillsight/document'
import { needWords } from '@sillsight/report'
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
import { useIsSmall } from './unfolded.ts'

/** What must be known before going on: nothing is saved, somebody else wrote the same, this is the past. Nothing where all is well, but for a tour. */
export function Notices({ onNow, children }: { readonly onNow: () => void; readonly children: ReactNode }) {
  const words = useWords().notices
  const { door, snapshot } = useDoor()
  const health = useSyncExternalStore(doors.subscribe, doors.health)
  const backup = async () => handOver(await doors.exportDoor(door.id), snapshot.file.name ?? '')
  const { saving, readOnly, conflicts } = snapshot
  const isLow = saving.kind !== 'not-saved' && health.low
  const said = [readOnly !== undefined, saving.kind === 'not-saved', isLow, ...conflicts].filter(Boolean).length
  const isFolded = useIsSmall() && said > 1
  return (
    <aside className="notices" hidden={said === 0 && !children}>
      {readOnly === 'past' && (
        <p className="notice">
          {words.past}
          <button type="button" className="link" onClick={onNow}>
            {words.now}
          </button>
        </p>
      )}
      {readOnly === 'newer-version' && (
        <Notice said={words.newer} isFolded={isFolded} isAlert>
          <button type="button" className="link" onClick={() => location.reload()}>
            {words.reload}
          </button>
        </Notice>
      )}
      {saving.kind === 'not-saved' && (
        <Notice said={words.notSaved[saving.reason]} isFolded={isFolded} isAlert>
          <button type="button" className="link" onClick={backup}>
            {words.keepFile}
          </button>
        </Notice>
      )}
      {isLow && (
        <Notice said={words.low} isFolded={isFolded}>
          <button type="button" className="link" onClick={backup}>
            {words.keepFile}
          </button>
        </Notice>
      )}
      {conflicts.map((conflict) => (
        <TwoValues key={conflict.path} conflict={conflict} isFolded={isFolded} />
      ))}
      {children}
    </aside>
  )
}

interface NoticeProps {
  readonly said: string
  /** One of several on a small screen: a line that opens, or few words of the work would be left. */
  readonly isFolded: boolean
  readonly isAlert?: boolean
  readonly isGroup?: boolean
  /** What can be done about it. */
  readonly children: ReactNode
}

function Notice({ said, isFolded, isAlert = false, isGroup = false, children }: NoticeProps) {
  const content = isFolded ? (
    <details>
      <summary>{said}</summary>
      <div className="row">{children}</div>
    </details>
  ) : (
    <>
      <p>{said}</p>
      {isGroup ? <div className="row">{children}</div> : children}
    </>
  )
  if (isGroup)
    return (
      <div className="notice" role="group" aria-label={said}>
        {content}
      </div>
    )
  return (
    <div className="notice" role={isAlert ? 'alert' : undefined}>
      {content}
    </div>
  )
}

/** Two people wrote one place apart: both values, who and when, and the choice between them. */
function TwoValues({ conflict, isFolded }: { readonly conflict: Conflict; readonly isFolded: boolean }) {
  const words = useWords().notices
  const reader = useReader()
  const { door, answers } = useDoor()
  const { path, values, together } = conflict
  const place = answers.shown ? needWords(answers.shown.door, plainPlace(path), reader) : path
  return (
    <Notice said={words.twoValues(place)} isFolded={isFolded} isGroup>
      {values.map(({ value, author, at_ms }, i) => (
        <button
          // biome-ignore lint/suspicious/noArrayIndexKey: two values may be told apart by their order alone
          key={i}
          type="button"
          className="second"
          onClick={() => door.choose(path, i)}
        >
          {words.value(isWiring(value) ? words.wiring(...sizeOf(value)) : plainly(value), author || words.somebody, shownTime(at_ms))}
        </button>
      ))}
      {together !== undefined && (
        <button type="button" className="second" onClick={() => door.choose(path, 'all')}>
          {words.allOfIt}
        </button>
      )}
    </Notice>
  )
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
