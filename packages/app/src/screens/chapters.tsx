import { lazy } from 'react'
import { useWords } from '../words/words.ts'
import { useDoor } from './at-door.ts'
import { Chapter } from './chapter.tsx'
import { CONTROL_FACTS, dangersToLookFor, statedFacts } from './known.ts'

const Control = lazy(() => import('./control.tsx').then(({ Control }) => ({ default: Control })))
const Dangers = lazy(() => import('./dangers.tsx').then(({ Dangers }) => ({ default: Dangers })))
const Stops = lazy(() => import('./stops.tsx').then(({ Stops }) => ({ default: Stops })))
const Parked = lazy(() => import('./parked.tsx').then(({ Parked }) => ({ default: Parked })))
const States = lazy(() => import('./states.tsx').then(({ States }) => ({ default: States })))
const Readings = lazy(() => import('./readings.tsx').then(({ Readings }) => ({ default: Readings })))
const Note = lazy(() => import('./note.tsx').then(({ Note }) => ({ default: Note })))
const PassingBy = lazy(() => import('./passing-by.tsx').then(({ PassingBy }) => ({ default: PassingBy })))

/** What is opened when somebody wants to say it; how far it is known is read without opening. */
export function Chapters() {
  const { chapters } = useWords()
  const { file } = useDoor().snapshot
  const { expected, open } = dangersToLookFor(file)
  const points = file.survey.dangers?.points?.length ?? 0
  const { crossings = [], drive, leaf, opening, states = [] } = file.survey
  const { widths = [], heights = [] } = opening.readings ?? {}
  return (
    <>
      <Chapter
        title={chapters.readings}
        holds={['survey/opening/readings/widths', 'survey/opening/readings/heights']}
        said={chapters.listed(widths.length + heights.length)}
      >
        <Readings />
      </Chapter>
      <Chapter title={chapters.states} holds={['survey/states']} said={chapters.listed(states.length)}>
        <States />
      </Chapter>
      <Chapter title={chapters.stops} holds={['survey/drive/stopTimes']} said={chapters.listed(drive?.stopTimes?.readings_s.length ?? 0)}>
        <Stops />
      </Chapter>
      {leaf && (
        <Chapter title={chapters.parked} holds={['survey/leaf/parked']} said={chapters.isKnown(leaf.parked !== undefined)}>
          <Parked />
        </Chapter>
      )}
      <Chapter title={chapters.passingBy} holds={['survey/crossings', 'survey/air']} said={chapters.listed(crossings.length)}>
        <PassingBy />
      </Chapter>
      <Chapter
        title={chapters.dangers}
        holds={['survey/dangers']}
        said={open.length > 0 ? chapters.known(expected.length - open.length, expected.length) : chapters.listed(points)}
      >
        <Dangers />
      </Chapter>
      <Chapter title={chapters.control} holds={['survey/control']} said={chapters.known(statedFacts(file), CONTROL_FACTS.length)}>
        <Control />
      </Chapter>
      <Chapter title={chapters.note} holds={['note']} said={chapters.isWritten(file.note !== undefined)}>
        <Note />
      </Chapter>
    </>
  )
}
