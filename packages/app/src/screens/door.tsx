import type { DoorFile } from '@sillsight/document'
import { lazy, memo, Suspense, useCallback, useEffect, useMemo, useRef, useState, useSyncExternalStore } from 'react'
import { Link } from 'wouter'
import { useTouring } from '../help/touring.ts'
import { type Answers, type Judging, NO_ANSWERS, startJudging } from '../judging/judging.ts'
import { makeJudgingWorker } from '../judging/make-worker.ts'
import type { Part } from '../parts.ts'
import { withBoth } from '../store/conflicts.ts'
import type { Conflict, DoorId, DoorSnapshot, Draft, Moment, OpenDoor } from '../store/contract.ts'
import { doors } from '../store/doors.ts'
import { asHandedOut } from '../store/twins.ts'
import { useWords } from '../words/words.ts'
import { AtDoorContext, UpToDateContext } from './at-door.ts'
import { FittingScreen, JudgeScreen, MeasureScreen, PlaceScreen, TestScreen } from './coming.tsx'
import { Head, Tape } from './head.tsx'
import { LaterScreen } from './later.tsx'
import { Notices } from './notices.tsx'

const Tour = lazy(() => import('../help/tour.tsx').then(({ Tour }) => ({ default: Tour })))

/** One door: its name, whether it is saved, the tape measure, and the part that is being worked on. */
export function DoorScreen({ id, part }: { readonly id: string; readonly part: Part }) {
  const words = useWords()
  const [door, setDoor] = useState<OpenDoor | 'missing'>()
  useEffect(() => {
    let gone = false
    let opened: OpenDoor | undefined
    doors.open(id as DoorId).then((found) => {
      if (gone) found?.close()
      else setDoor(found ?? 'missing')
      opened = found
    })
    return () => {
      gone = true
      opened?.close()
    }
  }, [id])
  if (door === undefined) return <p className="starting">{words.loading}</p>
  if (door === 'missing')
    return (
      <main className="doors">
        <p>{words.missingDoor}</p>
        <Link href="/">{words.backToDoors}</Link>
      </main>
    )
  return <OpenedDoor door={door} part={part} />
}

/** An earlier moment can be looked at and nothing else, whatever asks for a change: a button, a key, a drag. */
type Changing =
  | 'edit'
  | 'undo'
  | 'redo'
  | 'choose'
  | 'addPhoto'
  | 'changePhoto'
  | 'forgetWhereTaken'
  | 'removePhoto'
  | 'placePhoto'
  | 'addPin'
  | 'changePin'
  | 'removePin'
const UNCHANGING: Pick<OpenDoor, Changing> = {
  edit: () => false,
  undo: () => {},
  redo: () => {},
  choose: () => {},
  addPhoto: async () => {},
  changePhoto: () => {},
  forgetWhereTaken: () => {},
  removePhoto: () => {},
  placePhoto: () => {},
  addPin: () => undefined,
  changePin: () => {},
  removePin: () => {},
}

function OpenedDoor({ door, part }: { readonly door: OpenDoor; readonly part: Part }) {
  const live = useSyncExternalStore(door.subscribe, door.snapshot)
  const { door: toured } = useTouring()
  const [moment, setMoment] = useState<Moment>()
  const snapshot = useMemo(
    (): DoorSnapshot => (moment ? { ...live, file: door.fileAt(moment), begun: {}, conflicts: [], readOnly: 'past' } : live),
    [live, moment, door],
  )
  const [change, preview] = useState<(draft: Draft) => void>()
  const file = useMemo(() => (change ? changed(snapshot.file, change) : snapshot.file), [snapshot.file, change])
  const { answers, upToDate } = useAnswers(file, snapshot)
  const setPreview = useCallback((next: ((draft: Draft) => void) | undefined) => preview(() => next), [])
  const shown = useMemo(() => (moment ? { ...door, ...UNCHANGING } : door), [door, moment])
  const at = useMemo(() => ({ door: shown, snapshot, answers, preview: setPreview }), [shown, snapshot, answers, setPreview])
  return (
    <AtDoorContext value={at}>
      <UpToDateContext value={upToDate}>
        <Sheet part={part} isReadOnly={snapshot.readOnly !== undefined} isToured={toured === door.id} onMoment={setMoment} />
      </UpToDateContext>
    </AtDoorContext>
  )
}

interface SheetProps {
  readonly part: Part
  readonly isReadOnly: boolean
  readonly isToured: boolean
  /** Somebody wants to see the door as it was, or (undefined) as it is. */
  readonly onMoment: (moment: Moment | undefined) => void
}

/** Not drawn anew for each step of a drag: what of it shows the door or the answers asks for them itself. */
const Sheet = memo(function Sheet({ part, isReadOnly, isToured, onMoment }: SheetProps) {
  return (
    <div className="sheet" data-readonly={isReadOnly || undefined}>
      <Head onMoment={onMoment} />
      <Tape part={part} />
      <Notices onNow={() => onMoment(undefined)}>
        {isToured && (
          <Suspense fallback={null}>
            <Tour part={part} />
          </Suspense>
        )}
      </Notices>
      <Suspense fallback={null}>
        {part === 'measure' ? (
          <MeasureScreen />
        ) : part === 'place' ? (
          <PlaceScreen />
        ) : part === 'judge' ? (
          <JudgeScreen />
        ) : part === 'fit' ? (
          <FittingScreen />
        ) : part === 'test' ? (
          <TestScreen />
        ) : (
          <LaterScreen part={part} />
        )}
      </Suspense>
    </div>
  )
})

function changed(file: DoorFile, change: (draft: Draft) => void): DoorFile {
  const draft = structuredClone(file)
  change(draft as Draft)
  return draft
}

/** Asks again whenever what is shown changes; each question has a number of its own, so that an answer always says what it is about. */
function useAnswers(file: DoorFile, { conflicts }: DoorSnapshot): { readonly answers: Answers; readonly upToDate: boolean } {
  const [judging, setJudging] = useState<Judging>()
  const last = useRef(0)
  const apart = JSON.stringify(conflicts.map(({ path, together }) => ({ path, together }))) // one text: a door that is only saved has a new list of the same
  const question = useMemo(() => {
    const open = JSON.parse(apart) as readonly Pick<Conflict, 'path' | 'together'>[]
    return { number: ++last.current, file: asHandedOut(withBoth(file, open)), disputed: open.map(({ path }) => path) }
  }, [file, apart])
  useEffect(() => {
    const started = startJudging(makeJudgingWorker)
    setJudging(started)
    return started.close
  }, [])
  useEffect(() => judging?.ask(question.number, question.file, question.disputed), [judging, question])
  const answers = useSyncExternalStore(judging?.subscribe ?? never, judging?.answers ?? (() => NO_ANSWERS))
  return { answers, upToDate: answers.shown?.revision === question.number }
}

function never(): () => void {
  return () => {}
}
