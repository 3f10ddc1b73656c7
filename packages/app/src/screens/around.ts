/** What the sheet Measure shows below the opening and the leaf: it comes once those stand there, so that the first sheet stays light. */
export { Building } from './building.tsx'
export { Chapters } from './chapters.tsx'
export { DriveGroup } from './drive.tsx'
export { AirGroup, TolerancesGroup } from './exactness.tsx'
export { FloorGroup } from './floor.tsx'
export { Hinged } from './hinged.tsx'
export { Lanes } from './lanes.tsx'
export { Obstacles } from './obstacles.tsx'
