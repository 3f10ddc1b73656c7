/** What the maker of a sensor declares of it as a part of a safety function. */
export const declares = {
  unknown: 'nobody looked up',
  kind: 'Its maker declares it as {device}, of performance level {level} and category {category}.',
  device: {
    label: 'What kind of protective device it is',
    options: {
      'electro-sensitive': 'a protective device that detects without touch',
      'pressure-sensitive': 'a protective device that is touched',
      'not-protective': 'no protective device',
    },
  },
  performanceLevel: { label: 'Performance level' },
  category: { label: 'Category' },
  test: 'Its faults are found by {testedBy}; it is listed for {listedFor}.',
  testedBy: { label: 'Who finds its faults', options: { itself: 'itself', control: 'the control', nobody: 'nobody' } },
  listedFor: {
    label: 'For which drives it is listed',
    options: { 'this-drive': 'this drive', 'other-drives': 'other drives', nothing: 'no drive' },
  },
  numbers:
    'In figures: mean time to dangerous failure {mttfd} years, or B10d {b10d} at {operations} operations in a year; diagnostic coverage {coverage}; {common} points against failures of common cause.',
  figures: {
    mttfd_y: 'mean time to dangerous failure, in years',
    b10d: 'operations until a tenth have failed dangerously (B10d)',
    operations_per_y: 'operations in a year',
    diagnosticCoverage_percent: 'diagnostic coverage',
    commonCause: 'points against failures of common cause',
  },
  known: 'That is known from {basis}: {where}.',
  basis: 'How it is known',
  bases: { datasheet: 'its papers', 'from memory': 'memory alone', invented: 'an invented example' },
  where: 'which paper and page',
}
