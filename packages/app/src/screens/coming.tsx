import { type ComponentType, lazy, useState } from 'react'
import { prepareJudging } from '../judging/make-worker.ts'
import { isPart, type Part } from '../parts.ts'
import { automerge } from '../store/automerge.ts'

/**
 * A screen whose script comes when it is shown, or before: then it is shown at once. React lets nothing that was waited for appear within
 * 300 ms of the sign that it is waited for, one such wait inside the other; what is there already waits for nothing.
 */
function coming<Props extends object>(load: () => Promise<ComponentType<Props>>) {
  let here: ComponentType<Props> | undefined
  let loading: Promise<{ readonly default: ComponentType<Props> }> | undefined
  const ahead = () => {
    loading ??= load().then((screen) => {
      here = screen
      return { default: screen }
    })
    return loading
  }
  const Late = lazy(ahead) as ComponentType<Props>
  // biome-ignore lint/correctness/noComponentHookFactories: made once for each screen, when this module is read
  function Coming(props: Props) {
    const [Screen] = useState(() => here ?? Late) // the same for as long as it is shown, or it would begin anew
    return <Screen {...props} />
  }
  return Object.assign(Coming, { ahead })
}

export const NewDoorScreen = coming(() => import('./new-door.tsx').then(({ NewDoorScreen }) => NewDoorScreen))
export const DoorScreen = coming(() => import('./door.tsx').then(({ DoorScreen }) => DoorScreen))
export const MeasureScreen = coming(() => import('./measure.tsx').then(({ MeasureScreen }) => MeasureScreen))
export const JudgeScreen = coming(() => import('./judge.tsx').then(({ JudgeScreen }) => JudgeScreen))
export const PlaceScreen = coming(() => import('./place.tsx').then(({ PlaceScreen }) => PlaceScreen))
export const FittingScreen = coming(() => import('./fitting.tsx').then(({ FittingScreen }) => FittingScreen))
export const TestScreen = coming(() => import('./testing.tsx').then(({ TestScreen }) => TestScreen))

const PARTS: Partial<Record<Part, { readonly ahead: () => Promise<unknown> }>> = {
  measure: MeasureScreen,
  place: PlaceScreen,
  judge: JudgeScreen,
  fit: FittingScreen,
  test: TestScreen,
}

/** Asks at once for all that a door needs to be shown at a part of the job and judged: scripts, the document's library, a worker. */
export function doorAhead(part: Part): Promise<unknown> {
  prepareJudging()
  return Promise.all([DoorScreen.ahead(), PARTS[part]?.ahead(), automerge()])
}

/** Asks for what the screen at an address needs; the list of doors is there already. @param address the part behind the hash, as in `/door/ID/judge` */
export async function screenAhead(address: string): Promise<void> {
  const [, first, , part] = address.split('/')
  if (first === 'door') await doorAhead(isPart(part) ? part : 'judge')
  if (first === 'new') await NewDoorScreen.ahead()
}
