/**
 * Sine and its kin with the same bits on every engine: only + - * / and sqrt, which IEEE 754 rounds in one way.
 * Engines may differ in the last bit of their own functions, and then two browsers would draw two maps.
 *
 * The polynomials are the minimax polynomials of fdlibm 5.3, whose notice follows; the code around them reads no bits of a number.
 * "ulp" below is the distance of the result from the exact value, in units of the last place of the result,
 * as the largest that the tests beside this file allow.
 *
 * Copyright (C) 1993 by Sun Microsystems, Inc. All rights reserved. Developed at SunSoft, a Sun Microsystems, Inc. business.
 * Permission to use, copy, modify, and distribute this software is freely granted, provided that this notice is preserved.
 */

/** The double nearest to pi; pi itself is larger by 1.2e-16. */
export const PI = Math.PI
const HALF_PI = 1.5707963267948966
const HALF_PI_REST = 6.123233995736766e-17 // pi / 2 - HALF_PI
const LARGEST_ANGLE_RAD = 1e5

/**
 * Degrees to radians, rounded once: `radians(180) === PI`, `radians(90) === PI / 2`. What is left is the rounding of the angle itself,
 * so `cos(radians(90))` is 6.1e-17 and `sin(radians(180))` is 1.2e-16, not 0.
 */
export function radians(angle_deg: number): number {
  // pi / 180 in two parts, and the product with the first one exact (Dekker, 1971)
  const high = 1.7453292519943295e-2
  const rest = 2.9486522708701687e-19
  const product = angle_deg * high
  const angleTop = top26(angle_deg)
  const angleEnd = angle_deg - angleTop
  const highTop = top26(high)
  const highEnd = high - highTop
  const lost = angleEnd * highEnd - (product - angleTop * highTop - angleEnd * highTop - angleTop * highEnd)
  return product + (lost + angle_deg * rest)
}

/** Within 0.8 ulp for at most 1e5 rad either way; throws beyond. `sin(-x)` is exactly `-sin(x)`. */
export function sin(angle_rad: number): number {
  return angle_rad < 0 ? -sineAfterQuarters(-angle_rad, 0) : sineAfterQuarters(angle_rad, 0)
}

/** Within 0.8 ulp for at most 1e5 rad either way; throws beyond. `cos(-x)` is exactly `cos(x)`. */
export function cos(angle_rad: number): number {
  return sineAfterQuarters(Math.abs(angle_rad), 1)
}

/** sin(x + quarters * pi / 2) for x >= 0. */
function sineAfterQuarters(x: number, quarters: number): number {
  if (!(x <= LARGEST_ANGLE_RAD)) throw new RangeError(`angle_rad must be within 1e5 of 0, got ${x}`)
  // Cody and Waite: take away n quarter turns in parts of 33 bits, whose products with n are exact
  const n = Math.floor(x * 0.6366197723675814 + 0.5)
  const first = x - n * 1.5707963267341256
  const second = n * 6.077100506303966e-11
  const afterSecond = first - second
  const third = n * 2.0222662487111665e-21
  const afterThird = afterSecond - third
  const lost = differenceLoss(first, second, afterSecond) + differenceLoss(afterSecond, third, afterThird) - n * 8.4784276603689e-32
  const high = afterThird + lost
  const low = afterThird - high + lost
  const quadrant = (n + quarters) % 4
  const size = quadrant % 2 === 0 ? sinePiece(high, low) : cosinePiece(high, low)
  return quadrant < 2 ? size : -size
}

/** What rounding took from a - b = difference, exactly (Knuth). */
function differenceLoss(a: number, b: number, difference: number): number {
  const b2 = a - difference
  return a - (difference + b2) + (b2 - b)
}

/** sin(x + low) for |x| <= pi / 4. */
function sinePiece(x: number, low: number): number {
  const z = x * x
  const v = z * x
  const r =
    8.33333333332249e-3 +
    z * (-1.984126982985795e-4 + z * (2.7557313707070068e-6 + z * (-2.5050760253406863e-8 + z * 1.58969099521155e-10)))
  return x - (z * (0.5 * low - v * r) - low - v * -0.16666666666666632)
}

/** cos(x + low) for |x| <= pi / 4. */
function cosinePiece(x: number, low: number): number {
  const z = x * x
  const r =
    z * (4.16666666666666e-2 + z * (-1.388888888887411e-3 + z * 2.480158728947673e-5)) +
    z * z * (z * z) * (-2.7557314351390663e-7 + z * (2.087572321298175e-9 + z * -1.1359647557788195e-11))
  const w = 1 - 0.5 * z
  return w + (1 - w - 0.5 * z + (z * r - x * low))
}

/** Within 1 ulp; throws outside of -1 to 1. In radians. */
export function asin(sine: number): number {
  mustBeSineOrCosine(sine)
  const size = Math.abs(sine)
  if (size < 0.5) return sine + sine * arcPiece(sine * sine)
  const t = (1 - size) * 0.5
  const r = arcPiece(t)
  const s = Math.sqrt(t)
  const top = top26(s)
  const rest = (t - top * top) / (s + top)
  const angle =
    size >= 0.975
      ? HALF_PI - (2 * (s + s * r) - HALF_PI_REST)
      : 0.5 * HALF_PI - (2 * s * r - (HALF_PI_REST - 2 * rest) - (0.5 * HALF_PI - 2 * top))
  return sine < 0 ? -angle : angle
}

/** Within 1 ulp; throws outside of -1 to 1. In radians. */
export function acos(cosine: number): number {
  mustBeSineOrCosine(cosine)
  if (Math.abs(cosine) < 0.5) return HALF_PI - (cosine - (HALF_PI_REST - cosine * arcPiece(cosine * cosine)))
  const t = (1 - Math.abs(cosine)) * 0.5
  const s = Math.sqrt(t)
  if (cosine < 0) return PI - 2 * (s + (arcPiece(t) * s - HALF_PI_REST))
  if (t === 0) return 0
  const top = top26(s)
  const rest = (t - top * top) / (s + top)
  return 2 * (top + (arcPiece(t) * s + rest))
}

function mustBeSineOrCosine(ratio: number): void {
  if (!(Math.abs(ratio) <= 1)) throw new RangeError(`a sine or cosine must be from -1 to 1, got ${ratio}`)
}

/** asin(s) / s - 1 for t = s * s <= 0.25. */
function arcPiece(t: number): number {
  const p =
    0.16666666666666666 +
    t *
      (-0.3255658186224009 +
        t * (0.20121253213486293 + t * (-4.005553450067941e-2 + t * (7.915349942898145e-4 + t * 3.479331075960212e-5))))
  const q = 1 + t * (-2.403394911734414 + t * (2.0209457602335057 + t * (-0.6882839716054533 + t * 7.703815055590194e-2)))
  return (t * p) / q
}

/** The direction of (x, y), from -pi to pi; within 1.6 ulp. 0 for (0, 0), and a zero of either sign counts as +0. Finite numbers only. */
export function atan2(y: number, x: number): number {
  if (!(Math.abs(x) < Infinity && Math.abs(y) < Infinity)) throw new RangeError(`atan2 needs finite numbers, got y ${y} and x ${x}`)
  if (y === 0) return x < 0 ? PI : 0
  if (x === 0) return y < 0 ? -HALF_PI : HALF_PI
  const acute = arctangent(Math.abs(y / x))
  const angle = x > 0 ? acute : PI - (acute - 2 * HALF_PI_REST)
  return y < 0 ? -angle : angle
}

/** atan of a ratio >= 0: the nearest of four known angles, each as double and rest, and a polynomial for what is left. */
function arctangent(ratio: number): number {
  if (ratio < 0.4375) return ratio - arctangentLoss(ratio)
  if (ratio < 0.6875) return arctangentNear(0.4636476090008061, 2.2698777452961687e-17, (2 * ratio - 1) / (2 + ratio))
  if (ratio < 1.1875) return arctangentNear(0.7853981633974483, 3.061616997868383e-17, (ratio - 1) / (ratio + 1))
  if (ratio < 2.4375) return arctangentNear(0.982793723247329, 1.3903311031230998e-17, (ratio - 1.5) / (1 + 1.5 * ratio))
  return arctangentNear(HALF_PI, HALF_PI_REST, -1 / ratio)
}

function arctangentNear(angle: number, rest: number, ratio: number): number {
  return angle - (arctangentLoss(ratio) - rest - ratio)
}

/** x - atan(x) for |x| < 7/16. */
function arctangentLoss(x: number): number {
  const z = x * x
  const w = z * z
  const odd =
    z *
    (0.3333333333333293 +
      w *
        (0.14285714272503466 +
          w * (9.090887133436507e-2 + w * (6.661073137387531e-2 + w * (4.9768779946159324e-2 + w * 1.6285820115365782e-2)))))
  const even =
    w *
    (-0.19999999999876483 +
      w * (-0.11111110405462356 + w * (-7.69187620504483e-2 + w * (-5.8335701337905735e-2 + w * -3.6531572744216916e-2))))
  return x * (odd + even)
}

const LN2_HIGH = 0.6931471803691238 // 32 bits, so that k * LN2_HIGH is exact
const LN2_LOW = 1.9082149292705877e-10

/** e to the x, within 1 ulp; 0 below -745.2 and Infinity above 709.8, as IEEE 754 rounds. Throws for NaN. */
export function exp(x: number): number {
  if (Number.isNaN(x)) throw new RangeError('exp needs a number, got NaN')
  if (x < -746) return 0
  if (x > 710) return Infinity
  const k = Math.floor(x * Math.LOG2E + 0.5)
  const high = x - k * LN2_HIGH
  const low = k * LN2_LOW
  const r = high - low
  const t = r * r
  const c =
    r -
    t *
      (0.16666666666666602 +
        t * (-2.7777777777015593e-3 + t * (6.613756321437934e-5 + t * (-1.6533902205465252e-6 + t * 4.1381367970572385e-8))))
  const nearOne = 1 - (low - (r * c) / (2 - c) - high)
  const half = Math.floor(k / 2) // in two steps: 2^1024 is no double, 2^512 is
  return nearOne * powerOfTwo(half) * powerOfTwo(k - half)
}

/** Natural logarithm, within 1 ulp; throws unless 0 < x < Infinity. */
export function log(x: number): number {
  if (!(x > 0 && x < Infinity)) throw new RangeError(`log needs a finite number above 0, got ${x}`)
  let k = 0
  let m = x // x = m * 2^k all along
  for (let step = 512; step >= 1; step /= 2) {
    if (m >= powerOfTwo(step)) {
      m *= powerOfTwo(-step)
      k += step
    }
    while (m < powerOfTwo(1 - step)) {
      m *= powerOfTwo(step)
      k -= step
    }
  }
  if (m > Math.SQRT2) {
    m *= 0.5
    k += 1
  }
  const f = m - 1
  const s = f / (2 + f)
  const z = s * s
  const w = z * z
  const r =
    w * (0.3999999999940942 + w * (0.22222198432149784 + w * 0.15313837699209373)) +
    z * (0.6666666666666735 + w * (0.2857142874366239 + w * (0.1818357216161805 + w * 0.14798198605116586)))
  const halfSquare = 0.5 * f * f
  return k * LN2_HIGH - (halfSquare - (s * (halfSquare + r) + k * LN2_LOW) - f)
}

/** 2^k, exact, for whole k from -1074 to 1023. */
function powerOfTwo(k: number): number {
  let power = 1
  let base = k < 0 ? 0.5 : 2
  for (let left = Math.abs(k); left > 0; left = Math.floor(left / 2)) {
    if (left % 2 === 1) power *= base
    base *= base
  }
  return power
}

/** The upper 26 bits of x: their square, and their product with another such number, are exact (Veltkamp). */
function top26(x: number): number {
  const c = 134217729 * x // 2^27 + 1
  return c - (c - x)
}

/** Length of (x, y): the root of the sum as it stands, so that it can be repeated by hand. Over- and underflows beyond about 1e154 and 1e-154. */
export function hypot2(x: number, y: number): number {
  return Math.sqrt(x * x + y * y)
}

/** Length of (x, y, z), likewise. */
export function hypot3(x: number, y: number, z: number): number {
  return Math.sqrt(x * x + y * y + z * z)
}

/**
 * Cosine and sine of the yaw of something with square corners: exactly 0 and 1 at quarter turns, where the rounding of the angle alone
 * (6e-17) would turn "touches" into "overlaps".
 */
export function turnOf(yaw_rad: number): readonly [cosine: number, sine: number] {
  const c = cos(yaw_rad)
  const s = sin(yaw_rad)
  if (Math.abs(s) < 1e-15) return [c < 0 ? -1 : 1, 0]
  if (Math.abs(c) < 1e-15) return [0, s < 0 ? -1 : 1]
  return [c, s]
}
