import { approachDistance } from './de/approach.ts'
import { beamGapMax, crawlUnder, floorClearance, guardedHeight, leafInField, segmentBlocked } from './de/beams.ts'
import { unseenInBlanking } from './de/blanking.ts'
import { openingInTime, stopsIfShut } from './de/calling.ts'
import { conceptStated, presenceRequired, referenceBody } from './de/concept.ts'
import { controlFact } from './de/control.ts'
import { blindPocket, deadGround, mustNotSee, smallestBody, zoneCovered } from './de/coverage.ts'
import { airLost, needlessOpenings } from './de/crossing.ts'
import { dangerPoint, dangersListed } from './de/dangers.ts'
import { permittedFunction, reliabilityEstimate } from './de/declared.ts'
import { contactEnergy, contactForce } from './de/forces.ts'
import { phrases } from './de/phrases.ts'
import { presenceTime, sensorValues, zoneOnlyDevice } from './de/sensors.ts'
import { contactRating, energyLimited, supplyCurrent, supplyVoltage } from './de/supply.ts'
import { passageGap, struckByLeaf, walkedInto } from './de/traffic.ts'
import { warmUp } from './de/waking.ts'
import { singleFault, wiringSlips } from './de/wiring.ts'
import type { Language } from './language.ts'

export const german: Language = {
  ...phrases,
  tag: 'de',
  rules: {
    'concept-stated': conceptStated,
    'presence-required': presenceRequired,
    'zone-covered': zoneCovered,
    'blind-pocket': blindPocket,
    'must-not-see': mustNotSee,
    'beam-gap-max': beamGapMax,
    'dead-ground': deadGround,
    'smallest-body': smallestBody,
    'floor-clearance': floorClearance,
    'leaf-in-field': leafInField,
    'unseen-in-blanking': unseenInBlanking,
    'presence-time': presenceTime,
    'struck-by-leaf': struckByLeaf,
    'walked-into': walkedInto,
    'passage-gap': passageGap,
    'dangers-listed': dangersListed,
    'danger-point': dangerPoint,
    'contact-force': contactForce,
    'contact-energy': contactEnergy,
    'control-fact': controlFact,
    'warm-up': warmUp,
    'single-fault': singleFault,
    'wiring-slips': wiringSlips,
    'approach-distance': approachDistance,
    'opening-in-time': openingInTime,
    'stops-if-shut': stopsIfShut,
    'needless-openings': needlessOpenings,
    'air-lost': airLost,
    'permitted-function': permittedFunction,
    'reliability-estimate': reliabilityEstimate,
    'supply-voltage': supplyVoltage,
    'supply-current': supplyCurrent,
    'energy-limited': energyLimited,
    'contact-rating': contactRating,
    'segment-blocked': segmentBlocked,
    'zone-only-device': zoneOnlyDevice,
    'guarded-height': guardedHeight,
    'sensor-values': sensorValues,
    'reference-body': referenceBody,
    'crawl-under': crawlUnder,
  },
}
