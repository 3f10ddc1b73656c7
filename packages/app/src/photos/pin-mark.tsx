import type { Pin } from '../store/contract.ts'

/** So near to an edge the number changes its side, in fractions of the picture. */
const NEAR = 0.12
const REACH = 17

/** A ring around the very place and its number beside it on a short line: what is marked stays to be seen. */
export function PinMark({ pin, number }: { readonly pin: Pick<Pin, 'across' | 'down'>; readonly number: number }) {
  const x = pin.across > 1 - NEAR ? -REACH : REACH
  const y = pin.down < NEAR ? REACH : -REACH
  return (
    <svg className="pin-mark" viewBox="-24 -24 48 48" aria-hidden="true">
      <path className="pin-halo" d={`M${x * 0.2} ${y * 0.2}L${x} ${y}`} />
      <circle className="pin-halo" r="4.5" />
      <path className="pin-line" d={`M${x * 0.2} ${y * 0.2}L${x} ${y}`} />
      <circle className="pin-line" r="4.5" />
      <circle className="pin-disc" cx={x} cy={y} r="12" />
      <text className="pin-number" x={x} y={y + 5.2}>
        {number}
      </text>
    </svg>
  )
}

/** Where it stands on the picture; in per cent, so that it stays there at every size. */
export function placeOf({ across, down }: Pick<Pin, 'across' | 'down'>): { readonly left: string; readonly top: string } {
  return { left: `${across * 100}%`, top: `${down * 100}%` }
}
