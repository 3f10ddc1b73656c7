import type { Page } from 'playwright-core'

/** What of a page can be measured to be wrong, one sentence each; empty where nothing is. */
export function pageFaults(page: Page, least_px: number): Promise<string[]> {
  return page.evaluate((least) => {
    const found: string[] = []
    const root = document.documentElement
    /** Rounding of the layout. */
    const slack = 1
    const named = (element: Element) => {
      const label = element.getAttribute('aria-label') ?? (element as HTMLInputElement).placeholder ?? ''
      const words = (label || element.textContent || '').trim().replace(/\s+/g, ' ').slice(0, 40)
      return `${element.tagName.toLowerCase()}.${element.getAttribute('class') ?? ''} "${words}"`
    }
    const isShown = (element: Element) => element.checkVisibility({ visibilityProperty: true, opacityProperty: true })

    const texts = new Set<Element>()
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT)
    while (walker.nextNode()) {
      const parent = walker.currentNode.parentElement
      if (parent && walker.currentNode.textContent?.trim() && isShown(parent)) texts.add(parent)
    }
    if (root.scrollWidth > root.clientWidth) {
      const wide = [...document.body.querySelectorAll('*')].filter((each) => {
        for (let up = each.parentElement; up; up = up.parentElement)
          if (/auto|scroll|hidden|clip/.test(getComputedStyle(up).overflowX)) return false
        return isShown(each) && each.getBoundingClientRect().right > root.clientWidth + slack
      })
      for (const text of texts) {
        const range = document.createRange()
        range.selectNodeContents(text)
        if (range.getBoundingClientRect().right > root.clientWidth + slack && !text.closest('.tape, svg')) wide.push(text)
      }
      found.push(`the page is ${root.scrollWidth - root.clientWidth} px wider than the screen: ${wide.slice(-3).map(named).join(', ')}`)
    }

    const cut = new Set<Element>()
    for (const text of texts) {
      if (text.closest('svg, option, textarea, .only-heard')) continue
      const range = document.createRange()
      range.selectNodeContents(text)
      const own = range.getBoundingClientRect()
      // up to the first that scrolls: what it hides can be pulled into sight
      for (let up: Element | null = text; up && up !== document.body; up = up.parentElement) {
        const { overflowX, overflowY, display } = getComputedStyle(up)
        if (display === 'inline' || display === 'contents') continue
        const box = up.getBoundingClientRect()
        const across = own.right > box.right + slack || own.left < box.left - slack
        const down = own.bottom > box.bottom + slack * 3 || own.top < box.top - slack * 3
        if (/hidden|clip/.test(overflowX) && across) cut.add(text)
        if (/hidden|clip/.test(overflowY) && down) cut.add(text)
        const isTarget = up.matches('button, a, label, summary, [role=menuitem]')
        if (isTarget && (across || down)) cut.add(text)
        if (/auto|scroll/.test(overflowX + overflowY)) break
      }
    }
    for (const field of document.querySelectorAll('textarea'))
      if (isShown(field) && (field.scrollWidth > field.clientWidth + slack || field.scrollHeight > field.clientHeight + slack))
        cut.add(field)
    for (const text of cut) found.push(`text is cut, or hangs out of its button: ${named(text)}`)
    const pen = document.createElement('canvas').getContext('2d')
    for (const field of document.querySelectorAll<HTMLInputElement | HTMLSelectElement>('input, select')) {
      if (!isShown(field) || /file|radio|checkbox|range/.test(field.type) || !pen) continue
      const { paddingLeft, paddingRight, whiteSpace } = getComputedStyle(field)
      const { font } = getComputedStyle(field, field.value === '' ? '::placeholder' : undefined)
      if (whiteSpace === 'normal' && field instanceof HTMLSelectElement) continue // it wraps
      pen.font = font
      const said = field instanceof HTMLSelectElement ? (field.selectedOptions[0]?.textContent ?? '') : field.value || field.placeholder
      const room = field.clientWidth - Number.parseFloat(paddingLeft) - Number.parseFloat(paddingRight)
      if (pen.measureText(said).width > room + 2 && !field.matches(':focus'))
        found.push(`what a field says is cut: ${named(field)} "${said}"`)
    }

    /**
     * A word of the trade that can be touched where it stands in a sentence: as high as its line, for a mouse and a bare finger. The target for
     * gloves is the list of all words of the sheet, so that has to be there.
     */
    const isWordInSentence = (each: Element) =>
      each.matches('.term') && document.querySelector(each.closest('[role=dialog]') ? '[role=dialog] .words-here' : '.words-here') !== null
    const dialogs = [...document.querySelectorAll('[role=dialog], [role=alertdialog], [role=menu]')].filter(isShown)
    const within = dialogs.at(-1) ?? document.body
    const targets = [
      ...within.querySelectorAll('button, a[href], input, select, summary, label, [role=button], [role=radio], [role=menuitem]'),
    ]
      .filter((each) => isShown(each) && !each.closest('[aria-hidden=true], [inert]'))
      .filter((each) => !isWordInSentence(each))
      .filter((each) => {
        if (each instanceof HTMLLabelElement) return each.querySelector('input[type=radio], input[type=checkbox]') !== null
        return !(each instanceof HTMLInputElement && /radio|checkbox|file/.test(each.type)) // the label around it is the target
      })
    /** The part of a target that can be seen and touched. */
    const seen = (element: Element) => {
      const { left, top, right, bottom } = element.getBoundingClientRect()
      const box = { left, top, right, bottom }
      for (let up = element.parentElement; up && up !== document.body; up = up.parentElement) {
        if (!/auto|scroll|hidden|clip/.test(getComputedStyle(up).overflow)) continue
        const frame = up.getBoundingClientRect()
        box.left = Math.max(box.left, frame.left)
        box.right = Math.min(box.right, frame.right)
        box.top = Math.max(box.top, frame.top)
        box.bottom = Math.min(box.bottom, frame.bottom)
      }
      return box
    }
    /** What stands still while the rest scrolls under it. */
    const layer = (element: Element) => {
      for (let up: Element | null = element; up; up = up.parentElement) if (/sticky|fixed/.test(getComputedStyle(up).position)) return up
      return undefined
    }
    const boxes = targets.map((target) => ({ target, box: seen(target), layer: layer(target) }))
    for (const { target } of boxes) {
      const { width, height } = (target.querySelector('.grip-reach') ?? target).getBoundingClientRect()
      if (width < least - slack || height < least - slack)
        found.push(`a thumb has ${Math.round(width)} x ${Math.round(height)} px, less than ${least}: ${named(target)}`)
    }
    for (const [i, a] of boxes.entries())
      for (const b of boxes.slice(i + 1)) {
        // of what can be taken hold of in a drawing, things may stand as close as they stand: there the nearest answers
        if (a.target.matches('svg *') && b.target.matches('svg *')) continue
        if (a.target.matches('.photo-touch') || b.target.matches('.photo-touch')) continue // pins lie on the picture, and answer there
        if (a.layer !== b.layer || a.target.contains(b.target) || b.target.contains(a.target)) continue
        const across = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left)
        const down = Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top)
        if (across > slack && down > slack)
          found.push(`two targets overlap by ${Math.round(across)} x ${Math.round(down)} px: ${named(a.target)} and ${named(b.target)}`)
      }
    // lines of text of different elements that lie on each other, within what can be seen of them
    const lines = [...texts]
      .filter((text) => !text.closest('svg, option, .only-heard') && within.contains(text))
      .flatMap((text) => {
        const room = seen(text)
        return [...text.childNodes]
          .filter((node) => node.nodeType === Node.TEXT_NODE && node.textContent?.trim())
          .flatMap((node) => {
            const range = document.createRange()
            range.selectNodeContents(node)
            return [...range.getClientRects()]
          })
          .map(({ left, top, right, bottom }) => {
            const spare = (bottom - top) * 0.2 // above capitals and below the baseline
            return {
              text,
              layer: layer(text),
              left: Math.max(left, room.left),
              right: Math.min(right, room.right),
              top: Math.max(top + spare, room.top),
              bottom: Math.min(bottom - spare, room.bottom),
            }
          })
      })
    for (const [i, a] of lines.entries())
      for (const b of lines.slice(i + 1))
        if (
          a.text !== b.text &&
          a.layer === b.layer &&
          Math.min(a.right, b.right) - Math.max(a.left, b.left) > slack &&
          Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > slack
        )
          found.push(`text lies on text: ${named(a.text)} and ${named(b.text)}`)
    // a drawing has the room of the element around it, and no text of others lies there
    for (const drawing of document.querySelectorAll('svg.drawing')) {
      const room = drawing.parentElement
      if (!room || !isShown(drawing) || !within.contains(drawing)) continue
      const own = drawing.getBoundingClientRect()
      const frame = room.getBoundingClientRect()
      const isPulled = /auto|scroll/.test(getComputedStyle(room).overflowX) // what it hides can be pulled into sight
      if (
        own.left < frame.left - slack ||
        own.top < frame.top - slack ||
        (own.right > frame.right + slack && !isPulled) ||
        own.bottom > frame.bottom + slack
      )
        found.push(`a drawing hangs out of its room: ${named(drawing)}`)
    }
    // what stands still while the rest scrolls under it hides that: else two texts are read at once
    if (dialogs.length === 0)
      for (const still of [...document.querySelectorAll('*')].filter(
        (each) => /sticky/.test(getComputedStyle(each).position) && isShown(each),
      )) {
        const { left, top, right, bottom } = still.getBoundingClientRect()
        for (const across of [0.1, 0.3, 0.5, 0.7, 0.9])
          for (const down of [0.15, 0.5, 0.85]) {
            const over = document.elementFromPoint(left + across * (right - left), top + down * (bottom - top))
            if (over?.closest('.explanation')) continue // somebody opened it over whatever is there
            if (over && !still.contains(over) && !over.contains(still) && still.parentElement?.contains(over))
              found.push(`${named(over)} shows over ${named(still)}`)
          }
      }
    return [...new Set(found)]
  }, least_px)
}
