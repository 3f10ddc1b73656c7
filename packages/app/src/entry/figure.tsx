import type { LevelWish } from '../level/wish.ts'
import { useDoor } from '../screens/at-door.ts'
import type { Draft } from '../store/contract.ts'
import { AskedFigure } from './asked-figure.tsx'
import { isPlainMm, type Kind, readFigure, says } from './kinds.ts'
import { putAt, valueAt } from './places.ts'

interface Props {
  /** Place in the door file. */
  readonly path: string
  readonly label: string
  readonly hint?: string
  readonly kind?: Kind
  readonly signed?: boolean
  /** Place of how far it may be off. */
  readonly tolerancePath?: string
  readonly question?: (value: number) => string | undefined
  /** The verdict does not need it: it may be taken away again. */
  readonly optional?: boolean
  /** What stands there until somebody enters it. */
  readonly missing?: string
  readonly level?: LevelWish
  /** Puts the value where a plain place would not do; undefined takes it away. */
  readonly put?: (draft: Draft, value: number | undefined) => void
}

/** A figure of the door set in a sentence: what is entered is written to its place in the door file. */
export function Figure(props: Props) {
  const { path, label, hint, kind = 'length', signed, tolerancePath, question, optional = false, missing, level } = props
  const put = props.put ?? ((draft: Draft, entered: number | undefined) => putAt(draft, path, entered))
  const { door, snapshot } = useDoor()
  const found = valueAt(snapshot.file, path)
  const value = numberOf(found, kind)
  const tolerance = tolerancePath === undefined ? undefined : valueAt(snapshot.file, tolerancePath)
  return (
    <AskedFigure
      at={path}
      enters={tolerancePath}
      missing={missing}
      readOnly={snapshot.readOnly !== undefined}
      asked={{
        label,
        hint,
        kind,
        value,
        typed: typeof found === 'string' ? found : agreeing(snapshot.typed[path], found),
        ...(signed !== undefined && { signed }),
        question,
        level,
        tolerance_mm: typeof tolerance === 'number' ? tolerance : undefined,
        ...(tolerancePath !== undefined && {
          onTolerance: (tolerance_mm: number) =>
            door.edit({ deed: 'set', path: tolerancePath }, (draft) => putAt(draft, tolerancePath, tolerance_mm)),
        }),
        onEnter: (entered, typed) =>
          door.edit({ deed: 'set', path, typed }, (draft) => put(draft, entered), {
            [path]: kind === 'length' && !isPlainMm(typed) ? typed : undefined,
          }),
        ...(optional && { onClear: () => door.edit({ deed: 'removed', path }, (draft) => put(draft, undefined)) }),
      }}
    />
  )
}

/** A reading may stand in the door file as it was read off the tape, a text with its unit. */
function numberOf(found: unknown, kind: Kind): number | undefined {
  if (typeof found === 'number') return found
  if (typeof found !== 'string' || kind !== 'length') return undefined
  const read = readFigure(found, kind, 'metric')
  return read.ok ? read.value : undefined
}

/** What was typed counts while it says what stands there: places in a list move when an entry before them goes. */
function agreeing(typed: string | undefined, value: unknown): string | undefined {
  return typed !== undefined && typeof value === 'number' && says(typed, value) ? typed : undefined
}
