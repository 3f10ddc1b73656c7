import type { Door } from '@sillsight/engine'
import type { Box, ScreenDrawing } from '@sillsight/report'
import { lazy, Suspense, useState } from 'react'
import { isPlainMm } from '../entry/kinds.ts'
import { putAt, valueAt } from '../entry/places.ts'
import { useDoor } from '../screens/at-door.ts'
import { useWords } from '../words/words.ts'

const Pad = lazy(() => import('../entry/pad.tsx').then(({ Pad }) => ({ default: Pad })))

/** The lettering of dimensions as buttons: touch the figure, type another. */
export function FigureHits({
  drawing,
  door,
  touch_mm,
}: {
  readonly drawing: ScreenDrawing
  readonly door: Door
  readonly touch_mm: number
}) {
  const words = useWords()
  const { door: opened, snapshot } = useDoor()
  const [asked, setAsked] = useState<string>()
  const known = drawing.figures.flatMap(({ of, box }) => {
    const path = pathOf(of, door, snapshot.file)
    return path === undefined ? [] : [{ of, box, path, label: labelOf(of, door, words) }]
  })
  const open = known.find(({ of }) => of === asked)
  const found = open && valueAt(snapshot.file, open.path)
  return (
    <g>
      {known.map(({ of, box, label }) => {
        const hit = atLeast(box, touch_mm)
        return (
          <g
            key={of}
            role="button"
            tabIndex={0}
            className="figure-hit"
            data-figure={of}
            aria-label={words.entry.changeOnDrawing(label)}
            onClick={() => setAsked(of)}
            onKeyDown={(event) => {
              if (event.key !== 'Enter' && event.key !== ' ') return
              event.preventDefault()
              setAsked(of)
            }}
          >
            <rect
              className="grip-reach"
              x={hit.left_mm}
              y={hit.top_mm}
              width={hit.right_mm - hit.left_mm}
              height={hit.bottom_mm - hit.top_mm}
            />
            <path className="figure-rule" d={`M${box.left_mm} ${box.bottom_mm}H${box.right_mm}`} />
          </g>
        )
      })}
      {open && (
        <Suspense fallback={null}>
          <Pad
            onClose={() => setAsked(undefined)}
            asked={{
              label: open.label,
              kind: 'length',
              value: typeof found === 'number' ? found : undefined,
              typed: snapshot.typed[open.path],
              signed: !open.path.startsWith('survey/opening'),
              onEnter: (value, typed) =>
                opened.edit({ deed: 'set', path: open.path, typed }, (draft) => putAt(draft, open.path, value), {
                  [open.path]: isPlainMm(typed) ? undefined : typed,
                }),
            }}
          />
        </Suspense>
      )}
    </g>
  )
}

/** The place in the door file that a dimension shows as it stands there; undefined where it follows from several. */
function pathOf(of: string, door: Door, file: unknown): string | undefined {
  if (of === 'opening/width' || of === 'opening/height') return `survey/${of}_mm`
  const [what, id, part] = of.split('/')
  if (what !== 'sensor') return undefined
  const at = `sensors/${door.sensors.findIndex((sensor) => sensor.id === id)}`
  if (part === 'z' || part === 'x') {
    const candidates = part === 'z' ? [`${at}/pose/z_mm`, `${at}/mountingHeight_mm`] : [`${at}/pose/x_mm`, `${at}/x_mm`]
    return candidates.find((path) => typeof valueAt(file, path) === 'number')
  }
  return undefined
}

function labelOf(of: string, door: Door, words: ReturnType<typeof useWords>): string {
  if (of === 'opening/width') return words.drawing.opening.width
  if (of === 'opening/height') return words.drawing.opening.height
  const [, id, part] = of.split('/')
  const name = door.sensors.find((sensor) => sensor.id === id)?.name ?? ''
  return part === 'z' ? words.drawing.sensorHeight(name) : words.drawing.sensorAlong(name)
}

function atLeast(box: Box, size_mm: number): Box {
  const across = Math.max(0, size_mm - (box.right_mm - box.left_mm)) / 2
  const up = Math.max(0, size_mm - (box.bottom_mm - box.top_mm)) / 2
  return { left_mm: box.left_mm - across, right_mm: box.right_mm + across, top_mm: box.top_mm - up, bottom_mm: box.bottom_mm + up }
}
