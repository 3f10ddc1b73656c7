import { useBegun } from '../entry/begun.ts'
import { Choose } from '../entry/choose.tsx'
import { Figure } from '../entry/figure.tsx'
import { putAt } from '../entry/places.ts'
import { Sentence } from '../entry/sentence.tsx'
import { Whole } from '../entry/whole.tsx'
import { useAround } from '../words/around.ts'
import { useDoor } from './at-door.ts'

const AT = 'survey/leaf/hinged'

/** How a leaf that turns is hung. It comes into the door whole: hinge, side, length and angle; a second panel may follow. */
export function Hinged() {
  const words = useAround().hinged
  const { snapshot } = useDoor()
  const begun = useBegun(AT)
  const [hinge, opensTo] = [begun.text('hinge'), begun.text('opensTo')]
  const { leaf } = snapshot.file.survey
  if (leaf?.travel !== 'turning') return null
  const isThere = leaf.hinged !== undefined
  const sides = { a: 'A', b: 'B', ...snapshot.file.sides }
  const choices = {
    hinge: (
      <Choose
        path={`${AT}/hinge`}
        at={isThere ? `${AT}/hinge` : AT}
        label={words.hinge}
        options={words.hinges}
        waiting={hinge}
        {...(!isThere && { onChoose: (value) => begun.say(words.hinge, { hinge: { value } }) })}
      />
    ),
    opensTo: (
      <Choose
        path={`${AT}/opensTo`}
        label={words.opensTo}
        options={sides}
        waiting={opensTo}
        {...(!isThere && { onChoose: (value) => begun.say(words.opensTo, { opensTo: { value } }) })}
      />
    ),
  }
  const hung = (
    <p>
      <Sentence text={words.hung} figures={choices} />
    </p>
  )
  if (!isThere)
    return (
      <>
        {hung}
        {hinge !== undefined && opensTo !== undefined && (
          <Whole
            text={words.turns}
            place={AT}
            called={words.name}
            figures={{ length_mm: { label: words.length }, openAngle_deg: { label: words.openAngle, kind: 'angle' } }}
            put={(draft, values) => putAt(draft, AT, { hinge, opensTo, ...values })}
          />
        )}
      </>
    )
  return (
    <>
      {hung}
      <p>
        <Sentence
          text={words.turns}
          figures={{
            length_mm: <Figure path={`${AT}/length_mm`} label={words.length} />,
            openAngle_deg: <Figure path={`${AT}/openAngle_deg`} label={words.openAngle} kind="angle" />,
          }}
        />
      </p>
      <p>
        <Sentence
          text={words.folds}
          figures={{ panel: <Figure path={`${AT}/secondPanel_mm`} label={words.panel} missing={words.noPanel} optional /> }}
        />
      </p>
    </>
  )
}
