import type { DoorFile } from '@sillsight/document'
import { lazy, Suspense, useCallback, useEffect, useMemo, useRef, useState, useSyncExternalStore } from 'react'
import { Link } from 'wouter'
import { useTouring } from '../help/touring.ts'
import { type Answers, type Judging, startJudging } from '../judging/judging.ts'
import { makeJudgingWorker } from '../judging/make-worker.ts'
import type { Part } from '../parts.ts'
import type { DoorId, DoorSnapshot, Draft, Moment, OpenDoor } from '../store/contract.ts'
import { doors } from '../store/doors.ts'
import { useWords } from '../words/words.ts'
import { AtDoorContext } from './at-door.ts'
import { Head, Tape } from './head.tsx'
import { LaterScreen } from './later.tsx'
import { Notices } from './notices.tsx'

/** Each part comes when it is opened. */
const MeasureScreen = lazy(() => import('./measure.tsx').then(({ MeasureScreen }) => ({ default: MeasureScreen })))
const JudgeScreen = lazy(() => import('./judge.tsx').then(({ JudgeScreen }) => ({ default: JudgeScreen })))
const PlaceScreen = lazy(() => import('./place.tsx').then(({ PlaceScreen }) => ({ default: PlaceScreen })))
const FittingScreen = lazy(() => import('./fitting.tsx').then(({ FittingScreen }) => ({ default: FittingScreen })))
const TestScreen = lazy(() => import('./testing.tsx').then(({ TestScreen }) => ({ default: TestScreen })))
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
    (): DoorSnapshot => (moment ? { ...live, file: door.fileAt(moment), conflicts: [], readOnly: 'past' } : live),
    [live, moment, door],
  )
  const [change, preview] = useState<(draft: Draft) => void>()
  const file = useMemo(() => (change ? changed(snapshot.file, change) : snapshot.file), [snapshot.file, change])
  const { answers, upToDate } = useAnswers(file, snapshot)
  const setPreview = useCallback((next: ((draft: Draft) => void) | undefined) => preview(() => next), [])
  const shown = useMemo(() => (moment ? { ...door, ...UNCHANGING } : door), [door, moment])
  const at = useMemo(
    () => ({ door: shown, snapshot, answers, upToDate, preview: setPreview }),
    [shown, snapshot, answers, upToDate, setPreview],
  )
  return (
    <AtDoorContext value={at}>
      <div className="sheet" data-readonly={snapshot.readOnly !== undefined || undefined}>
        <Head onMoment={setMoment} />
        <Tape part={part} />
        <Notices onNow={() => setMoment(undefined)}>
          {toured === door.id && (
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
    </AtDoorContext>
  )
}

function changed(file: DoorFile, change: (draft: Draft) => void): DoorFile {
  const draft = structuredClone(file)
  change(draft as Draft)
  return draft
}

const NOTHING: Answers = { shown: undefined, trouble: undefined, progress: undefined, asked: -1 }

/** Asks again whenever what is shown changes; each question has a number of its own, so that an answer always says what it is about. */
function useAnswers(file: DoorFile, { conflicts }: DoorSnapshot): { readonly answers: Answers; readonly upToDate: boolean } {
  const [judging, setJudging] = useState<Judging>()
  const question = useRef(0)
  const [asked, setAsked] = useState(0)
  useEffect(() => {
    const started = startJudging(makeJudgingWorker)
    setJudging(started)
    return started.close
  }, [])
  useEffect(() => {
    if (!judging) return
    question.current++
    setAsked(question.current)
    judging.ask(
      question.current,
      file,
      conflicts.map(({ path }) => path),
    )
  }, [judging, file, conflicts])
  const answers = useSyncExternalStore(judging?.subscribe ?? never, judging?.answers ?? (() => NOTHING))
  return { answers, upToDate: answers.shown?.revision === asked }
}

function never(): () => void {
  return () => {}
}
