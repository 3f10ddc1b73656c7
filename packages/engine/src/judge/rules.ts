import { airLost } from './air-lost.ts'
import { approachDistance } from './approach-distance.ts'
import { beamGapMax } from './beam-gap-max.ts'
import { blindPocket } from './blind-pocket.ts'
import { conceptStated } from './concept-stated.ts'
import { contactEnergy } from './contact-energy.ts'
import { contactForce } from './contact-force.ts'
import { contactRating } from './contact-rating.ts'
import { controlFact } from './control-fact.ts'
import { crawlUnder } from './crawl-under.ts'
import { dangerPoint } from './danger-point.ts'
import { dangersListed } from './dangers-listed.ts'
import { deadGroundRule } from './dead-ground.ts'
import { energyLimited } from './energy-limited.ts'
import { floorClearance } from './floor-clearance.ts'
import { guardedHeight } from './guarded-height.ts'
import { leafInFieldRule } from './leaf-in-field.ts'
import { mustNotSee } from './must-not-see.ts'
import { needlessOpenings } from './needless-openings.ts'
import { openingInTime } from './opening-in-time.ts'
import { passageGap } from './passage-gap.ts'
import { permittedFunction } from './permitted-function.ts'
import { presenceRequired } from './presence-required.ts'
import { presenceTime } from './presence-time.ts'
import { referenceBody } from './reference-body.ts'
import { reliabilityEstimate } from './reliability-estimate.ts'
import type { Rule } from './rule.ts'
import { segmentBlocked } from './segment-blocked.ts'
import { sensorValues } from './sensor-values.ts'
import { singleFault } from './single-fault.ts'
import { smallestBodyRule } from './smallest-body.ts'
import { stopsIfShut } from './stops-if-shut.ts'
import { struckByLeaf } from './struck-by-leaf.ts'
import { supplyCurrent } from './supply-current.ts'
import { supplyVoltage } from './supply-voltage.ts'
import { unseenInBlanking } from './unseen-in-blanking.ts'
import { walkedInto } from './walked-into.ts'
import { warmUp } from './warm-up.ts'
import { wiringSlips } from './wiring-slips.ts'
import { zoneCovered } from './zone-covered.ts'
import { zoneOnlyDevice } from './zone-only-device.ts'

/** Every rule, in the order in which findings of equal verdict are shown: the concept first, then what is seen, then the sensors themselves. */
export const RULES: readonly Rule[] = [
  conceptStated,
  presenceRequired,
  permittedFunction,
  reliabilityEstimate,
  zoneCovered,
  blindPocket,
  mustNotSee,
  smallestBodyRule,
  deadGroundRule,
  beamGapMax,
  referenceBody,
  guardedHeight,
  crawlUnder,
  presenceTime,
  struckByLeaf,
  walkedInto,
  passageGap,
  dangersListed,
  dangerPoint,
  contactForce,
  contactEnergy,
  controlFact,
  warmUp,
  singleFault,
  wiringSlips,
  approachDistance,
  openingInTime,
  stopsIfShut,
  needlessOpenings,
  airLost,
  leafInFieldRule,
  unseenInBlanking,
  floorClearance,
  sensorValues,
  segmentBlocked,
  zoneOnlyDevice,
  supplyVoltage,
  supplyCurrent,
  energyLimited,
  contactRating,
]
