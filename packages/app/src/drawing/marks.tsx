import { DASHES_MM, type Mark, PENS_MM, type Spot } from '@sillsight/report'
import { memo } from 'react'

/** The marks of a drawing as SVG. Inks, fills and weights are those of the theme: `layer` and `fill` become class names. */
export const Marks = memo(function Marks({ marks }: { readonly marks: readonly Mark[] }) {
  return (
    <g>
      {joined(marks).map((mark, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: marks have no identity, a drawing is painted anew
        <OneMark key={i} mark={mark} />
      ))}
    </g>
  )
})

/** Lines of one pen that follow each other are one element: hatching alone would be hundreds. */
type Joined = Exclude<Mark, { kind: 'line' }> | (Extract<Mark, { kind: 'line' }> & { readonly d: string })

function joined(marks: readonly Mark[]): readonly Joined[] {
  const all: Joined[] = []
  for (const mark of marks) {
    const last = all[all.length - 1]
    if (mark.kind !== 'line') all.push(mark)
    else if (last?.kind === 'line' && last.layer === mark.layer && last.dash === mark.dash)
      all[all.length - 1] = { ...last, d: last.d + path(mark.points) }
    else all.push({ ...mark, d: path(mark.points) })
  }
  return all
}

function OneMark({ mark }: { readonly mark: Joined }) {
  if (mark.kind === 'text') {
    const { at, text, size_mm, anchor, bold, upward } = mark
    return (
      <text
        className={`m-${mark.layer}`}
        x={at.x_mm}
        y={at.y_mm}
        fontSize={size_mm}
        textAnchor={anchor}
        fontWeight={bold ? 700 : undefined}
        transform={upward ? `rotate(-90 ${at.x_mm} ${at.y_mm})` : undefined}
      >
        {text}
      </text>
    )
  }
  const pen = { strokeWidth: PENS_MM[mark.layer] }
  if (mark.kind === 'circle')
    return <circle className={`m-${mark.layer} f-${mark.fill}`} cx={mark.centre.x_mm} cy={mark.centre.y_mm} r={mark.radius_mm} {...pen} />
  const dash = mark.dash && DASHES_MM[mark.dash]
  if (mark.kind === 'line') return <path className={`m-${mark.layer} f-none`} d={mark.d} strokeDasharray={dash} {...pen} />
  return (
    <path
      className={`m-${mark.layer} f-${mark.fill}${mark.outline === false ? ' bare' : ''}`}
      d={mark.rings.map((ring) => `${path(ring)}Z`).join('')}
      fillRule="evenodd"
      strokeDasharray={dash}
      {...pen}
    />
  )
}

function path(points: readonly Spot[]): string {
  return points.map(({ x_mm, y_mm }, i) => `${i === 0 ? 'M' : 'L'}${n(x_mm)} ${n(y_mm)}`).join('')
}

function n(value: number): string {
  return String(Math.round(value * 100) / 100)
}
