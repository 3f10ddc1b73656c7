import type { DrawnWiring, Spot } from '@sillsight/report'
import { type PointerEvent, useState } from 'react'
import { putAt } from '../entry/places.ts'
import { useFacts } from '../words/facts.ts'
import { useDoor } from './at-door.ts'

type End = 'from' | 'to'

/** How near a terminal an end has to be let go to be put there. */
const NEAR_MM = 7
const TOUCH_MM = 6.3

/** The ends of the cores, to be taken and put on another terminal. The same can be chosen in words, which is how the keyboard does it. */
export function CoreEnds({ drawn }: { readonly drawn: DrawnWiring }) {
  const words = useFacts().wiring
  const { door, snapshot } = useDoor()
  const [held, setHeld] = useState<{ readonly core: string; readonly end: End; readonly at: Spot }>()
  if (snapshot.readOnly !== undefined) return null
  const spotOf = (event: PointerEvent<SVGElement>): Spot => {
    const svg = event.currentTarget.ownerSVGElement
    const box = svg?.getBoundingClientRect()
    const view = svg?.viewBox.baseVal
    if (!box || !view) return { x_mm: 0, y_mm: 0 }
    return { x_mm: ((event.clientX - box.left) / box.width) * view.width, y_mm: ((event.clientY - box.top) / box.height) * view.height }
  }
  const letGo = () => {
    const path = held && placeOfCore(snapshot.file.wiring, held.core)
    const terminal = held && nearest(drawn, held.at)
    setHeld(undefined)
    if (!held || !path || !terminal) return
    const other = drawn.cores.find(({ core }) => core === held.core)?.[held.end === 'from' ? 'to' : 'from']
    if (other && nearest(drawn, other) === terminal) return
    door.edit({ deed: 'set', path: `${path}/${held.end}`, name: words.coreName(held.core), typed: terminal }, (draft) =>
      putAt(draft, `${path}/${held.end}`, terminal),
    )
  }
  const other = held && drawn.cores.find(({ core }) => core === held.core)?.[held.end === 'from' ? 'to' : 'from']
  return (
    <g className="core-ends">
      {held && other && <path className="core-held" d={`M${other.x_mm} ${other.y_mm}L${held.at.x_mm} ${held.at.y_mm}`} strokeWidth={0.6} />}
      {drawn.cores.flatMap(({ core, from, to }) =>
        (['from', 'to'] as const).map((end) => {
          const at = end === 'from' ? from : to
          const inward = (end === 'from' ? to : from).x_mm > at.x_mm ? 1 : -1
          return (
            <circle
              key={`${core} ${end}`}
              data-core={core}
              data-end={end}
              cx={at.x_mm + (inward * TOUCH_MM) / 2}
              cy={at.y_mm}
              r={TOUCH_MM / 1.5}
              onPointerDown={(event) => {
                event.currentTarget.setPointerCapture(event.pointerId)
                setHeld({ core, end, at: spotOf(event) })
              }}
              onPointerMove={(event) => held?.core === core && held.end === end && setHeld({ core, end, at: spotOf(event) })}
              onPointerUp={letGo}
              onPointerCancel={() => setHeld(undefined)}
            />
          )
        }),
      )}
    </g>
  )
}

function nearest({ terminals }: DrawnWiring, { x_mm, y_mm }: Spot): string | undefined {
  const far = ({ at }: DrawnWiring['terminals'][number]) => Math.hypot(at.x_mm - x_mm, at.y_mm - y_mm)
  const [best] = [...terminals].sort((a, b) => far(a) - far(b))
  return best && far(best) <= NEAR_MM ? best.terminal : undefined
}

/** The place in the door file of a core as the engine names it, `W1.3`. */
function placeOfCore(
  wiring: { readonly cables: readonly { readonly id: string; readonly cores: readonly { readonly id: string }[] }[] } | undefined,
  id: string,
): string | undefined {
  for (const [i, cable] of (wiring?.cables ?? []).entries())
    for (const [k, core] of cable.cores.entries()) if (`${cable.id}.${core.id}` === id) return `wiring/cables/${i}/cores/${k}`
  return undefined
}
