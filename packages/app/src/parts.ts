/** The seven parts of the job, in the order of the tape measure. A door comes back to earlier ones whenever something changes. */
export const PARTS = ['measure', 'place', 'judge', 'fit', 'test', 'hand-over', 'keep'] as const
export type Part = (typeof PARTS)[number]

export function isPart(text: string | undefined): text is Part {
  return PARTS.some((part) => part === text)
}
