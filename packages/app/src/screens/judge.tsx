import { useState } from 'react'
import { Stage } from '../drawing/stage.tsx'
import { Findings } from '../findings/findings.tsx'
import type { AtDoor } from './door.tsx'

/** Will it work? The drawing is the stage; findings answer beside it. */
export function JudgeScreen({ door, snapshot, answers }: AtDoor) {
  const [pointed, setPointed] = useState<string>()
  return (
    <main className="stage-and-words">
      <Stage door={door} snapshot={snapshot} answers={answers} pointed={pointed} />
      <Findings snapshot={snapshot} answers={answers} onPoint={setPointed} />
    </main>
  )
}
