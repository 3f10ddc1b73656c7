import type { Door, Judgement } from '@sillsight/engine'
import { figure } from '@sillsight/report'
import { useEffect, useMemo, useRef, useState } from 'react'
import { usePreferences } from '../preferences.ts'
import { useReader } from '../words/reader.ts'
import { useWords } from '../words/words.ts'
import { type Moment, movingSolids } from './moving-solids.ts'
import type { Inks } from './scene.ts'
import { type Solid, solidsOf } from './solids.ts'
import { type Axis, type From, type StageInSpace, stageInSpace } from './stage-in-space.ts'

interface Props {
  readonly door: Door
  readonly judgement: Judgement
  readonly state?: string | undefined
  readonly zone?: string | undefined
  readonly moment?: Moment | undefined
}

const TURN_RAD = Math.PI / 24
const KEYS: ReadonlyMap<string, readonly [across_rad: number, up_rad: number, nearer: number]> = new Map([
  ['ArrowLeft', [-TURN_RAD, 0, 1]],
  ['ArrowRight', [TURN_RAD, 0, 1]],
  ['ArrowUp', [0, TURN_RAD, 1]],
  ['ArrowDown', [0, -TURN_RAD, 1]],
  ['+', [0, 0, 1.25]],
  ['=', [0, 0, 1.25]],
  ['-', [0, 0, 0.8]],
])
const AXES = ['x', 'y', 'z'] as const

/** The door in space: turned by finger, mouse or keys, cut open, and whatever is touched is named. No verdict rests on it. */
export function SolidView({ door, judgement, state, zone, moment }: Props) {
  const words = useWords()
  const { theme } = usePreferences()
  const reader = useReader()
  const canvas = useRef<HTMLCanvasElement>(null)
  const stage = useRef<StageInSpace>(undefined)
  const [missing, setMissing] = useState(false)
  const [named, setNamed] = useState('')
  const [axis, setAxis] = useState<Axis>()
  const [share, setShare] = useState(0.5)
  const [at_mm, setAt] = useState(0)
  const [listed, setListed] = useState(false)
  const solids = useMemo(() => solidsOf(door, judgement, { state, zone }), [door, judgement, state, zone])
  const nameOf = ({ kind, name }: Solid) => words.solid.names[kind](name)

  useEffect(() => {
    const element = canvas.current
    const room = element?.parentElement
    if (!element || !room) return
    const made = stageInSpace(element)
    if (!made) {
      setMissing(true)
      return
    }
    stage.current = made
    made.resize(room.clientWidth, room.clientHeight)
    const watch = new ResizeObserver(() => made.resize(room.clientWidth, room.clientHeight))
    watch.observe(room)
    return () => {
      watch.disconnect()
      made.dispose()
      stage.current = undefined
    }
  }, [])
  // after a change of theme the page's own properties say the inks
  useEffect(() => stage.current?.show(solids, inksOf(theme)), [solids, theme])
  useEffect(() => stage.current?.move(moment ? movingSolids(door, moment) : [], inksOf(theme)), [door, moment, theme])
  useEffect(() => setAt(stage.current?.cut(axis, share) ?? 0), [axis, share])

  if (missing) return <p className="solid-missing">{words.solid.missing}</p>
  return (
    <>
      <div className="solid-room">
        <canvas
          ref={canvas}
          className="solid-canvas"
          tabIndex={0}
          aria-label={words.solid.label}
          onKeyDown={(event) => {
            const turn = KEYS.get(event.key)
            if (!turn) return
            event.preventDefault()
            stage.current?.turn(...turn)
          }}
          onClick={({ nativeEvent: { offsetX, offsetY } }) => {
            const solid = stage.current?.under(offsetX, offsetY)
            setNamed(solid ? nameOf(solid) : '')
          }}
        />
        <p className="solid-named" role="status">
          {named || words.solid.touch}
        </p>
      </div>
      <div className="solid-tools">
        <div className="solid-row">
          {(['b', 'a', 'above', 'sensor'] as const satisfies readonly From[]).map((from) => (
            <button key={from} type="button" className="second" onClick={() => stage.current?.look(from)}>
              {from === 'a' || from === 'b' ? words.solid.from(door.sides[from]) : words.solid.fromWhere[from]}
            </button>
          ))}
          <div className="switch" role="radiogroup" aria-label={words.solid.cut}>
            {[undefined, ...AXES].map((each) => (
              <button key={each ?? 'none'} type="button" role="radio" aria-checked={axis === each} onClick={() => setAxis(each)}>
                {words.solid.cuts[each ?? 'none']}
              </button>
            ))}
          </div>
          <button type="button" className="link" aria-expanded={listed} onClick={() => setListed(!listed)}>
            {words.solid.list}
          </button>
        </div>
        {axis && (
          <label className="solid-slider">
            <span>{words.solid.cutAt(figure({ value: Math.round(at_mm), unit: 'mm' }, reader))}</span>
            <input type="range" min="0" max="1" step="0.005" value={share} onChange={({ target }) => setShare(Number(target.value))} />
          </label>
        )}
        {listed && (
          <ul className="solid-list">
            {[...new Set(solids.map(nameOf))].map((name) => (
              <li key={name}>{name}</li>
            ))}
          </ul>
        )}
      </div>
    </>
  )
}

/** @param theme only so that it is asked again when the theme changes */
function inksOf(theme: string): Inks {
  const style = getComputedStyle(document.querySelector(`[data-theme='${theme}']`) ?? document.documentElement)
  const ink = (name: string) => style.getPropertyValue(`--${name}`).trim()
  return {
    ground: ink('ground'),
    sheet: ink('sheet'),
    ink: ink('ink'),
    quiet: ink('quiet'),
    fill: ink('fill'),
    unseen: ink('unseen'),
    rule: ink('rule'),
  }
}
