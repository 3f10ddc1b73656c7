import { useBegunIn } from '../entry/begun.ts'
import { Cross } from '../entry/cross.tsx'
import { Figure } from '../entry/figure.tsx'
import { useListed } from '../entry/listed.ts'
import { pushAt } from '../entry/places.ts'
import { Sentence } from '../entry/sentence.tsx'
import { Whole } from '../entry/whole.tsx'
import { useAround } from '../words/around.ts'
import { useDoor } from './at-door.ts'
import { Lead } from './chapter.tsx'

const PATH = 'survey/opening/readings'

/** Width and height read at more places than one: they find the misread reading, and the smallest that counts. */
export function Readings() {
  const words = useAround().readings
  return (
    <>
      <Lead text={words.lead} />
      <Of list="widths" />
      <Of list="heights" />
    </>
  )
}

function Of({ list }: { readonly list: 'widths' | 'heights' }) {
  const words = useAround().readings
  const { snapshot, answers } = useDoor()
  const path = `${PATH}/${list}`
  const listed = useListed(path)
  const begun = useBegunIn(path)
  const readings = snapshot.file.survey.opening.readings?.[list] ?? []
  const said = words[list]
  const figures = { at_mm: { label: said.at, signed: list === 'heights' }, reading: { label: said.name } }
  const measured = list === 'widths' ? 'width_mm' : 'height_mm'
  const notes = answers.shown?.notes.filter((note) => note.code === 'readings-disagree' && note.path === `survey/opening/${measured}`) ?? []
  return (
    <>
      {readings.map((_, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: readings have no other name
        <div className="thing" key={i}>
          <p>
            <Sentence
              text={said.words}
              figures={{
                at_mm: <Figure path={`${path}/${i}/at_mm`} {...figures.at_mm} optional />,
                reading: <Figure path={`${path}/${i}/reading`} {...figures.reading} />,
              }}
            />
          </p>
          <Cross name={said.nth(i + 1)} onAway={() => listed.remove(i, said.name)} />
        </div>
      ))}
      {notes.map(({ path: at, text }) => (
        <p className="entry-doubt" key={at}>
          {text}
        </p>
      ))}
      {begun.places.map((place) => (
        <Whole
          key={place}
          place={place}
          called={said.name}
          text={said.words}
          figures={figures}
          put={(draft, values) => pushAt(draft, path, values)}
          onDone={begun.done}
        />
      ))}
      <div className="row">
        <button type="button" className="second" data-at={path} onClick={begun.ask}>
          {said.add}
        </button>
      </div>
    </>
  )
}
