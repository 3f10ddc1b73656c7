import type { Body, Door, InputPath } from '@sillsight/engine'
import { sizeWords } from './bodies.ts'
import type { Reader } from './language.ts'
import { called, plain } from './plain.ts'

/**
 * A place in the door file in words, with what it belongs to.
 *
 * @param named what it belongs to where the sentence around it has just named that
 */
export function needWords(door: Door, path: InputPath, reader: Reader, named: readonly string[] = []): string {
  const { needs } = reader.language
  const [head, id] = path.split('/')
  if (head === 'confirmations' && id !== undefined) return subjectName(door, path.slice('confirmations/'.length), reader)
  const whole = needs[path]
  const owner = partName(door, path, reader)
  const last = needs[path.slice(path.lastIndexOf('/') + 1)]
  if (whole !== undefined) return whole
  if (owner === undefined) return last ?? plain(path)
  if (last === undefined) return owner
  return named.includes(owner) ? last : `${last} (${owner})`
}

function subjectName(door: Door, id: string, reader: Reader): string {
  if (id.includes('/')) return needWords(door, id, reader) // a statement at a place of the file
  const body = door.bodies.find((each) => each.id === id)
  if (body) return bodyBySize(body, reader)
  const sensor = door.sensors.find((each) => each.id === id)
  const { things } = reader.language
  if (sensor) return things.sensor(called(sensor.name, reader))
  return reader.language.needs[id] ?? reader.language.values[id] ?? things.value(plain(id))
}

/** A body by its first posture's size; its name may speak of whom it stands for. */
function bodyBySize({ postures, id }: Body, reader: Reader): string {
  const [first] = postures
  return reader.language.things.body(first ? sizeWords(first, reader) : plain(id))
}

/** "sensor scanner", "zone at the leaf": what `sensors/0/...` or `zones/1/...` stands for. */
export function partName(door: Door, path: InputPath, reader: Reader): string | undefined {
  const [list, index] = path.split('/')
  const at = Number(index)
  const { things } = reader.language
  const wired = list === 'wiring' && index === 'sensors' ? door.wiring?.sensors[Number(path.split('/')[2])] : undefined
  if (wired) return things.sensor(called(door.sensors.find(({ id }) => id === wired.id)?.name ?? wired.id, reader))
  if (list === 'sensors' && door.sensors[at]) return things.sensor(called(door.sensors[at].name, reader))
  if (list === 'zones' && door.zones[at]) return things.zone(called(door.zones[at].name, reader))
  if (list === 'bodies' && door.bodies[at]) return bodyBySize(door.bodies[at], reader)
  const lane = list === 'survey' && index === 'lanes' ? door.lanes?.[Number(path.split('/')[2])] : undefined
  if (lane) return things.lane(called(lane.name, reader))
  const crossing = list === 'survey' && index === 'crossings' ? door.crossings?.[Number(path.split('/')[2])] : undefined
  if (crossing) return things.crossing(called(crossing.name, reader))
  const point = path.startsWith('survey/dangers/points/') ? door.dangers?.points[Number(path.split('/')[3])] : undefined
  if (point) return things.danger(called(point.name, reader))
  const record = list === 'forceRecords' ? door.forceRecords?.[at] : undefined
  return record && reader.language.quoted(plain(record.place))
}
