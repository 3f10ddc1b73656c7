import { openDoors } from './open-doors.ts'

/** The doors of this device. */
export const doors = openDoors('sillsight')
