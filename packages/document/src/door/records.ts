import type { ForceRecord } from '@sillsight/engine'
import type { Remarks } from '../remarks.ts'
import type { FileForceRecord } from '../schema/records.ts'
import { shown } from '../shown.ts'
import { reportTwins } from './states.ts'

export function forceRecordsOf(records: readonly FileForceRecord[] = [], remarks: Remarks): readonly ForceRecord[] {
  reportTwins(
    records.map(({ id }) => id),
    (i) => `forceRecords/${i}/id`,
    remarks,
  )
  return records.map(({ after5s_N, calibratedUntil, ...record }, i) => {
    if (record.mean_N > record.peak_N)
      remarks.issue({
        code: 'contradiction',
        path: `forceRecords/${i}/mean_N`,
        expected: `at most peak_N (${record.peak_N})`,
        got: shown(record.mean_N),
      })
    return { ...record, after5s_N, calibratedUntil }
  })
}
