/**
 * Two things that come this close touch, and touching is neither entering nor overlapping (docs/method.md, sections 2 and 3). Measures such as
 * 2000.7 mm have no exact binary form: without this, a sensor on a wall's face may start 1e-13 mm inside of the wall and see nothing at all.
 * If it were too large, it would err toward seen behind obstacles, by as much, and toward more placements that have to be seen.
 */
export const TOUCH_MM = 1e-6
