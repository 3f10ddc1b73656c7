import type { DrawnWiring } from '@sillsight/report'
import type { Leads } from './wiring-board.tsx'

const RADIUS_MM = 2.1

/** Where both leads of a meter go, told apart by their signs and not by colour. What is said beside the drawing says it too. */
export function MeterLeads({ leads, drawn }: { readonly leads: Leads; readonly drawn: DrawnWiring }) {
  const { x_mm: aside_mm, y_mm: below_mm } = drawn.leadAside
  const middle_mm = drawn.terminals.reduce((sum, { at }) => sum + at.x_mm, 0) / Math.max(1, drawn.terminals.length)
  return (
    <g className="meter-leads">
      {(['plus', 'minus'] as const).map((lead) => {
        const at = drawn.terminals.find(({ terminal }) => terminal === leads[lead])?.at
        if (!at) return null
        const [x_mm, y_mm] = [at.x_mm + (at.x_mm < middle_mm ? aside_mm : -aside_mm), at.y_mm + below_mm]
        return (
          <g key={lead} data-lead={lead}>
            <path d={`M${at.x_mm} ${at.y_mm}L${x_mm} ${y_mm}`} strokeWidth={0.7} />
            <circle cx={x_mm} cy={y_mm} r={RADIUS_MM} strokeWidth={0.5} />
            <path className="lead-sign" d={signAt(x_mm, y_mm, lead)} strokeWidth={0.7} />
          </g>
        )
      })}
    </g>
  )
}

function signAt(x_mm: number, y_mm: number, lead: 'plus' | 'minus'): string {
  const across = `M${x_mm - 1.2} ${y_mm}h2.4`
  return lead === 'minus' ? across : `${across}M${x_mm} ${y_mm - 1.2}v2.4`
}
