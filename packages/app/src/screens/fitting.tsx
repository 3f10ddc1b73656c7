import { useWords } from '../words/words.ts'
import { useDoor } from './at-door.ts'
import { NotYet } from './later.tsx'
import { Missing } from './missing.tsx'
import { Wiring } from './wiring.tsx'
import { WiringBoard } from './wiring-board.tsx'

/** How the sensors are connected, drawn and in sentences. The drilling template and the aim sheet will stand here too; it says that they do not yet. */
export function FittingScreen() {
  const words = useWords()
  const { answers } = useDoor()
  const wiring = answers.shown?.door.wiring
  return (
    <main className="stage-and-words fitting" data-part="fit">
      {wiring && (
        <div className="fitting-board">
          <WiringBoard wiring={wiring} />
        </div>
      )}
      <section className="entries" aria-label={words.parts.fit}>
        <Missing of={(need) => need.startsWith('wiring')} />
        <Wiring />
        <NotYet part="fit" />
      </section>
    </main>
  )
}
