import { useEffect, useState } from 'react'
import { makeSearchingWorker } from './make-worker.ts'
import type { FromSearching, ToSearching } from './messages.ts'

/**
 * What a worker of its own answers to a question, the last that it said. The worker is ended with the question: by another one, by none (undefined), or
 * when nobody waits any more.
 *
 * @param question the same object for as long as it is the same question
 */
export function useSearch(question: ToSearching | undefined): FromSearching | undefined {
  const [last, setLast] = useState<{ readonly to: ToSearching; readonly said: FromSearching }>()
  useEffect(() => {
    if (question === undefined) return
    const worker = makeSearchingWorker()
    worker.onmessage = ({ data }: MessageEvent<FromSearching>) => setLast({ to: question, said: data })
    worker.onerror = ({ message }) => setLast({ to: question, said: { kind: 'crashed', message } })
    worker.postMessage(question)
    return () => worker.terminate()
  }, [question])
  return last?.to === question ? last?.said : undefined
}
