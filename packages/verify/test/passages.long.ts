import { expect, it } from 'vitest'
import { seedsFrom } from './evidence-holds.ts'
import { holdChanges } from './passing-doors.ts'

it('evidence that nobody is struck is refused after every change by which somebody is (seeds 61 to 1,000, 10 changes each)', {
  timeout: 3_600_000,
}, () => {
  const { accepted, refused } = holdChanges(seedsFrom(61, 1000), 10)
  expect(accepted).toEqual([])
  expect(refused).toBeGreaterThan(500)
})
