import { Stage } from '../drawing/stage.tsx'
import { Explained } from '../help/explained.tsx'
import { useWords } from '../words/words.ts'
import { Missing } from './missing.tsx'
import { Wiring } from './wiring.tsx'

/** What is fitted on the door and how it is connected. The drilling template and the aim sheet will stand here too; it says that they do not yet. */
export function FittingScreen() {
  const words = useWords()
  return (
    <main className="stage-and-words" data-part="fit">
      <Stage first="elevation" grips={false} />
      <section className="entries" aria-label={words.parts.fit}>
        <Missing of={(need) => need.startsWith('wiring')} />
        <Wiring />
        <section className="group">
          <p>
            <Explained text={words.later.fit} />
          </p>
          <p className="quiet">
            <Explained text={words.later.notYet} />
          </p>
        </section>
      </section>
    </main>
  )
}
