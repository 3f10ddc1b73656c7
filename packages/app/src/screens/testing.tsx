import { Stage } from '../drawing/stage.tsx'
import { useWords } from '../words/words.ts'
import { ForceRecords } from './force-records.tsx'
import { NotYet } from './later.tsx'
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
        <NotYet part="test" />
      </section>
    </main>
  )
}
