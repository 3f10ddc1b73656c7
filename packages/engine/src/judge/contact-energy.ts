import type { InputPath } from '../model/source.ts'
import { kineticEnergy_J } from '../motion/leaf-run.ts'
import { turningEnergy_J, turningLeaf } from '../motion/turning-leaf.ts'
import { mayTouch } from './contact-force.ts'
import { NOTHING, notApplicable, quantity, step, THE_DOOR } from './drafts.ts'
import { CONCEPT, DRIVE, HINGED, LEAF } from './paths.ts'
import type { Rule } from './rule.ts'

const FORMULAS = {
  swings: 'I w^2 / 2 = m v^2 / 6, with I = m L^2 / 3 of a uniform panel and w = v / L',
  folds: 'm / 6 (a^2 + a b + b^2) of each panel, a and b the velocities of its ends where it is widest open',
}

/**
 * Where protection rests on touching with little energy, the leaf at its largest closing speed has no more. The limit is for pedestrian doors of that
 * kind and applied to no other. Of a leaf that swings it is `m v^2 / 6`, v that of its edge. Of one that folds, or of which nobody said how it is hung, only a bound is
 * known (that where it is widest open; as if all of it moved as fast as its edge): below the limit it passes, above it is not settled. One finding, about the door.
 *
 * Facts: [`mass_kg`, `speed_mm_per_s`, `isBound`].
 */
export const contactEnergy: Rule = {
  id: 'contact-energy',
  source: { basis: 'common practice', note: 'kinetic energy of the leaf at its largest closing speed' },
  judge: ({ door, values }) => {
    const { concept, leaf, drive } = door
    const restsOn = { ...NOTHING, inputs: [CONCEPT, LEAF, DRIVE], values: [values.lowEnergy] }
    const frame = { subject: THE_DOOR, restsOn }
    const missing = (needs: readonly InputPath[]) => [
      { ...frame, verdict: 'undetermined' as const, reason: 'missing-input' as const, needs, steps: [], facts: {} },
    ]
    if (!concept) return missing([CONCEPT])
    if (!mayTouch(concept) || concept.lowEnergy !== 'yes')
      return [notApplicable('not-required-by-concept', { closingEdge: concept.closingEdge })]
    const { closeSpeed_mm_per_s: speed, movingMass_kg: mass_kg } = drive ?? {}
    if (!leaf || speed === undefined || mass_kg === undefined)
      return missing([
        ...(leaf ? [] : [LEAF]),
        ...(speed === undefined ? [`${DRIVE}/closeSpeed_m_per_s`] : []),
        ...(mass_kg === undefined ? [`${DRIVE}/movingMass_kg`] : []),
      ])
    const turning = turningLeaf(door)
    const measured = quantity(turning ? turningEnergy_J(turning, mass_kg, turning.way_mm, speed) : kineticEnergy_J(mass_kg, speed), 'J')
    const limit = quantity(values.lowEnergy.value, 'J')
    const swings = turning !== undefined && leaf.hinged?.secondPanel_mm === undefined
    const isBound = leaf.travel === 'turning' && !swings
    const inputs = [`${DRIVE}/movingMass_kg`, `${DRIVE}/closeSpeed_m_per_s`]
    const judged = {
      ...frame,
      measured,
      limit,
      steps: [
        turning
          ? step(
              'kinetic energy',
              measured,
              'motion/turning-leaf',
              { inputs: [...inputs, HINGED] },
              swings ? FORMULAS.swings : FORMULAS.folds,
            )
          : step('kinetic energy', measured, 'motion/leaf-run', { inputs }, 'm v^2 / 2'),
        step('low energy', limit, 'judge/contact-energy', { values: [values.lowEnergy] }),
      ],
      facts: { mass_kg, speed_mm_per_s: speed, isBound },
    }
    if (measured.value <= limit.value) return [{ ...judged, verdict: 'pass' }]
    return isBound ? [{ ...judged, verdict: 'undetermined', reason: 'not-computable', needs: [] }] : [{ ...judged, verdict: 'fail' }]
  },
}
