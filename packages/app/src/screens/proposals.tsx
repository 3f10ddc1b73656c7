import { applyEdits } from '@sillsight/document'
import type { Fault } from '@sillsight/engine'
import { connectionWords, scoreWords } from '@sillsight/report'
import { type Dispatch, type SetStateAction, useEffect, useRef, useState } from 'react'
import { Explained } from '../help/explained.tsx'
import type { Connected, ToSearching } from '../judging/messages.ts'
import { useSearch } from '../judging/use-search.ts'
import { asHandedOut } from '../store/twins.ts'
import { useFacts } from '../words/facts.ts'
import { useReader } from '../words/reader.ts'
import { useSearching } from '../words/searching.ts'
import { useWords } from '../words/words.ts'
import { useDoor } from './at-door.ts'
import { Lead } from './chapter.tsx'
import { FaultButtons } from './single-faults.tsx'
import type { OnBoard, Proposed } from './wiring-board.tsx'

interface Props {
  readonly playing: Fault | undefined
  readonly proposed: Proposed | undefined
  readonly onBoard: Dispatch<SetStateAction<OnBoard>>
}

/**
 * Searches for connections of the parts that there are, in a worker, and offers what is better as a button, as repairs are. What was found belongs to
 * the door as it was when the search began: it goes when the door changes.
 */
export function Proposals({ playing, proposed, onBoard }: Props) {
  const words = useSearching().connect
  const { repairs, findings } = useWords()
  const { snapshot } = useDoor()
  const { conflicts } = snapshot
  const file = asHandedOut(snapshot.file)
  const [asked, setAsked] = useState<ToSearching>()
  const [taken, setTaken] = useState<string>()
  const question = asked?.file === file ? asked : undefined
  const search = useSearch(question)
  const resistors = file.wiring?.resistors?.length ?? 0
  const begin = () => {
    setTaken(undefined)
    setAsked({ kind: 'connect', file, disputed: conflicts.map(({ path }) => path) })
  }
  if (search?.kind === 'crashed')
    return (
      <p className="trouble" role="alert">
        {findings.crashed} {search.message}
      </p>
    )
  if (search?.kind === 'connected')
    return (
      <Found of={search} playing={playing} proposed={proposed} onBoard={onBoard} onTaken={setTaken} onClose={() => setAsked(undefined)} />
    )
  if (question)
    return (
      <p className="repairs-trying" role="status">
        <span>{search?.kind === 'connecting' ? words.trying(search.tried, search.judged) : words.trying(0, 0)}</span>
        <button type="button" className="link" onClick={() => setAsked(undefined)}>
          {repairs.stop}
        </button>
      </p>
    )
  return (
    <>
      <Taken said={taken} />
      <Lead text={resistors > 0 ? `${words.lead} ${words.resistors(resistors)}` : words.lead} />
      <div className="row">
        <button type="button" className="second" onClick={begin}>
          {words.search}
        </button>
      </div>
    </>
  )
}

/** Where the hand was goes with what was found: this takes its place. */
function Taken({ said }: { readonly said: string | undefined }) {
  const at = useRef<HTMLParagraphElement>(null)
  useEffect(() => {
    if (said !== undefined) at.current?.focus()
  }, [said])
  return (
    <p role="status" tabIndex={-1} ref={at}>
      {said}
    </p>
  )
}

interface OfFound extends Props {
  readonly of: Connected
  readonly onTaken: (said: string) => void
  readonly onClose: () => void
}

function Found({ of, playing, proposed, onBoard, onTaken, onClose }: OfFound) {
  const { connect: words } = useSearching()
  const { pad } = useWords()
  const { language } = useReader()
  const { found, given, tried, judged, left } = of
  // what was proposed leaves the drawing with what was found
  useEffect(() => () => onBoard((on) => (on.proposed ? {} : on)), [onBoard])
  const { connecting } = language
  return (
    <section className="repairs connections-found" aria-label={words.found}>
      <h3>{connecting.asWired}</h3>
      <p role="status">
        <Explained text={given ? scoreWords(given.score, language) : connecting.notInOrder} />{' '}
        {found[0]?.isBetter ? connecting.better : found.length > 0 ? connecting.asGood : connecting.none}
      </p>
      {found.map((each, i) => (
        <Connection
          key={connecting.proposal(i + 1)}
          name={connecting.proposal(i + 1)}
          of={each}
          playing={playing}
          proposed={proposed}
          onBoard={onBoard}
          onTaken={onTaken}
        />
      ))}
      <p className="finding-note">
        {connecting.searched(tried, judged)} {left > 0 && connecting.left(left)}{' '}
        <button type="button" className="link" onClick={onClose}>
          {pad.close}
        </button>
      </p>
    </section>
  )
}

interface OfConnection extends Props {
  readonly name: string
  readonly of: Connected['found'][number]
  readonly onTaken: (said: string) => void
}

function Connection({ name, of, playing, proposed, onBoard, onTaken }: OfConnection) {
  const words = useSearching().connect
  const wired = useFacts().wiring
  const { repairs } = useWords()
  const { language } = useReader()
  const { door, snapshot } = useDoor()
  const { proposal, edits, isBetter } = of
  const { counts, laid, tested } = connectionWords(proposal, language)
  const isShown = proposed?.wiring === proposal.wiring
  const show = (fault?: Fault) => onBoard({ fault, proposed: { wiring: proposal.wiring, said: words.on(name) } })
  const take = () => {
    if (edits === undefined) return
    onTaken(words.taken(name))
    door.edit({ deed: 'mended', path: 'wiring', name: wired.name, typed: `${name}. ${counts}` }, (draft) => applyEdits(draft, edits))
  }
  return (
    <div className="repair">
      <h3>{name}</h3>
      <p>
        <Explained text={`${counts} ${tested}`} />
      </p>
      {proposal.hidden.length > 0 && (
        <>
          <p>
            <Explained text={language.connecting.hidden} after={[counts, tested]} />
          </p>
          <FaultButtons faults={proposal.hidden} playing={isShown ? playing : undefined} onPlay={show} />
        </>
      )}
      <details className="apart">
        <summary>{words.laid(laid.length)}</summary>
        <ul>
          {laid.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      </details>
      {!isBetter && <p className="finding-note">{words.noBetter}</p>}
      {isBetter && edits === undefined && <p className="finding-note">{words.notHeld}</p>}
      <div className="finding-tools">
        <button
          type="button"
          className="link"
          aria-pressed={isShown}
          aria-label={words.showFor(name)}
          onClick={() => (isShown ? onBoard({}) : show())}
        >
          {words.show}
        </button>
        {isBetter && edits !== undefined && (
          <button
            type="button"
            className="second"
            disabled={snapshot.readOnly !== undefined}
            aria-label={`${repairs.apply}: ${name}`}
            onClick={take}
          >
            {repairs.apply}
          </button>
        )}
      </div>
    </div>
  )
}
