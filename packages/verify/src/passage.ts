import type { Tile } from './plain.ts'

/** How one beam runs through a body that stands anywhere on a tile, whatever is off within its tolerance. Distances along the beam, mm. */
export interface Passage {
  /** It runs through the interior at every placement. */
  readonly isHit: (tile: Tile) => boolean
  /** Faces that it may enter by: bits as in docs/evidence.md. */
  readonly mayEnter: (tile: Tile) => number
  /** The largest distance at which it may enter, at any placement. */
  readonly latest: (tile: Tile) => number
  /** It is not inside before this, at any placement. */
  readonly earliest: (tile: Tile) => number
  /** The smallest distance at which it may have left again. */
  readonly soonestEnd: (tile: Tile) => number
  /** Incidence on each of these faces: the reach is `share` times that at the cosine, or more. */
  readonly cosines: (faces: number, tile: Tile) => readonly { readonly cosine: number; readonly share: number }[]
}
