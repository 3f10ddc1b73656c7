import { count, figure } from '../figures.ts'
import { type RuleWording, type Say, sentenceOf } from '../rule-wording.ts'
import { against, inState, nameIn, number, type Told } from '../told.ts'
import { mendOr, unsettled } from './unsettled.ts'

function crossingWords(told: Told): string {
  const name = nameIn(told, 'crossingName', 'crossing')
  return name === undefined ? 'dem Querweg' : told.language.things.crossing(name)
}

/** "34 von 120 Vorübergehenden", or undefined. */
function openers(told: Told): string | undefined {
  const openings = number(told, 'openings')
  const perDay = number(told, 'perDay')
  return openings === undefined || perDay === undefined
    ? undefined
    : `${count(Math.ceil(openings - 1e-6))} von ${count(perDay)} Vorübergehenden`
}

const counted: Say = (told) => {
  const limit = against(told, 'larger-is-worse')?.limit
  const who = openers(told)
  return sentenceOf([
    `auf ${crossingWords(told)} öffnen ${who ?? 'einige Vorübergehende'} am Tag das Tor unnötig${inState(told)}`,
    limit && `, und bis zu ${limit} sind erträglich`,
  ])
}

const untold = unsettled((told) => `Vorübergehende auf ${crossingWords(told)} das Tor zu oft öffnen`, counted)

export const needlessOpenings: RuleWording = {
  name: 'Unnötiges Öffnen',
  pass: counted,
  fail: (told) => {
    const limit = against(told, 'larger-is-worse')?.limit
    return sentenceOf([
      `auf ${crossingWords(told)} öffnen ${openers(told) ?? 'einige Vorübergehende'} am Tag das Tor unnötig${inState(told)}`,
      limit && `; nur ${limit} sind erträglich`,
    ])
  },
  undetermined: {
    ...untold,
    'missing-input': (told) =>
      openers(told) === undefined ? untold['missing-input'](told) : `${counted(told)} Niemand hat gesagt, wie viele erträglich sind.`,
  },
  notApplicable: {
    'no-subject': () => 'Kein Weg am Tor vorbei ist eingegeben, oder kein Feld öffnet es; unnötiges Öffnen wird nicht gezählt.',
    'not-required-by-concept': () => 'Das Schutzkonzept verlangt nichts über unnötiges Öffnen.',
  },
  mend: mendOr(
    () => 'Das öffnende Feld näher am Tor oder weiter weg vom Weg daran vorbei enden lassen, oder seinen Ausgang später ansprechen lassen.',
  ),
}

function airWords(told: Told): string {
  const once = number(told, 'opening_m3')
  const lost = number(told, 'lost_m3')
  const shown = (value: number) => figure({ value, unit: 'm3' }, told, 'larger-is-worse')
  return once === undefined || lost === undefined ? 'Luft' : `am Tag ${shown(lost)} Luft, bei jedem Öffnen ${shown(once)}`
}

const lost: Say = (told) => {
  const limit = against(told, 'larger-is-worse')?.limit
  return sentenceOf([`durch unnötiges Öffnen entweicht ${airWords(told)}`, limit && `; bis zu ${limit} sind erträglich`])
}

const unknownAir = unsettled(() => 'durch unnötiges Öffnen zu viel Luft entweicht', lost)

export const airLost: RuleWording = {
  name: 'Entwichene Luft',
  pass: lost,
  fail: (told) => {
    const limit = against(told, 'larger-is-worse')?.limit
    return sentenceOf([`durch unnötiges Öffnen entweicht ${airWords(told)}`, limit && `; nur ${limit} sind erträglich`])
  },
  undetermined: {
    ...unknownAir,
    'missing-input': (told) =>
      number(told, 'lost_m3') === undefined
        ? unknownAir['missing-input'](told)
        : `${lost(told)} Niemand hat gesagt, wie viel erträglich ist.`,
  },
  notApplicable: {
    'no-subject': () => 'Kein Weg am Tor vorbei ist eingegeben, oder kein Feld öffnet es; durch unnötiges Öffnen entweicht keine Luft.',
    'not-required-by-concept': () => 'Das Schutzkonzept verlangt nichts über Luft.',
  },
  mend: mendOr(() => 'Seltener öffnen, früher schließen oder nur teilweise öffnen.'),
}
