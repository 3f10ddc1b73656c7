import type { Page } from 'playwright-core'

/**
 * What lies on each other within a drawing, one sentence each: lettering on lettering, on hatching, on a symbol or a grip, or beyond the edge.
 * Measured on what the browser painted, not on what the layout of labels believes of the width of its signs.
 */
export function drawingFaults(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const found: string[] = []
    interface Box {
      readonly left: number
      readonly top: number
      readonly right: number
      readonly bottom: number
    }
    const meet = (a: Box, b: Box, slack = 0.5) =>
      Math.min(a.right, b.right) - Math.max(a.left, b.left) > slack && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > slack
    /** Whether a stretch meets the inside of a box. */
    const crosses = ([x1, y1, x2, y2]: readonly [number, number, number, number], box: Box) => {
      let [start, end] = [0, 1]
      for (const [toward, room] of [
        [x1 - x2, x1 - box.left],
        [x2 - x1, box.right - x1],
        [y1 - y2, y1 - box.top],
        [y2 - y1, box.bottom - y1],
      ] as const) {
        if (toward === 0 && room <= 0) return false
        if (toward < 0) start = Math.max(start, room / toward)
        if (toward > 0) end = Math.min(end, room / toward)
      }
      return start < end
    }
    for (const drawing of document.querySelectorAll<SVGSVGElement>('svg.drawing')) {
      if (!drawing.checkVisibility()) continue
      const sheet = drawing.getBoundingClientRect()
      const px = sheet.width / drawing.viewBox.baseVal.width
      /** The signs themselves: a line's box has room above capitals and below the baseline that nobody sees. */
      const letters = [...drawing.querySelectorAll('text')].map((text) => {
        const { left, top, right, bottom } = text.getBoundingClientRect()
        const size = Number.parseFloat(getComputedStyle(text).fontSize) * px
        const isUpward = bottom - top > right - left && text.hasAttribute('transform')
        const spare = ((isUpward ? right - left : bottom - top) - size * 0.8) / 2
        const box = isUpward
          ? { left: left + spare, right: right - spare, top, bottom }
          : { left, right, top: top + spare, bottom: bottom - spare }
        return { said: text.textContent ?? '', box }
      })
      for (const [i, { said, box }] of letters.entries()) {
        if (box.left < sheet.left - 1 || box.right > sheet.right + 1 || box.top < sheet.top - 1 || box.bottom > sheet.bottom + 1)
          found.push(`lettering hangs out of the drawing: "${said}"`)
        for (const other of letters.slice(i + 1))
          if (meet(box, other.box)) found.push(`lettering lies on lettering: "${said}" and "${other.said}"`)
      }
      const stretches = (path: Element) =>
        (path.getAttribute('d') ?? '')
          .split(/(?=[ML])/)
          .map((step) => ({ isMove: step.startsWith('M'), at: step.slice(1).split(/[ ,]/).map(Number) }))
          .flatMap(({ isMove, at: [x = 0, y = 0] }, i, all) => {
            const [x0 = 0, y0 = 0] = all[i - 1]?.at ?? []
            return isMove || i === 0
              ? []
              : [[sheet.left + x0 * px, sheet.top + y0 * px, sheet.left + x * px, sheet.top + y * px] as [number, number, number, number]]
          })
      const hatching = [...drawing.querySelectorAll('path.m-hatch')].flatMap(stretches)
      for (const { said, box } of letters)
        if (hatching.some((stretch) => crosses(stretch, box))) found.push(`lettering lies on hatching: "${said}"`)
      const marks = (selector: string) => [...drawing.querySelectorAll(selector)].map((mark) => mark.getBoundingClientRect())
      for (const [selector, what] of [
        ['path.f-ink', 'a symbol'],
        ['.grip-mark', 'a grip'],
      ] as const)
        for (const mark of marks(selector))
          for (const { said, box } of letters) if (meet(box, mark, 1)) found.push(`lettering lies on ${what}: "${said}"`)
      const rings = [...drawing.querySelectorAll('circle.m-thing.f-paper')].map((ring) => ring.getBoundingClientRect())
      for (const { said, box } of letters)
        for (const ring of rings) {
          const isItsLetter = box.left > ring.left && box.right < ring.right && box.top > ring.top - 1 && box.bottom < ring.bottom + 1
          if (!isItsLetter && meet(box, ring, 1)) found.push(`lettering lies on a circle: "${said}"`)
        }
    }
    return found
  })
}
