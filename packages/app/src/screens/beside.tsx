import { type ReactNode, useDeferredValue, useMemo } from 'react'
import { AtDoorContext, useDoor } from './at-door.ts'

/**
 * What stands beside the drawing: an answer reaches it when the drawing shows that answer, and while one follows another only the last.
 * The door itself reaches it at once.
 */
export function Beside({ children }: { readonly children: ReactNode }) {
  const { door, snapshot, preview, answers: newest } = useDoor()
  const answers = useDeferredValue(newest)
  const at = useMemo(() => ({ door, snapshot, preview, answers }), [door, snapshot, preview, answers])
  return <AtDoorContext value={at}>{children}</AtDoorContext>
}
