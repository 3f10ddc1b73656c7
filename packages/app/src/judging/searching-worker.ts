import { connectionEdits, type DoorFile, offers, parseDocument, toDoor } from '@sillsight/document'
import { comparedScores, diagnosis, judge, partsFrom, repairs, scoreOf, synthesis, USUAL_BOUNDS } from '@sillsight/engine'
import type { FromSearching, ToSearching } from './messages.ts'

const PROGRESS_EVERY_MS = 100
/** So many connections are offered. */
const MOST_OFFERED = 3

/** One worker for one search: it is ended when nobody waits for the answer any more. */
self.onmessage = ({ data }: MessageEvent<ToSearching>) => {
  try {
    reply(answer(data))
  } catch (problem) {
    reply({ kind: 'crashed', message: problem instanceof Error ? problem.message : String(problem) })
  }
}

function answer(question: ToSearching): FromSearching {
  switch (question.kind) {
    case 'mend':
      return mended(question)
    case 'connect':
      return connected(question)
    case 'trace':
      return traced(question)
  }
}

function mended({ file, disputed, finding }: Extract<ToSearching, { kind: 'mend' }>): FromSearching {
  const { document, catalogue, door: read } = doorOf(file)
  const door = { ...read, disputed }
  const tried = { grid: 0, exact: 0 }
  const found = worked(repairs(door, judge(door), finding, tried), () => ({ kind: 'trying', doors: tried.grid + tried.exact }))
  return { kind: 'mended', door, offers: offers(document, door, found.offered, catalogue), repairs: found }
}

function connected({ file }: Extract<ToSearching, { kind: 'connect' }>): FromSearching {
  const { document, door } = doorOf(file)
  if (!door.wiring) throw new Error('a door without a wiring has nothing to connect')
  const work = synthesis(partsFrom(door.wiring), { ...USUAL_BOUNDS, most: MOST_OFFERED })
  const { proposals, ...far } = worked(work, (step) => ({ kind: 'connecting', ...step }))
  const given = scoreOf(door.wiring)
  const found = proposals.map((proposal) => ({
    proposal,
    edits: connectionEdits(document, proposal),
    isBetter: given === undefined || comparedScores(proposal.score, given.score) < 0,
  }))
  return { kind: 'connected', found, given, ...far }
}

function traced({ file, observations, meter }: Extract<ToSearching, { kind: 'trace' }>): FromSearching {
  const { wiring } = doorOf(file).door
  if (!wiring) throw new Error('a door without a wiring has no fault to find in it')
  return { kind: 'traced', diagnosis: diagnosis(wiring, observations, meter), readings: observations.length }
}

function doorOf(file: DoorFile) {
  const parsed = parseDocument(JSON.stringify(file))
  if (!parsed.ok) throw new Error('a door that cannot be judged cannot be searched')
  return { ...parsed, door: toDoor(parsed.document, parsed.catalogue) }
}

/** Runs to the end, and says now and then how far it is. */
function worked<Far, Result>(work: Generator<Far, Result>, say: (far: Far) => FromSearching): Result {
  let told_ms = performance.now()
  let step = work.next()
  while (!step.done) {
    if (performance.now() - told_ms >= PROGRESS_EVERY_MS) {
      told_ms = performance.now()
      reply(say(step.value))
    }
    step = work.next()
  }
  return step.value
}

function reply(message: FromSearching): void {
  self.postMessage(message)
}
