import type { CaughtPart, DangerKind, Guard } from '@sillsight/engine'
import { figure } from '../figures.ts'
import { plain } from '../plain.ts'
import { type RuleWording, type Say, sentenceOf } from '../rule-wording.ts'
import { against, inState, limitOf, nameIn, number, type Told, word } from '../told.ts'
import { phrases } from './phrases.ts'
import { mendOr, unsettled } from './unsettled.ts'

const KINDS: Readonly<Record<DangerKind, string>> = {
  tail: 'the tail of a leaf that runs back',
  sweep: 'the sweep of a leaf that swings',
  hinge: 'the gap at the hinge',
  folding: 'parts that fold',
  'draw-in': 'draw-in',
  lifting: 'riding up with the leaf',
  'secondary-edge': 'another closing edge',
  'leaf-opening': 'reaching through the leaf',
}

const PARTS: Readonly<Record<CaughtPart, string>> = {
  body: 'a whole body',
  head: 'a head',
  leg: 'a leg',
  foot: 'a foot',
  toes: 'toes',
  arm: 'an arm',
  hand: 'a hand',
  finger: 'a finger',
}

const GUARDS: Readonly<Record<Guard['how'], string>> = {
  cover: 'a cover that is high enough, with openings that nobody reaches through',
  presence: 'presence sensing over that place, which stops this movement too',
  edge: 'a sensitive edge that stops this movement too',
  'nothing-to-hold': 'the leaf has nothing to stand on or hold on to',
  'load-stop': 'the drive stops when it lifts more than it should',
}

/** "between the tail of the leaf and the lamp post", "at the hinge of the leaf (“left hinge”)". */
function where(told: Told): string {
  const obstacle = nameIn(told, 'obstacleName')
  const name = nameIn(told, 'dangerName')
  const thing = obstacle === undefined ? 'what stands there' : told.language.things.obstacle(obstacle)
  const called = name === undefined || name === obstacle ? '' : ` (${told.language.quoted(name)})`
  const places: Readonly<Record<string, string>> = {
    tail: `between the tail of the leaf and ${thing}`,
    sweep: `between the swinging leaf and ${thing}`,
    hinge: 'at the hinge of the leaf',
    folding: 'between the parts of the folding leaf',
    'draw-in': 'where the leaf goes in',
    lifting: 'where somebody may ride up with the leaf',
    'secondary-edge': 'at another closing edge',
    'leaf-opening': 'where somebody may reach through the leaf',
  }
  return `${places[word(told, 'kind') ?? ''] ?? 'at a danger point'}${called}${inState(told)}`
}

/** A gap that somebody measured needs no word; one out of the geometry says that it is no reading. */
function computed(told: Told): string {
  return number(told, 'gapX_mm') === undefined ? '' : ' (computed)'
}

function part(told: Told): string {
  return PARTS[(word(told, 'caught') ?? 'body') as CaughtPart] ?? PARTS.body
}

const guarded: Say = (told) => {
  const by = word(told, 'by')
  const found = against(told, 'smaller-is-worse')
  if (by === 'height' && found)
    return sentenceOf([where(told), ` nobody is within reach: it begins ${found.measured} up, and ${found.limit} is enough`])
  if (by === 'gap' && found)
    return sentenceOf([
      where(told),
      ` at least ${found.measured}${computed(told)} are left on the whole way; ${part(told)} needs ${found.limit}`,
    ])
  const guard = by === undefined ? undefined : GUARDS[by as Guard['how']]
  return sentenceOf([where(told), ' nobody is hurt', guard && `: ${guard}`])
}

const CAUTION =
  'Before anybody works there: isolate the drive and lock it off, block the leaf (springs and suspension are under tension), cordon off the lane. Try it with a test body, never with a person.'

const fewer: Say = (told) => {
  const kind = word(told, 'kind')
  if (kind === 'lifting') return 'Take away whatever one could stand on or hold on to, or cover it.'
  if (kind === 'leaf-opening') return 'Close the openings, or make them so narrow that nobody reaches through to the danger behind.'
  return 'Widen the gap, cover the place up to the height that has to be guarded so that nobody reaches through, or watch it with presence sensing that stops this movement too. Where only a smaller part of a body gets in, say which.'
}

export const dangerPoint: RuleWording = {
  name: 'Danger point besides the closing edge',
  pass: guarded,
  fail: (told) => {
    const kind = word(told, 'kind')
    const nothing = (number(told, 'guards') ?? 0) > 0 ? 'no guard there is enough' : 'nothing guards it'
    const found = kind === 'lifting' || kind === 'leaf-opening' ? undefined : against(told, 'smaller-is-worse')
    if (!found) return sentenceOf([where(told), `, ${nothing}`])
    return sentenceOf([
      where(told),
      ` only ${found.measured}${computed(told)} are left on the way, and ${nothing}; ${part(told)} needs ${found.limit}`,
    ])
  },
  undetermined: {
    ...unsettled((told) => `nobody is hurt ${where(told)}`, guarded),
    'not-computable': (told) => {
      const by = word(told, 'by')
      const guard = by === undefined ? undefined : GUARDS[by as Guard['how']]
      return sentenceOf([
        `whether nobody is hurt ${where(told)} cannot be computed`,
        guard && ` from what guards it (${guard})`,
        '; test it on site',
      ])
    },
  },
  notApplicable: {
    'no-subject': () => 'No danger point besides the closing edge is listed or computed.',
    'not-required-by-concept': () => 'The door moves only while a button is held by somebody who sees it, so danger points are not judged.',
  },
  mend: (told) => [mendOr(fewer)(told), needsCaution(told) && CAUTION].filter(Boolean).join(' '),
}

function needsCaution({ finding }: Told): boolean {
  return finding.verdict === 'fail' || finding.verdict === 'undetermined'
}

const allLooked: Say = () => 'Somebody looked for every kind of danger that such a leaf has besides its closing edge.'

function missing(told: Told): string {
  const kinds = (word(told, 'open') ?? '').split(' ').filter(Boolean)
  return phrases.listed(kinds.map((kind) => KINDS[kind as DangerKind] ?? plain(kind)))
}

export const dangersListed: RuleWording = {
  name: 'Danger points looked for',
  pass: allLooked,
  fail: (told) => `Dangers besides the closing edge were not looked for: ${missing(told) || 'some kinds'}.`,
  undetermined: {
    ...unsettled(() => 'the leaf endangers anybody besides with its closing edge', allLooked),
    'missing-input': (told) => {
      const kinds = missing(told)
      const limit = limitOf(told)
      const of = limit ? `, out of ${figure(limit, told)} kinds` : ''
      return kinds === ''
        ? 'It is not known what the leaf may do to people besides striking them with its closing edge, because nobody described the leaf.'
        : `Nobody has said whether the leaf, opening too, endangers anybody otherwise than with its closing edge: ${kinds}${of}.`
    },
  },
  notApplicable: {
    'no-subject': () => 'There is no leaf that could endanger anybody.',
    'not-required-by-concept': () =>
      'The door moves only while a button is held by somebody who sees it, so danger points are not looked for.',
  },
  mend: mendOr((told) => `Look for ${missing(told) || 'each kind'}, and list what is there or say that it is not.`),
}
