import type { ProtectionConcept } from '@sillsight/engine'
import { listed } from '../plain.ts'
import { sideName } from '../places.ts'
import { mendOr, type RuleWording, type Say, sentenceOf, unsettled } from '../rule-wording.ts'
import { type Told, word } from '../told.ts'

const people: Readonly<Record<ProtectionConcept['people'], string>> = { trained: 'only trained people pass', public: 'anybody may pass' }
const drive: Readonly<Record<ProtectionConcept['drive'], string>> = {
  'hold-to-run': 'it moves only while a button is held', 'impulse-in-view': 'it is started by an impulse from where the door is in view',
  'impulse-out-of-view': 'it is started by an impulse from where the door is not in view', automatic: 'it moves by itself',
}
const closingEdge: Readonly<Record<ProtectionConcept['closingEdge'], string>> = {
  'force-limited-edge': 'a force-limited edge guards the closing edge', 'presence-aid': 'a presence sensor helps to guard the closing edge',
  'contact-free': 'the closing edge is guarded without contact', none: 'nothing guards the closing edge',
}

/** The concept as people say it: who passes, how the door is driven, what guards the closing edge. */
export function conceptWords(concept: ProtectionConcept): string {
  return listed([people[concept.people], drive[concept.drive], closingEdge[concept.closingEdge]])
}

const stated: Say = ({ door }) => (door.concept ? `The protection concept is stated: ${conceptWords(door.concept)}.` : 'The protection concept is stated.')

export const conceptStated: RuleWording = {
  name: 'Protection concept stated',
  pass: stated,
  fail: () => 'The protection concept is contradictory, so no limits follow from it.',
  undetermined: {
    ...unsettled(() => 'the limits used here are the right ones', stated),
    'missing-input': () => 'Nobody has said who passes here, how the door is driven and what guards its closing edge. What has to be seen follows from that.',
  },
  notApplicable: {
    'no-subject': () => 'There is no power-driven leaf, so no protection concept is needed.',
    'not-required-by-concept': () => 'No protection concept is needed here.',
  },
  mend: mendOr(() => 'Correct the protection concept: who passes, how the door is driven, what guards the closing edge.'),
}

const present: Say = (told) => sentenceOf([`presence at the leaf is watched wherever the protection concept asks for it`, sidesOf(told) && `, on ${sidesOf(told)}`])

function sidesOf(told: Told): string | undefined {
  const side = word(told, 'side')
  if (side === 'a' || side === 'b') return `the side of ${sideName(told.door, side)}`
  return side === 'both' ? 'both sides' : undefined
}

function concepts({ door }: Told): string {
  return door.concept ? `, because ${listed([people[door.concept.people], drive[door.concept.drive]])}` : ''
}

export const presenceRequired: RuleWording = {
  name: 'Presence at the leaf required',
  pass: present,
  fail: (told) => sentenceOf([`nothing watches for somebody at the leaf`, sidesOf(told) && ` on ${sidesOf(told)}`, `, but the protection concept asks for it`, concepts(told)]),
  undetermined: unsettled(() => 'presence at the leaf is watched where it has to be', present),
  notApplicable: {
    'no-subject': () => 'There is no leaf at which presence would have to be watched.',
    'not-required-by-concept': ({ door }) => `The protection concept does not ask for presence sensing at the leaf${door.concept ? `: ${conceptWords(door.concept)}` : ''}.`,
  },
  mend: mendOr(() => 'Add a zone for presence at the leaf on that side, with a sensor whose output acts for it; or state another protection concept that carries the door.'),
}
