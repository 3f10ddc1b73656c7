import { describe, expect, it } from 'vitest'
import { spansOf, spansOfAll, timeAt, turningPoints, type View } from './output.ts'

const view = (visible: readonly (readonly [number, number])[], response_s: number, hold_s: number): View => ({
  visible: visible.map(([from_mm, to_mm]) => ({ from_mm, to_mm })),
  response_s,
  hold_s,
})
const times = (spans: ReturnType<typeof spansOf>, slowness = 1) => spans.map(({ on, off }) => [timeAt(on, slowness), timeAt(off, slowness)])

describe('spansOf', () => {
  // method-cases T3, hand calculation, samples of 20 ms in ms: visible at samples 1-2 and 9-15
  it('is on from sample 12 through 19: too short a sight does nothing, and the hold follows the last sight', () => {
    expect(
      times(
        spansOf(
          view(
            [
              [20, 40],
              [180, 300],
            ],
            60,
            80,
          ),
          1,
        ),
      ),
    ).toEqual([[12 * 20, 19 * 20]])
  })

  it('needs no new response where the body is seen again during the hold', () => {
    expect(
      times(
        spansOf(
          view(
            [
              [0, 100],
              [150, 151],
            ],
            60,
            50,
          ),
          1,
        ),
      ),
    ).toEqual([[60, 201]])
    expect(
      times(
        spansOf(
          view(
            [
              [0, 100],
              [150.1, 151],
            ],
            60,
            50,
          ),
          1,
        ),
      ),
    ).toEqual([[60, 150]])
  })

  it('turns places into times by the slowness: a quick body is out of sight before the response', () => {
    const one = view([[0, 1000]], 0.5, 0.1)
    expect(times(spansOf(one, 1 / 1000), 1 / 1000)).toEqual([[0.5, 1.1]])
    expect(spansOf(one, 1 / 2001)).toEqual([])
  })
})

describe('spansOfAll', () => {
  it('joins what the outputs forbid together', () => {
    const views = [view([[0, 100]], 10, 0), view([[90, 200]], 10, 5), view([[300, 400]], 0, 0)]
    expect(times(spansOfAll(views, 1))).toEqual([
      [10, 205],
      [300, 400],
    ])
  })
})

describe('turningPoints', () => {
  it('names the slownesses at which a stretch gets too short, the hold bridges a gap, and two outputs begin to overlap', () => {
    const one = view(
      [
        [0, 1000],
        [1500, 3000],
      ],
      0.5,
      0.2,
    )
    expect(turningPoints([one], 1e-5, 1)).toEqual([1e-5, 0.5 / 1500, 0.2 / 500, 0.5 / 1000, 1])
    const other = view([[1100, 1300]], 0, 0)
    expect(turningPoints([one, other], 1e-5, 1)).toContain(0.2 / 100)
  })
})
