import { openDoors } from '../../src/store/open-doors.ts'

/** What tests of storage reach for from outside of the page. */
const reach = globalThis as unknown as { openDoors: typeof openDoors }
reach.openDoors = openDoors
