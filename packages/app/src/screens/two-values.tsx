import type { DoorFile } from '@sillsight/document'
import { called, needWords } from '@sillsight/report'
import { plainPlace } from '../store/begun.ts'
import type { Conflict } from '../store/contract.ts'
import { useFacts } from '../words/facts.ts'
import { useReader } from '../words/reader.ts'
import { shownTime } from '../words/time.ts'
import { useWords } from '../words/words.ts'
import { useDoor } from './at-door.ts'
import { Notice } from './notice.tsx'
import { placeSaid, type Speech, type Told, toldApart } from './told-apart.ts'

/** Two people wrote one place apart: both values, who and when, in what they differ, and the choice between them. */
export function TwoValues({ conflict, isFolded }: { readonly conflict: Conflict; readonly isFolded: boolean }) {
  const words = useWords().notices
  const { differing } = useFacts()
  const reader = useReader()
  const { door, answers, snapshot } = useDoor()
  const { path, values, together } = conflict
  const judged = answers.shown?.door
  const place = placeSaid(judged, plainPlace(path), { words: differing, reader })
  const nameOf = (id: string) => {
    if (judged?.bodies.some((body) => body.id === id)) return needWords(judged, `confirmations/${id}`, reader)
    const name = namesOf(snapshot.file).get(id)
    return name === undefined ? undefined : called(name, reader)
  }
  const told = toldOf(values, plainPlace(path), { words: differing, reader, nameOf })
  const whose = values.map(({ author, at_ms }) => [author || words.somebody, shownTime(at_ms)] as const)
  return (
    <Notice said={words.twoValues(place)} isFolded={isFolded} isGroup>
      <div className="row">
        {values.map(({ value }, i) => (
          <button
            // biome-ignore lint/suspicious/noArrayIndexKey: two values may be told apart by their order alone
            key={i}
            type="button"
            className="second"
            onClick={() => door.choose(path, i)}
          >
            {words.value(
              isWiring(value) ? `${words.wiring(...sizeOf(value))}: ${told[i]?.short}` : (told[i]?.short ?? ''),
              ...(whose[i] ?? ['', '']),
            )}
          </button>
        ))}
        {together !== undefined && (
          <button type="button" className="second" onClick={() => door.choose(path, 'all')}>
            {words.allOfIt}
          </button>
        )}
      </div>
      {told.some(({ short, all }) => short !== all.join('; ')) && (
        <details>
          <summary>{differing.title}</summary>
          {told.map(({ all }, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: as above
            <section key={i} aria-label={whose[i]?.join(', ')}>
              <p>
                <strong>{whose[i]?.join(', ')}</strong>
              </p>
              <ul>
                {all.map((each) => (
                  <li key={each}>{each}</li>
                ))}
              </ul>
            </section>
          ))}
        </details>
      )}
    </Notice>
  )
}

/** What is begun and no more is shown as it was typed, where that tells the values apart. */
function toldOf(values: Conflict['values'], place: string, speech: Speech): readonly Told[] {
  const field = place.slice(place.lastIndexOf('/') + 1)
  const all = values.map(({ value }) => value)
  if (!all.every(isBegun)) return toldApart(all, field, speech)
  const typed = all.map((each) => each.typed)
  if (typed.every((text) => text !== undefined) && new Set(typed).size === typed.length)
    return typed.map((text) => ({ short: text, all: [text] }))
  return toldApart(
    all.map(({ value }) => value),
    field,
    speech,
  )
}

function isBegun(value: unknown): value is { readonly value: number | string; readonly typed?: string } {
  return (
    typeof value === 'object' && value !== null && 'value' in value && Object.keys(value).every((key) => key === 'value' || key === 'typed')
  )
}

const known = new WeakMap<DoorFile, ReadonlyMap<string, string>>()

/** What the site calls each thing that has an id. */
function namesOf(file: DoorFile): ReadonlyMap<string, string> {
  const found = known.get(file)
  if (found) return found
  const names = new Map<string, string>()
  const walk = (value: unknown): void => {
    if (typeof value !== 'object' || value === null) return
    const { id, name } = value as { readonly id?: unknown; readonly name?: unknown }
    if (typeof id === 'string' && typeof name === 'string') names.set(id, name)
    for (const each of Object.values(value)) walk(each)
  }
  walk(file)
  known.set(file, names)
  return names
}

type FileWiring = NonNullable<DoorFile['wiring']>

/** Of a whole wiring it is said first how much it is. */
function isWiring(value: unknown): value is FileWiring {
  return typeof value === 'object' && value !== null && 'cables' in value && 'control' in value
}

function sizeOf({ cables }: FileWiring): [cables: number, cores: number] {
  return [cables.length, cables.reduce((sum, { cores }) => sum + cores.length, 0)]
}
