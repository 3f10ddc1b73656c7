import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { doorFilePage } from '../src/documentation/door-file.ts'

writeFileSync(join(import.meta.dirname, '../../../docs/door-file.md'), doorFilePage())
