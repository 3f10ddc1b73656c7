import type { InputPath } from '@sillsight/engine'
import { useCallback } from 'react'
import { useLocation } from 'wouter'
import type { Part } from '../parts.ts'
import { useDoor } from './at-door.ts'

/** How long a part that is still being loaded is waited for. */
const PATIENCE_MS = 10_000
const CONTROLS = 'button:not(:disabled), select:not(:disabled), textarea:not(:disabled), input:not(:disabled)'

/** Leads to where a value is entered, in whatever part of the job that is, and puts the focus there. */
export function useLead(): (need: InputPath) => void {
  const { door } = useDoor()
  const [location, navigate] = useLocation()
  return useCallback(
    (need) => {
      const address = `/door/${door.id}/${partOf(need)}`
      if (location !== address) navigate(address)
      seek(need, address)
    },
    [door, location, navigate],
  )
}

/** The part of the job in which a place of the door file is entered. */
export function partOf(need: InputPath): Part {
  const [head = ''] = need.split('/')
  if (head === 'concept' || head === 'edition' || head === 'confirmations') return 'judge'
  if (head === 'forceRecords') return 'test'
  if (head === 'wiring') return 'fit'
  return head === 'sensors' || head === 'zones' || head === 'bodies' ? 'place' : 'measure'
}

/** Asks each frame until the place is there: parts and chapters come when they are opened. Gives up when somebody goes elsewhere. */
function seek(need: InputPath, address: string): void {
  const until = performance.now() + PATIENCE_MS
  const look = () => {
    const [, , , part] = address.split('/')
    if (!location.hash.endsWith(address) || performance.now() > until) return
    const sheet = document.querySelector(`main[data-part="${part}"]`)
    const found = sheet && placeOf(need, sheet)
    if (!found) return void requestAnimationFrame(look)
    for (let fold = found.closest('details'); fold; fold = fold.parentElement?.closest('details') ?? null) fold.open = true
    found.scrollIntoView({ block: 'center' })
    found.focus({ preventScroll: true })
    found.dataset['led'] = ''
    found.addEventListener('blur', () => delete found.dataset['led'], { once: true })
  }
  requestAnimationFrame(look)
}

/**
 * The control in which a place is entered: itself, or what is inside of it (what is missing first), or the nearest around it. A closed chapter
 * that holds it is opened; undefined while something is still on its way.
 */
function placeOf(need: InputPath, sheet: Element): HTMLElement | undefined {
  const all = [...sheet.querySelectorAll<HTMLElement>('[data-at]')].filter((each) => each.matches(CONTROLS))
  const at = (each: HTMLElement) => each.dataset['at'] ?? ''
  const exact = all.find((each) => at(each) === need)
  if (exact) return exact
  if (sheet.querySelector('[data-coming]')) return undefined
  const chapters = [...sheet.querySelectorAll<HTMLDetailsElement>('details[data-holds]')]
  const held = (each: Element) => (each.getAttribute('data-holds') ?? '').split(' ')
  const nearest = (each: Element) => Math.max(0, ...held(each).map((place) => (isWithin(need, place) ? place.length : 0)))
  const around = chapters.filter((each) => nearest(each) > 0).sort((a, b) => nearest(b) - nearest(a))[0]
  if (around && isComing(around)) return undefined
  const inside = all.filter((each) => isWithin(at(each), need))
  const first = inside.find((each) => each.dataset['missing'] !== undefined) ?? inside[0]
  if (first) return first
  const below = chapters.find((each) => held(each).some((place) => isWithin(place, need)))
  if (below && isComing(below)) return undefined
  return all
    .filter((each) => isWithin(need, at(each)))
    .reduce<HTMLElement | undefined>((best, each) => (best && at(best).length >= at(each).length ? best : each), undefined)
}

/** Opens a chapter that was closed; its content then is still to come. */
function isComing(chapter: HTMLDetailsElement): boolean {
  const wasOpen = chapter.open && chapter.querySelector('[data-at]') !== null
  chapter.open = true
  return !wasOpen
}

function isWithin(place: string, around: string): boolean {
  return place === around || place.startsWith(`${around}/`)
}
