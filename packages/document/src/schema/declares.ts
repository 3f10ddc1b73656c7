import { choice, number, optional, type Plain, record } from './parts.ts'
import { sourceSchema } from './source.ts'

export const declaresSchema = record(
  {
    device: optional(
      choice(
        ['electro-sensitive', 'pressure-sensitive', 'not-protective'],
        'What it protects with: it detects without being touched, it gives way when touched, or it is no protective device.',
      ),
    ),
    performanceLevel: optional(choice(['a', 'b', 'c', 'd', 'e'], 'Performance level of the device as a whole.')),
    category: optional(choice(['B', '1', '2', '3', '4'], 'Category of its structure.')),
    testedBy: optional(
      choice(['itself', 'control', 'nobody'], 'Who finds its faults: the device by itself, the control by its test input, or nobody.'),
    ),
    listedFor: optional(
      choice(['this-drive', 'other-drives', 'nothing'], 'Where the law wants devices listed for use with a drive: what it is listed for.'),
    ),
    mttfd_y: optional(number({ above: 0, upTo: 1e5 }, 'Mean time to dangerous failure, in years.')),
    b10d: optional(
      number({ above: 0, upTo: 1e12 }, 'Operations until a tenth of such devices have failed dangerously; for what wears out.'),
    ),
    operations_per_y: optional(number({ above: 0, upTo: 1e9 }, 'How often it operates in a year, for `b10d`.')),
    diagnosticCoverage_percent: optional(number({ from: 0, upTo: 100 }, 'Share of the dangerous failures that are found.')),
    commonCause: optional(number({ from: 0, upTo: 100 }, 'Score against failures of common cause, of 100 points.')),
    source: sourceSchema,
  },
  'What its maker declares of it as a part of a safety function. What is absent is asked for by the findings.',
)

export type FileDeclares = Plain<typeof declaresSchema>
