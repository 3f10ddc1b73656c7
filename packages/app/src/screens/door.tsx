import { useEffect, useState, useSyncExternalStore } from 'react'
import { Link } from 'wouter'
import { type Answers, type Judging, startJudging } from '../judging/judging.ts'
import { makeJudgingWorker } from '../judging/make-worker.ts'
import type { Part } from '../parts.ts'
import type { DoorId, DoorSnapshot, OpenDoor } from '../store/contract.ts'
import { doors } from '../store/doors.ts'
import { useWords } from '../words/words.ts'
import { JudgeScreen } from './judge.tsx'
import { LaterScreen } from './later.tsx'
import { Tape } from './tape.tsx'

/** What every part of the job is given of the open door. */
export interface AtDoor {
  readonly door: OpenDoor
  readonly snapshot: DoorSnapshot
  readonly answers: Answers
}

/** One door: its name, whether it is saved, the tape measure, and the part that is being worked on. */
export function DoorScreen({ id, part }: { readonly id: string; readonly part: Part }) {
  const words = useWords()
  const [door, setDoor] = useState<OpenDoor | 'missing'>()
  useEffect(() => {
    let gone = false
    doors.open(id as DoorId).then((opened) => {
      if (!gone) setDoor(opened ?? 'missing')
    })
    return () => {
      gone = true
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

function OpenedDoor({ door, part }: { readonly door: OpenDoor; readonly part: Part }) {
  const snapshot = useSyncExternalStore(door.subscribe, door.snapshot)
  const answers = useAnswers(snapshot)
  return (
    <div className="sheet">
      <Tape id={door.id} part={part} snapshot={snapshot} answers={answers} />
      {part === 'judge' ? <JudgeScreen door={door} snapshot={snapshot} answers={answers} /> : <LaterScreen part={part} />}
    </div>
  )
}

const NOTHING: Answers = { shown: undefined, trouble: undefined, progress: undefined, asked: -1 }

/** Asks again whenever the door changes; the workers live as long as the door is on the screen. */
function useAnswers({ revision, file, conflicts }: DoorSnapshot): Answers {
  const [judging, setJudging] = useState<Judging>()
  useEffect(() => {
    const started = startJudging(makeJudgingWorker)
    setJudging(started)
    return started.close
  }, [])
  useEffect(() => {
    judging?.ask(
      revision,
      file,
      conflicts.map(({ path }) => path),
    )
  }, [judging, revision, file, conflicts])
  return useSyncExternalStore(judging?.subscribe ?? never, judging?.answers ?? (() => NOTHING))
}

function never(): () => void {
  return () => {}
}
