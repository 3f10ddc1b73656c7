import { useState } from 'react'
import { Stage } from '../drawing/stage.tsx'
import { Findings } from '../findings/findings.tsx'
import { useDoor } from './at-door.ts'

/** Will it work? The drawing is the stage; findings answer beside it. */
export function JudgeScreen() {
  const { answers } = useDoor()
  const [pointed, setPointed] = useState<string>()
  const finding = answers.shown?.judgement.findings.find(({ id }) => id === pointed)
  const zone = finding?.subject.kind === 'zone' || finding?.subject.kind === 'pocket' ? finding.subject.id.split('/')[0] : undefined
  return (
    <main className="stage-and-words">
      <Stage first="plan" grips={false} state={finding?.state} zone={zone} />
      <Findings pointed={pointed} onPoint={setPointed} />
    </main>
  )
}
