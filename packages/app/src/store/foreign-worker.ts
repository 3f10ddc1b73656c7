import { parseDocument } from '@sillsight/document'
import { automerge } from './automerge.ts'
import type { DoorDocument } from './door-document.ts'
import type { Inspected } from './foreign.ts'

self.onmessage = async ({ data }: MessageEvent<readonly Uint8Array[]>) => {
  let answer: Inspected
  try {
    const A = await automerge()
    const [doc] = A.applyChanges(A.init<DoorDocument>(), [...data])
    const { file, typed, photos } = A.toJS(doc)
    const parsed = parseDocument(JSON.stringify(file ?? null))
    if (typeof typed !== 'object' || typeof photos !== 'object' || A.getMissingDeps(doc, []).length > 0)
      throw new Error('not a whole document')
    answer = parsed.ok
      ? { ok: true, file, heads: [...A.getHeads(doc)].sort().join(' ') }
      : {
          ok: false,
          message: parsed.issues
            .map(({ path, expected, got }) => `${path}: ${expected}, ${got}`)
            .join('; ')
            .slice(0, 2000),
        }
  } catch (problem) {
    answer = { ok: false, message: problem instanceof Error ? problem.message : String(problem) }
  }
  self.postMessage(answer)
}
