import { useDoor } from '../screens/at-door.ts'
import type { Draft } from '../store/contract.ts'
import { useWords } from '../words/words.ts'
import { AskedFigure } from './asked-figure.tsx'
import { asBegun, useBegun } from './begun.ts'
import type { Kind } from './kinds.ts'
import { Sentence } from './sentence.tsx'

export interface Lacking {
  readonly label: string
  readonly kind?: Kind
  readonly signed?: boolean
  readonly question?: (value: number) => string | undefined
}

interface Props {
  readonly text: string
  /** Where the thing will stand; one of a list, as `useBegunIn` names it. */
  readonly place: string
  /** What it is called in history, and where it can be left. */
  readonly called: string
  readonly figures: Readonly<Record<string, Lacking>>
  /** Puts it into the door file when all figures are there. */
  readonly put: (draft: Draft, values: Readonly<Record<string, number>>) => void
  /** Where it was asked for and can be left: it is whole, or was left. */
  readonly onDone?: () => void
}

/** A sentence whose figures come into the door file together, when the last of them is entered. None is made up meanwhile; what is entered is kept. */
export function Whole({ text, place, called, figures, put, onDone }: Props) {
  const begun = useBegun(place)
  const { snapshot } = useDoor()
  const enter = (name: string, kind: Kind, value: number, typed: string) => {
    const said = { [name]: asBegun(value, typed, kind) }
    const all = Object.keys(figures).map((each): [string, number | undefined] => [each, each === name ? value : begun.number(each)])
    if (all.some(([, each]) => each === undefined)) return begun.say(figures[name]?.label ?? name, said)
    const [list] = place.split('/+')
    begun.whole(
      { deed: 'added', path: list ?? place, name: called },
      (draft) => put(draft, Object.fromEntries(all) as Record<string, number>),
      said,
    )
    return onDone?.()
  }
  return (
    <>
      <p>
        <Sentence
          text={text}
          figures={Object.fromEntries(
            Object.entries(figures).map(([name, { label, kind = 'length', signed = false, question }]) => [
              name,
              <AskedFigure
                key={name}
                at={`${place}/${name}`}
                readOnly={snapshot.readOnly !== undefined}
                asked={{
                  ...{ label, kind, signed, question },
                  value: begun.number(name),
                  typed: begun.values[name]?.typed,
                  onEnter: (value, typed) => enter(name, kind, value, typed),
                }}
              />,
            ]),
          )}
        />
      </p>
      {(onDone || begun.isAny) && (
        <div className="row">
          <Leave place={place} called={called} {...(onDone && { onDone })} />
        </div>
      )}
    </>
  )
}

/** Leaves what is not whole yet; undo brings it back. */
export function Leave({ place, called, onDone }: Pick<Props, 'place' | 'called' | 'onDone'>) {
  const { entry } = useWords()
  const { snapshot } = useDoor()
  const begun = useBegun(place)
  const leave = () => {
    if (begun.isAny) begun.drop(called)
    onDone?.()
  }
  return (
    <button
      type="button"
      className="second"
      aria-label={`${entry.leave}: ${called}`}
      disabled={snapshot.readOnly !== undefined}
      onClick={leave}
    >
      {entry.leave}
    </button>
  )
}
