import { useCallback, useEffect, useRef, useState } from 'react'
import { useLocation } from 'wouter'
import '../look/tour.css'
import type { Part } from '../parts.ts'
import { useDoor } from '../screens/at-door.ts'
import { useWords } from '../words/words.ts'
import { Ring } from './ring.tsx'
import { type Seen, STOPS, said } from './tour-stops.ts'
import { endTour, toStop, useTouring } from './touring.ts'

/**
 * The tour: one stop after the other along the door's own parts. A stop points, asks for a thing, and goes on when that was done. Nothing is
 * dimmed and nothing is locked: whoever does something else meanwhile does it.
 */
export function Tour({ part }: { readonly part: Part }) {
  const all = useWords()
  const words = all.help.tour
  const { door } = useDoor()
  const [, go] = useLocation()
  const { stop: at } = useTouring()
  const stop = STOPS[at]
  const panel = useRef<HTMLElement>(null)
  const number = useRef<HTMLSpanElement>(null)
  const goOn = useCallback(() => {
    const next = STOPS[at + 1]
    toStop(at + 1)
    if (next && next.part !== part) go(`/door/${door.id}/${next.part}`)
  }, [at, part, door.id, go])
  const leave = useCallback(() => {
    go('/')
    endTour('throw-away')
  }, [go])
  useDone(at, part, goOn)
  useEscape(leave)
  const target = useCallback(() => thingOf(at), [at])
  const from = useCallback(() => number.current, [])
  // biome-ignore lint/correctness/useExhaustiveDependencies: at each stop anew; whoever works on the sheet keeps the focus
  useEffect(() => {
    if (document.activeElement === document.body) panel.current?.focus({ preventScroll: true })
  }, [at])
  const wished = useRef(-1)
  useInSight(at, part, wished)
  const show = () => {
    if (stop && stop.part !== part) go(`/door/${door.id}/${stop.part}`)
    soon(() => {
      const thing = thingOf(at)
      if (thing) takeTo(thing)
      else wished.current = at // its part is still being loaded
    })
  }
  return (
    <section className="tour" ref={panel} tabIndex={-1} aria-label={words.label}>
      <span className="tour-number" ref={number} aria-hidden="true">
        {stop ? at + 1 : '\u2713'}
      </span>
      <p role="status">
        {stop && <span className="only-heard">{words.count(at + 1, STOPS.length)} </span>}
        {stop ? said(stop, all) : words.end}
      </p>
      <div className="tour-tools">
        {stop ? (
          <>
            <button type="button" className="link" onClick={leave}>
              {words.leave}
            </button>
            <button type="button" className="link" onClick={show}>
              {words.show}
            </button>
            <button type="button" className="second" onClick={goOn}>
              {words.next}
            </button>
          </>
        ) : (
          <>
            <button type="button" className="link" onClick={() => endTour('keep')}>
              {words.keep}
            </button>
            <button type="button" className="second" onClick={leave}>
              {words.throwAway}
            </button>
          </>
        )}
      </div>
      {stop && stop.part === part && <Ring number={at + 1} of={target} from={from} />}
    </section>
  )
}

/** What a stop points at; undefined while it is not on the page, or behind another sheet. */
function thingOf(at: number): Element | undefined {
  if (isCovered()) return undefined
  for (const selector of STOPS[at]?.at ?? []) {
    const found = document.querySelector(selector)
    if (found) return found
  }
  return undefined
}

/** A sheet lies over the door's: a number pad, a "why". */
function isCovered(): boolean {
  return document.querySelector('.pad-veil') !== null
}

/** Goes on when the thing was done, and the sheet that it opened is closed again. Looks at the page only when something on it changed. */
function useDone(at: number, part: Part, goOn: () => void): void {
  const { snapshot } = useDoor()
  const begun = useRef({ at: -1, file: snapshot.file })
  if (begun.current.at !== at) begun.current = { at, file: snapshot.file }
  const [done, setDone] = useState(-1)
  useEffect(() => {
    const stop = STOPS[at]
    if (!stop) return
    const seen: Seen = {
      part,
      before: begun.current.file,
      file: snapshot.file,
      undone: snapshot.redo !== undefined && snapshot.file !== begun.current.file,
      isThere: (selector) => document.querySelector(selector) !== null,
    }
    const look = () => {
      if (done !== at && stop.isDone(seen)) setDone(at)
      else if (done === at && !isCovered()) goOn()
    }
    look()
    const changes = new MutationObserver(look)
    changes.observe(document.body, { subtree: true, childList: true, attributeFilter: ['data-moved'] })
    return () => changes.disconnect()
  }, [at, part, snapshot, done, goOn])
}

/** Brings a thing into sight and the focus to it. */
function takeTo(thing: Element): void {
  thing.scrollIntoView({ block: 'nearest', inline: 'center' })
  thing.closest<HTMLElement | SVGElement>('a, button, [tabindex]')?.focus({ preventScroll: true })
}

/** Brings what a stop points at into sight, once it is there; and the focus with it, where that was wished at this stop. */
function useInSight(at: number, part: Part, wished: { current: number }): void {
  // biome-ignore lint/correctness/useExhaustiveDependencies: another part has other things on it
  useEffect(() => {
    let shown: Element | undefined
    const look = () => {
      const thing = thingOf(at)
      if (!thing || thing === shown) return
      shown = thing
      if (wished.current === at) takeTo(thing)
      else thing.scrollIntoView({ block: 'nearest', inline: 'center' })
      wished.current = -1
    }
    look()
    const changes = new MutationObserver(look)
    changes.observe(document.body, { subtree: true, childList: true })
    return () => changes.disconnect()
  }, [at, part, wished])
}

/** Escape leaves, unless something else is open that it closes first. */
function useEscape(leave: () => void): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.key !== 'Escape' || event.isComposing) return
      if (isCovered() || document.querySelector('.explanation, .popover, [data-held]')) return
      if (event.target instanceof HTMLElement && event.target.matches('input, select, textarea')) return
      leave()
    }
    window.addEventListener('keydown', onKey, true) // first of all: whatever it closes is still there
    return () => window.removeEventListener('keydown', onKey, true)
  }, [leave])
}

function soon(act: () => void): void {
  requestAnimationFrame(() => requestAnimationFrame(act))
}
