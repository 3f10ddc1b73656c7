import { number, record } from './parts.ts'

/** Wider than this nobody measures. */
export const within_mm = (means: string) => number({ from: 0, upTo: 200 }, means)
const within_deg = (means: string) => number({ from: 0, upTo: 5 }, means)

export const tolerancesSchema = record(
  {
    length_mm: within_mm('Each face of each obstacle.'),
    position_mm: within_mm('The origin of each sensor along x, y and z; the ends of a segment.'),
    tilt_deg: within_deg('The tilt of each sensor.'),
    roll_deg: within_deg('The roll of each sensor.'),
    yaw_deg: within_deg('The yaw of each sensor.'),
    floor_mm: within_mm('The floor, anywhere.'),
    range_percent: number({ from: 0, upTo: 90 }, 'How much less far a sensor may see than its values say.'),
  },
  'How far what is built may be off from what is written, each value either way and all at once. If absent, the door is judged as written. Where an opening, an obstacle or a sensor has a wider `tolerance_mm` of its own, the widest holds for all.',
)
