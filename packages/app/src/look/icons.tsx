/** The few signs that stand without a word; the button around them carries the words. */
const PATHS = {
  back: 'M13 3l-7 7 7 7',
  cross: 'M4 4l12 12M16 4L4 16',
  undo: 'M7 4L3 8l4 4M3 8h9a5 5 0 0 1 0 10H8',
  redo: 'M13 4l4 4-4 4M17 8H8a5 5 0 0 0 0 10h4',
  history: 'M10 2a8 8 0 1 1-7.4 5M2 2.5v5h5M10 6v5l3 2',
  settings: 'M2 5h9M15 5h3M2 15h3M9 15h9M13 2.5v5M7 12.5v5',
} as const

export function Icon({ name }: { readonly name: keyof typeof PATHS }) {
  return (
    <svg viewBox="0 0 20 20" aria-hidden="true">
      <path d={PATHS[name]} />
    </svg>
  )
}
