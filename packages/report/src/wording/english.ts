import { approachDistance } from './en/approach.ts'
import { beamGapMax, crawlUnder, floorClearance, guardedHeight, leafInField, segmentBlocked } from './en/beams.ts'
import { unseenInBlanking } from './en/blanking.ts'
import { openingInTime, stopsIfShut } from './en/calling.ts'
import { conceptStated, presenceRequired, referenceBody } from './en/concept.ts'
import { controlFact } from './en/control.ts'
import { blindPocket, deadGround, mustNotSee, smallestBody, zoneCovered } from './en/coverage.ts'
import { airLost, needlessOpenings } from './en/crossing.ts'
import { dangerPoint, dangersListed } from './en/dangers.ts'
import { permittedFunction, reliabilityEstimate } from './en/declared.ts'
import { contactEnergy, contactForce } from './en/forces.ts'
import { phrases } from './en/phrases.ts'
import { presenceTime, sensorValues, zoneOnlyDevice } from './en/sensors.ts'
import { contactRating, energyLimited, supplyCurrent, supplyVoltage } from './en/supply.ts'
import { passageGap, struckByLeaf, walkedInto } from './en/traffic.ts'
import { warmUp } from './en/waking.ts'
import { singleFault, wiringSlips } from './en/wiring.ts'
import type { Language } from './language.ts'

export const english: Language = {
  ...phrases,
  tag: 'en',
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
