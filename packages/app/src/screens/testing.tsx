import { Stage } from '../drawing/stage.tsx'
import { Explained } from '../help/explained.tsx'
import { useWords } from '../words/words.ts'
import { ForceRecords } from './force-records.tsx'
import { Missing } from './missing.tsx'

/** What was measured on the finished door. Forces so far; the walk test will stand here too, and says that it does not yet. */
export function TestScreen() {
  const words = useWords()
  return (
    <main className="stage-and-words" data-part="test">
      <Stage first="elevation" grips={false} />
      <section className="entries" aria-label={words.parts.test}>
        <Missing of={(need) => need.startsWith('forceRecords')} />
        <ForceRecords />
        <section className="group">
          <p>
            <Explained text={words.later.test} />
          </p>
          <p className="quiet">
            <Explained text={words.later.notYet} />
          </p>
        </section>
      </section>
    </main>
  )
}
