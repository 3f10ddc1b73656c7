import { describe, expect, it } from 'vitest'
import { findingOf } from '../../cases/judged.ts'
import { plainDoor } from '../../cases/plain-door.ts'

describe('concept-stated', () => {
  it('passes where the concept is stated, and repeats it', () => {
    expect(findingOf('concept-stated', plainDoor())).toMatchObject({
      id: 'concept-stated:door',
      verdict: 'pass',
      facts: { people: 'trained', drive: 'automatic', closingEdge: 'contact-free' },
    })
  })

  it('asks for it where it is missing', () => {
    expect(findingOf('concept-stated', plainDoor({ concept: undefined }))).toMatchObject({
      verdict: 'undetermined',
      reason: 'missing-input',
      needs: ['concept'],
    })
  })
})
