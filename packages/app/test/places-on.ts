import { parseDocument, toDoor } from '@sillsight/document'
import { judge } from '@sillsight/engine'
import { createElement, type FunctionComponent } from 'react'
import { renderToString } from 'react-dom/server'
import { Concept } from '../src/findings/concept.tsx'
import { AirGroup, Building, DriveGroup, FloorGroup, Lanes, Obstacles, TolerancesGroup } from '../src/screens/around.ts'
import { type AtDoor, AtDoorContext } from '../src/screens/at-door.ts'
import { Bodies } from '../src/screens/bodies.tsx'
import { Control } from '../src/screens/control.tsx'
import { Dangers } from '../src/screens/dangers.tsx'
import { DataSheets } from '../src/screens/data-sheets.tsx'
import { ForceRecords } from '../src/screens/force-records.tsx'
import { Hinged } from '../src/screens/hinged.tsx'
import { LaneMore } from '../src/screens/lane-more.tsx'
import { LeafGroup, OpeningGroup } from '../src/screens/measure.tsx'
import { Note } from '../src/screens/note.tsx'
import { Parked } from '../src/screens/parked.tsx'
import { PassingBy } from '../src/screens/passing-by.tsx'
import { Sensors } from '../src/screens/place.tsx'
import { Readings } from '../src/screens/readings.tsx'
import { SensorMore } from '../src/screens/sensor-more.tsx'
import { States } from '../src/screens/states.tsx'
import { Stops } from '../src/screens/stops.tsx'
import { Wiring } from '../src/screens/wiring.tsx'
import { ZoneMore } from '../src/screens/zone-more.tsx'
import { ZonesGroup } from '../src/screens/zones.tsx'

const GROUPS: readonly FunctionComponent[] = [
  AirGroup,
  Bodies,
  Building,
  Concept,
  Control,
  Dangers,
  DriveGroup,
  FloorGroup,
  ForceRecords,
  Hinged,
  Lanes,
  LeafGroup,
  Note,
  Obstacles,
  OpeningGroup,
  PassingBy,
  Parked,
  Readings,
  Sensors,
  States,
  Stops,
  TolerancesGroup,
  Wiring,
  ZonesGroup,
]

/** The places whose controls stand on the sheets of a door, chapters opened. The test that asks says which preferences there are. */
export function placesOn(file: Record<string, unknown>): readonly string[] {
  const parsed = parseDocument(JSON.stringify({ sillsight: 1, ...file }))
  if (!parsed.ok) throw new Error(`${String(file['name'])} must parse, got ${JSON.stringify(parsed.issues.slice(0, 3))}`)
  const door = toDoor(parsed.document)
  const at = {
    door: { id: 'door', edit: () => true },
    snapshot: { file: parsed.document, typed: {}, begun: {}, conflicts: [], photos: [], readOnly: undefined },
    answers: { shown: { door, judgement: judge(door, { depth: 'grid' }), notes: [], depth: 'grid', revision: 1 } },
  } as unknown as AtDoor
  const html = (group: FunctionComponent<never>, given = {}) =>
    renderToString(createElement(AtDoorContext, { value: at }, createElement(group as FunctionComponent, given)))
  const each = (group: FunctionComponent<{ index: number }>, list: readonly unknown[] = []) =>
    list.map((_, index) => html(group as FunctionComponent<never>, { index }))
  const all = [
    ...GROUPS.map((group) => html(group as FunctionComponent<never>)),
    ...(parsed.document.wiring ? [html(DataSheets as FunctionComponent<never>, { wiring: parsed.document.wiring })] : []),
    ...each(LaneMore, parsed.document.survey.lanes),
    ...each(SensorMore, parsed.document.sensors),
    ...each(ZoneMore, parsed.document.zones),
  ].join('')
  return [...all.matchAll(/data-(?:at|enters)="([^"]*)"/g)].map(([, place = '']) => place)
}
