import { lazy, type ReactNode, Suspense, useSyncExternalStore } from 'react'
import { handOver } from '../hand-over.ts'
import { doors } from '../store/doors.ts'
import { useWords } from '../words/words.ts'
import { useDoor } from './at-door.ts'

const TwoValues = lazy(() => import('./two-values.tsx').then(({ TwoValues }) => ({ default: TwoValues })))

/** What must be known before going on: nothing is saved, somebody else wrote the same, this is the past. Nothing where all is well, but for a tour. */
export function Notices({ onNow, children }: { readonly onNow: () => void; readonly children: ReactNode }) {
  const words = useWords().notices
  const { door, snapshot } = useDoor()
  const health = useSyncExternalStore(doors.subscribe, doors.health)
  const backup = async () => handOver(await doors.exportDoor(door.id), snapshot.file.name ?? '')
  const { saving, readOnly, conflicts } = snapshot
  const quiet = readOnly === undefined && saving.kind !== 'not-saved' && !health.low && conflicts.length === 0
  return (
    <aside className="notices" hidden={quiet && !children}>
      {readOnly === 'past' && (
        <p className="notice">
          {words.past}
          <button type="button" className="link" onClick={onNow}>
            {words.now}
          </button>
        </p>
      )}
      {readOnly === 'newer-version' && (
        <p className="notice" role="alert">
          {words.newer}
          <button type="button" className="link" onClick={() => location.reload()}>
            {words.reload}
          </button>
        </p>
      )}
      {saving.kind === 'not-saved' && (
        <p className="notice" role="alert">
          {words.notSaved[saving.reason]}
          <button type="button" className="link" onClick={backup}>
            {words.keepFile}
          </button>
        </p>
      )}
      {saving.kind !== 'not-saved' && health.low && (
        <p className="notice">
          {words.low}
          <button type="button" className="link" onClick={backup}>
            {words.keepFile}
          </button>
        </p>
      )}
      <Suspense fallback={null}>
        {conflicts.map((conflict) => (
          <TwoValues key={conflict.path} conflict={conflict} />
        ))}
      </Suspense>
      {children}
    </aside>
  )
}
