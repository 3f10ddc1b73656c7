import type { Body, Door, InputPath } from '@sillsight/engine'
import type { Units } from '../options.ts'
import { sizeWords } from './bodies.ts'
import { plain } from './plain.ts'

/** Places in the door file that a person would ask for by another name. Matched from the end of the path. */
const LAST_WORDS: Readonly<Record<string, string>> = {
  'survey/opening/width_mm': 'the clear width',
  'survey/opening/height_mm': 'the clear height',
  'survey/floor': 'the floor profile',
  'survey/floor/tolerance_mm': 'how far the floor may stand off the survey',
  'survey/obstacles': 'what stands around the opening',
  'survey/states': 'the states of the door',
  'survey/leaf': 'the leaf',
  survey: 'the survey',
  concept: 'the protection concept (who passes, how the door is driven, what guards the closing edge)',
  'concept/people': 'who passes: trained people or the public',
  'concept/drive': 'how the door is driven',
  'concept/closingEdge': 'what guards the closing edge',
  sensors: 'a sensor',
  edition: 'an edition of the rules that this program has',
  presenceTime_s: 'how long it holds a body that stands still',
  longestStay_s: 'how long a body may stay there',
  required_mm: 'the smallest size that has to be seen',
  allowedPocket_mm: 'the largest blind pocket that may stay',
  visibility_m: 'how far one sees in the fog',
  tolerance_mm: 'its tolerance',
  postures: 'its postures',
}

/** A place in the door file in words, with the path for those who edit the file. */
export function needWords(door: Door, path: InputPath, units: Units): string {
  const [head, id] = path.split('/')
  if (head === 'confirmations' && id !== undefined) return subjectName(door, path.slice('confirmations/'.length), units)
  const whole = LAST_WORDS[path]
  const owner = partName(door, path, units)
  const last = LAST_WORDS[path.slice(path.lastIndexOf('/') + 1)]
  if (whole !== undefined) return whole
  if (owner === undefined) return last ?? plain(path)
  return last === undefined ? owner : `${last} (${owner})`
}

function subjectName(door: Door, id: string, units: Units): string {
  const body = door.bodies.find((each) => each.id === id)
  if (body) return bodyBySize(body, units)
  const sensor = door.sensors.find((each) => each.id === id)
  return sensor ? `sensor \u201c${plain(sensor.name)}\u201d` : `the value ${plain(id)}`
}

/** A body by its first posture's size; its name may speak of whom it stands for. */
function bodyBySize({ postures, id }: Body, units: Units): string {
  const [first] = postures
  return `the test body ${first ? sizeWords(first, units) : plain(id)}`
}

/** "sensor scanner", "zone at the leaf": what `sensors/0/...` or `zones/1/...` stands for. */
export function partName(door: Door, path: InputPath, units: Units): string | undefined {
  const [list, index] = path.split('/')
  const at = Number(index)
  if (list === 'sensors' && door.sensors[at]) return `sensor \u201c${plain(door.sensors[at].name)}\u201d`
  if (list === 'zones' && door.zones[at]) return `zone \u201c${plain(door.zones[at].name)}\u201d`
  if (list === 'bodies' && door.bodies[at]) return bodyBySize(door.bodies[at], units)
  return undefined
}
