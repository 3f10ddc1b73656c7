import { memoryDoors } from './memory.ts'

/** The doors of this device. */
export const doors = memoryDoors()
