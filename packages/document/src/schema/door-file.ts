import { BOUNDS } from '../bounds.ts'
import { DEFAULTS } from '../door/defaults.ts'
import { bodySchema, libraryBodySchema } from './body.ts'
import { list, name, note, optional, type Plain, record } from './parts.ts'
import { forceRecordSchema } from './records.ts'
import { anythingPart, choicePart, entriesPart, textPart } from './schema.ts'
import { librarySensorSchema, sensorSchema } from './sensor.ts'
import { confirmationSchema } from './source.ts'
import { surveySchema } from './survey.ts'
import { tolerancesSchema } from './tolerances.ts'
import { wiringSchema } from './wiring.ts'
import { conceptSchema, zoneSchema } from './zone.ts'

/** The version that this program writes. Older files are migrated, newer ones refused. */
export const VERSION = 1

const librarySchemaReference = record(
  {
    file: name('Path of the library, relative to the door file and inside its folder.'),
    sha256: textPart(
      { form: /^[0-9a-f]{64}$/ },
      '64 hexadecimal digits in lower case',
      'SHA-256 of its text: the door is judged by this content and by no other.',
    ),
  },
  'A library of sensors and bodies of your own, pinned by its content.',
)

const reserved = (what: string) => optional(anythingPart(`Reserved for ${what}; carried untouched.`))

export const doorFileSchema = record(
  {
    sillsight: choicePart([VERSION], `version ${VERSION}`, 'Version of the file.'),
    name: optional(name('Name of the door.')),
    note: optional(note('Anything worth saying.')),
    edition: optional(
      textPart({ form: /^\d{4}-(0[1-9]|1[0-2])$/ }, 'an edition as 2026-11', 'Edition of the rule set that judges; the newest if absent.'),
    ),
    sides: optional(
      record({ a: name('Side A, y > 0.'), b: name('Side B, y < 0.') }, 'Names of the two sides on site, as "yard" and "hall".'),
    ),
    survey: surveySchema,
    sensors: optional(list(sensorSchema, { upTo: BOUNDS.sensors }, 'Sensors.')),
    bodies: optional(
      list(bodySchema, { from: 1, upTo: BOUNDS.bodies }, 'Test bodies. If absent, the reference body for presence detection is assumed.'),
    ),
    zones: optional(
      list(
        zoneSchema,
        { from: 1, upTo: BOUNDS.zones },
        `Zones. If absent, presence at the leaf is assumed, ${DEFAULTS.zoneDepth_mm} mm deep, on each side that has a sensor.`,
      ),
    ),
    concept: optional(conceptSchema),
    tolerances: optional(tolerancesSchema),
    forceRecords: optional(list(forceRecordSchema, { upTo: BOUNDS.forceRecords }, 'Forces that were measured on the closing edge.')),
    confirmations: optional(
      list(confirmationSchema, { upTo: BOUNDS.confirmations }, 'Figures from memory that somebody held against their page.'),
    ),
    libraries: optional(list(librarySchemaReference, { upTo: BOUNDS.libraries }, 'Libraries of your own.')),
    drive: reserved('the drive and its timings'),
    wiring: optional(wiringSchema),
    surroundings: reserved('weather, sun, dirt'),
    records: reserved('test records and visits'),
  },
  'Everything about one door. Lengths in mm, angles in degrees, slopes in percent.',
)

export const libraryFileSchema = record(
  {
    sillsightLibrary: choicePart([1], 'version 1', 'Version of the library.'),
    name: optional(name('Name of the library.')),
    note: optional(note('Anything worth saying.')),
    sensors: optional(entriesPart(librarySensorSchema, 'an object { id: sensor }', 'Sensors by id.')),
    bodies: optional(entriesPart(libraryBodySchema, 'an object { id: body }', 'Bodies by id.')),
  },
  'A library that door files refer to.',
)

export type DoorFile = Plain<typeof doorFileSchema>
export type LibraryFile = Plain<typeof libraryFileSchema>
