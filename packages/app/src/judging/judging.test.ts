import type { DoorFile } from '@sillsight/document'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { startJudging } from './judging.ts'
import type { FromWorker, ToWorker } from './messages.ts'

/** A worker that answers when the test says so. */
class Fake {
  readonly asked: ToWorker[] = []
  ended = false
  onmessage: ((event: { data: FromWorker }) => void) | undefined
  onerror: ((event: { message: string }) => void) | undefined
  postMessage(question: ToWorker) {
    this.asked.push(question)
  }
  terminate() {
    this.ended = true
  }
  answers(revision: number, depth: 'grid' | 'exact') {
    const answer = { door: {}, judgement: {}, notes: [] } as never
    this.onmessage?.({ data: { kind: 'judged', revision, depth, answer } })
  }
}

function started() {
  const workers: Fake[] = []
  const judging = startJudging(() => {
    const worker = new Fake()
    workers.push(worker)
    return worker as unknown as Worker
  })
  const ask = (revision: number) => judging.ask(revision, {} as DoorFile, [])
  return { judging, workers, ask, grid: workers[0] as Fake }
}

describe('judging while somebody works', () => {
  beforeEach(() => {
    vi.useFakeTimers()
  })
  afterEach(() => {
    vi.useRealTimers()
  })

  it('begins the exact answer only when the grid has answered, however long that takes', () => {
    const { workers, ask, grid } = started()
    ask(1)
    vi.advanceTimersByTime(5000)
    expect(workers).toHaveLength(1)
    grid.answers(1, 'grid')
    vi.advanceTimersByTime(1)
    expect(workers[1]?.asked.map(({ revision, depth }) => [revision, depth])).toEqual([[1, 'exact']])
  })
  it('waits a while after an answer of the grid that came quickly', () => {
    const { workers, ask, grid } = started()
    ask(1)
    grid.answers(1, 'grid')
    vi.advanceTimersByTime(200)
    expect(workers).toHaveLength(1)
    vi.advanceTimersByTime(100)
    expect(workers[1]?.asked).toHaveLength(1)
  })
  it('answers the newest question exactly, and only that', () => {
    const { workers, ask, grid } = started()
    ask(1)
    vi.advanceTimersByTime(300)
    ask(2)
    ask(3)
    grid.answers(1, 'grid')
    expect(grid.asked.map(({ revision }) => revision)).toEqual([1, 3])
    grid.answers(3, 'grid')
    vi.advanceTimersByTime(1)
    expect(workers).toHaveLength(1)
    vi.advanceTimersByTime(300)
    expect(workers[1]?.asked.map(({ revision }) => revision)).toEqual([3])
  })
  it('asks exactly where the grid worker cannot be loaded', () => {
    const { workers, judging, ask, grid } = started()
    ask(1)
    vi.advanceTimersByTime(300)
    grid.onerror?.({ message: 'no script' })
    vi.advanceTimersByTime(1)
    expect(judging.answers().trouble).toMatchObject({ kind: 'crashed', revision: 1 })
    expect(workers[1]?.asked.map(({ revision }) => revision)).toEqual([1])
  })
  it('keeps the newer answer where an older one comes late, and ends an exact one that is overtaken', () => {
    const { workers, judging, ask, grid } = started()
    ask(1)
    grid.answers(1, 'grid')
    vi.advanceTimersByTime(300)
    ask(2)
    expect(workers[1]?.ended).toBe(true)
    grid.answers(2, 'grid')
    workers[1]?.answers(1, 'exact')
    expect(judging.answers().shown).toMatchObject({ revision: 2, depth: 'grid' })
  })
})
