import { id, name, number, optional, type Plain, record, size_mm } from './parts.ts'
import { textPart } from './schema.ts'

const day = (means: string) => textPart({ form: /^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/ }, 'a day as 2026-11-25', means)
const force_N = (means: string) => number({ from: 0, upTo: 100_000 }, means)

export const forceRecordSchema = record(
  {
    id: id('Name inside the file.'),
    place: name('Where on the closing edge, as "middle of the bottom edge".'),
    gap_mm: size_mm('What was left between the leaf and what it would meet, when it touched the instrument.'),
    peak_N: force_N('Peak of the force.'),
    time_s: number({ from: 0, upTo: 60 }, 'How long it stayed above the force that may act for longer.'),
    mean_N: force_N('Mean of the force after that.'),
    after5s_N: optional(force_N('What was left of it 5 s after contact.')),
    instrument: name('The instrument, by what it is and its number.'),
    calibratedUntil: optional(day('Last day of its calibration.')),
    on: day('The day of the measurement.'),
    by: name('Who measured.'),
  },
  'A force on contact as it was measured: it is never computed.',
)

export type FileForceRecord = Plain<typeof forceRecordSchema>
