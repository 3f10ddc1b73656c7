import type { DoorFile } from '@sillsight/document'
import { type Judging, startJudging } from '../judging/judging.ts'
import { makeJudgingWorker } from '../judging/make-worker.ts'
import type { DoorId, OpenDoor } from '../store/contract.ts'
import { doors } from '../store/doors.ts'
import { withoutTwins } from '../store/twins.ts'

/** The door of the address at which the program was started. */
let ahead: { readonly id: DoorId; readonly door: Promise<OpenDoor | undefined> } | undefined
/** The judging of that door as it was when it was opened. */
let begun: { readonly file: DoorFile; readonly disputed: string; readonly judging: Judging } | undefined

/** The number of the question that is asked first of a door. */
const FIRST = 1

/** Opens a door and has it judged while the screens that show it come. */
export function openAhead(id: DoorId): void {
  ahead = { id, door: doors.open(id) }
  void ahead.door.then((door) => {
    if (!door) return
    const { file, conflicts } = door.snapshot()
    const disputed = conflicts.map(({ path }) => path)
    begun = { file, disputed: disputed.join('\n'), judging: startJudging(makeJudgingWorker) }
    begun.judging.ask(FIRST, withoutTwins(file), disputed)
  })
}

/** Opens a door, or hands over the one that was opened ahead. Whoever gets one closes it. */
export function openedDoor(id: DoorId): Promise<OpenDoor | undefined> {
  const taken = ahead
  ahead = undefined
  if (taken?.id === id) return taken.door
  void taken?.door.then((door) => door?.close()) // somebody went elsewhere meanwhile
  return doors.open(id)
}

/**
 * A judging to ask, or the one that has been asked about just this as its first question. Whoever gets one closes it.
 *
 * @param disputed paths, one on each line
 */
export function begunJudging(file: DoorFile, disputed: string): Judging {
  const taken = begun
  begun = undefined
  if (taken?.file === file && taken.disputed === disputed) return taken.judging
  taken?.judging.close()
  return startJudging(makeJudgingWorker)
}
