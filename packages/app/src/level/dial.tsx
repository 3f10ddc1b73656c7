import { useWords } from '../words/words.ts'
import type { Edge, Hold } from './rise.ts'

/** How far the device is turned against the clock when it stands on this edge, as one looks at it. */
const TURNED_DEG: Readonly<Record<Edge, number>> = { bottom: 0, left: 90, top: 180, right: 270 }
/** The bubble meets the end of its glass here. */
const LARGEST_DEG = 5
const TRAVEL = 84

interface Props {
  readonly hold: Hold | undefined
  readonly rise_deg: number | undefined
  readonly shown: (angle_deg: number) => string
  /** Where the right end points. */
  readonly end: string
}

/** A glass with its bubble and the figure, upright for whoever looks, however the device is held. */
export function Dial({ hold, rise_deg, shown, end }: Props) {
  const { level } = useWords()
  const page_deg = screen.orientation?.angle ?? 0
  const turn_deg = hold ? (TURNED_DEG[hold.edge] - page_deg + 720) % 360 : 0
  const bubble = 120 + (Math.min(LARGEST_DEG, Math.max(-LARGEST_DEG, rise_deg ?? 0)) / LARGEST_DEG) * TRAVEL
  const way = rise_deg === undefined ? undefined : Math.abs(rise_deg) < 0.05 ? 'level' : rise_deg > 0 ? 'higher' : 'lower'
  return (
    <div className="level-dial" data-turn={turn_deg}>
      <svg viewBox="0 0 240 76" aria-hidden="true">
        <rect className="level-glass" x="6" y="12" width="228" height="40" rx="20" />
        {rise_deg !== undefined && <ellipse className="level-bubble" cx={bubble} cy="32" rx="21" ry="13" />}
        <path className="level-mark" d="M96 12v40M144 12v40" />
        <path className="level-edge" d="M2 66h232m-10-7l10 7l-10 7" />
      </svg>
      <p className="level-end">{end}</p>
      <p className="level-figure">{rise_deg === undefined ? '\u2013' : shown(rise_deg)}</p>
      <p className="level-way">{way === undefined ? '' : level.ways[way]}</p>
    </div>
  )
}
