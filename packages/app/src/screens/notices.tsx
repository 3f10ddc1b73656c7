import { lazy, type ReactNode, Suspense, useSyncExternalStore } from 'react'
import { handOver } from '../hand-over.ts'
import { doors } from '../store/doors.ts'
import { useWords } from '../words/words.ts'
import { useDoor } from './at-door.ts'
import { Notice } from './notice.tsx'
import { useIsSmall } from './unfolded.ts'

const TwoValues = lazy(() => import('./two-values.tsx').then(({ TwoValues }) => ({ default: TwoValues })))

/** What must be known before going on: nothing is saved, somebody else wrote the same, this is the past. Nothing where all is well, but for a tour. */
export function Notices({ onNow, children }: { readonly onNow: () => void; readonly children: ReactNode }) {
  const words = useWords().notices
  const { door, snapshot } = useDoor()
  const health = useSyncExternalStore(doors.subscribe, doors.health)
  const backup = async () => handOver(await doors.exportDoor(door.id), snapshot.file.name ?? '')
  const { saving, readOnly, conflicts } = snapshot
  const isLow = saving.kind !== 'not-saved' && health.low
  const said = [readOnly !== undefined, saving.kind === 'not-saved', isLow, ...conflicts].filter(Boolean).length
  const isFolded = useIsSmall() && said > 1
  return (
    <aside className="notices" hidden={said === 0 && !children}>
      {readOnly === 'past' && (
        <p className="notice">
          {words.past}
          <button type="button" className="link" onClick={onNow}>
            {words.now}
          </button>
        </p>
      )}
      {readOnly === 'newer-version' && (
        <Notice said={words.newer} isFolded={isFolded} isAlert>
          <button type="button" className="link" onClick={() => location.reload()}>
            {words.reload}
          </button>
        </Notice>
      )}
      {saving.kind === 'not-saved' && (
        <Notice said={words.notSaved[saving.reason]} isFolded={isFolded} isAlert>
          <button type="button" className="link" onClick={backup}>
            {words.keepFile}
          </button>
        </Notice>
      )}
      {isLow && (
        <Notice said={words.low} isFolded={isFolded}>
          <button type="button" className="link" onClick={backup}>
            {words.keepFile}
          </button>
        </Notice>
      )}
      <Suspense fallback={null}>
        {conflicts.map((conflict) => (
          <TwoValues key={conflict.path} conflict={conflict} isFolded={isFolded} />
        ))}
      </Suspense>
      {children}
    </aside>
  )
}
