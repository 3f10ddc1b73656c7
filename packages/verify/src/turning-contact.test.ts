import { expect, it } from 'vitest'
import { diceOf } from '../test/random-numbers.ts'
import { velocityAt } from './turning-contact.ts'
import { type Hung, panelsAt, wayOfHung } from './turning-leaf.ts'

it('has a point of a panel go as fast and to where it is a little later (200 random leaves, seed 3)', () => {
  const dice = diceOf(3)
  let worst = 0
  for (let k = 0; k < 200; k++) {
    const arm = dice.between(400, 1500)
    const folds = dice.chance(0.6)
    const hung: Hung = {
      leaves: dice.pick([
        [{ hingeX: 0, toward: 1 }],
        [
          { hingeX: 0, toward: 1 },
          { hingeX: 2000, toward: -1 },
        ],
      ]),
      opensTo: dice.pick(['a', 'b']),
      arm,
      second: folds ? arm + dice.pick([0, 30, 300]) : undefined,
      openAngle_deg: folds ? 80 : 150,
      half: 30,
    }
    const [way, step, speed] = [dice.between(0.1, 0.9) * wayOfHung(hung), 0.001, 500]
    const [now, later] = [panelsAt(hung, way), panelsAt(hung, way - step)]
    const p = dice.whole(0, now.length - 1)
    const [along, across] = [dice.between(0, 1), dice.between(-30, 30)]
    const at = ({ x, y, alongX, alongY, length }: (typeof now)[number]) =>
      [x + along * length * alongX - across * alongY, y + along * length * alongY + across * alongX] as const
    const [panel, moved] = [now[p], later[p]]
    if (panel === undefined || moved === undefined) throw new Error('the panel must be there')
    const [a, b] = [at(panel), at(moved)]
    const [vx, vy] = velocityAt(hung, p, way, speed, a)
    worst = Math.max(worst, Math.abs(vx - ((b[0] - a[0]) / step) * speed), Math.abs(vy - ((b[1] - a[1]) / step) * speed))
  }
  expect(worst).toBeLessThan(0.01)
})
