import { parseDocument, toDoor } from '@sillsight/document'
import { judge } from '@sillsight/engine'
import { createElement, type FunctionComponent } from 'react'
import { renderToString } from 'react-dom/server'
import { describe, expect, it, vi } from 'vitest'
import { answers, LACKING, needsOf, patternOf } from '../../test/lacking-doors.ts'
import { EVERY_NEED } from '../../test/needs.ts'
import { Concept } from '../findings/concept.tsx'
import { AirGroup, Building, DriveGroup, FloorGroup, Lanes, Obstacles, TolerancesGroup } from './around.ts'
import { type AtDoor, AtDoorContext } from './at-door.ts'
import { Bodies } from './bodies.tsx'
import { Control } from './control.tsx'
import { Dangers } from './dangers.tsx'
import { ForceRecords } from './force-records.tsx'
import { Hinged } from './hinged.tsx'
import { LaneMore } from './lane-more.tsx'
import { LeafGroup, OpeningGroup } from './measure.tsx'
import { Parked } from './parked.tsx'
import { PassingBy } from './passing-by.tsx'
import { Sensors } from './place.tsx'
import { SensorMore } from './sensor-more.tsx'
import { Stops } from './stops.tsx'
import { Wiring } from './wiring.tsx'
import { ZonesGroup } from './zones.tsx'

vi.mock('../preferences.ts', () => ({ usePreferences: () => ({ theme: 'paper', units: 'metric', language: 'en' }) }))

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
  Obstacles,
  OpeningGroup,
  PassingBy,
  Parked,
  Sensors,
  Stops,
  TolerancesGroup,
  Wiring,
  ZonesGroup,
]

/** The places whose controls stand on the sheets of a door, chapters opened. */
function placesOn(file: Record<string, unknown>): readonly string[] {
  const parsed = parseDocument(JSON.stringify({ sillsight: 1, ...file }))
  if (!parsed.ok) throw new Error(`${String(file['name'])} must parse`)
  const door = toDoor(parsed.document)
  const at = {
    door: { id: 'door', edit: () => true },
    snapshot: { file: parsed.document, typed: {}, conflicts: [], photos: [], readOnly: undefined },
    answers: { shown: { door, judgement: judge(door, { depth: 'grid' }), notes: [], depth: 'grid', revision: 1 } },
  } as unknown as AtDoor
  const html = (group: FunctionComponent<never>, given = {}) =>
    renderToString(createElement(AtDoorContext, { value: at }, createElement(group as FunctionComponent, given)))
  const all = [
    ...GROUPS.map((group) => html(group as FunctionComponent<never>)),
    ...(parsed.document.survey.lanes ?? []).map((_, index) => html(LaneMore as FunctionComponent<never>, { index })),
    ...(parsed.document.sensors ?? []).map((_, index) => html(SensorMore as FunctionComponent<never>, { index })),
  ].join('')
  return [...all.matchAll(/data-at="([^"]*)"/g)].map(([, place = '']) => place)
}

describe('every need that the engine can state', () => {
  it('has a control on the sheets in which its value is entered', () => {
    const nowhere: string[] = []
    const met = new Set<string>()
    for (const file of LACKING) {
      const places = placesOn(file)
      for (const need of needsOf(file)) {
        met.add(patternOf(need))
        if (!need.startsWith('confirmations/') && !places.some((place) => answers(place, need, file)))
          nowhere.push(`${String(file['name'])}: ${need}`)
      }
    }
    expect(nowhere).toEqual([])
    expect([...met].sort()).toEqual([...EVERY_NEED].sort())
  })
})
