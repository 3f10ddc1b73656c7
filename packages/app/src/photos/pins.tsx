import { type CSSProperties, type KeyboardEvent, type MouseEvent, type PointerEvent, useEffect, useRef, useState } from 'react'
import { Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components'
import { Cross } from '../entry/cross.tsx'
import { useWritten } from '../entry/written.ts'
import { Icon } from '../look/icons.tsx'
import { useDoor } from '../screens/at-door.ts'
import type { Photo, Pin } from '../store/contract.ts'
import { MOST_PINS } from '../store/photo-entry.ts'
import { LONGEST_TEXT } from '../store/printable.ts'
import { useWords } from '../words/words.ts'
import { PinMark, placeOf } from './pin-mark.tsx'

interface Props {
  readonly photo: Photo
  readonly url: string
  readonly name: string
  readonly onClose: () => void
}

type Place = Pick<Pin, 'across' | 'down'>

/** One photo, large, with its numbered pins on it and what each stands for beside it. */
export function Pins(props: Props) {
  return (
    <ModalOverlay className="pad-veil" isDismissable isOpen onOpenChange={(open) => !open && props.onClose()}>
      <Modal className="photo-sheet">
        <Dialog className="pad-sheet">
          <PinSheet {...props} />
        </Dialog>
      </Modal>
    </ModalOverlay>
  )
}

function PinSheet({ photo, url, name, onClose }: Props) {
  const words = useWords()
  const { door, snapshot } = useDoor()
  const isReadOnly = snapshot.readOnly !== undefined
  const { pins } = photo
  /** The pin whose words are asked for next. */
  const [asked, setAsked] = useState<string>()
  const isFull = pins.length >= MOST_PINS
  const set = (event: MouseEvent<HTMLButtonElement>) => {
    const { left, top, width, height } = event.currentTarget.getBoundingClientRect()
    const isPointed = event.detail > 0 // a key presses the button somewhere else
    setAsked(
      door.addPin(photo.id, isPointed ? { across: (event.clientX - left) / width, down: (event.clientY - top) / height } : free(pins)),
    )
  }
  const ratio: Record<string, number> = { '--ratio': photo.width_px / photo.height_px }
  return (
    <>
      <div className="pad-head">
        <Heading slot="title">{name}</Heading>
        <div className="sheet-tools">
          {!isReadOnly && (
            <>
              <button type="button" className="quiet-button" disabled={!snapshot.undo} aria-label={words.undo} onClick={door.undo}>
                <Icon name="undo" />
              </button>
              <button type="button" className="quiet-button" disabled={!snapshot.redo} aria-label={words.redo} onClick={door.redo}>
                <Icon name="redo" />
              </button>
            </>
          )}
          <button type="button" className="quiet-button" aria-label={words.pad.close} onClick={onClose}>
            <Icon name="cross" />
          </button>
        </div>
      </div>
      <div className="photo-and-pins">
        <div className="photo-room">
          <div className="photo-plate" style={ratio as CSSProperties}>
            <img src={url} alt={name} />
            {!isReadOnly && !isFull && <button type="button" className="photo-touch" aria-label={words.photos.setPin} onClick={set} />}
            {pins.map((pin, i) => (
              <PinButton key={pin.id} photo={photo.id} pin={pin} number={i + 1} onAsk={() => setAsked(pin.id)} />
            ))}
          </div>
        </div>
        <div className="pin-words">
          <p className="quiet">
            {isReadOnly ? (pins.length === 0 ? words.photos.noPins : '') : isFull ? words.photos.enoughPins : words.photos.pinsNote}
          </p>
          <ol>
            {pins.map((pin, i) => (
              <PinWords
                key={pin.id}
                {...{ photo: photo.id, pin, number: i + 1 }}
                isAsked={asked === pin.id}
                onAsked={() => setAsked(undefined)}
              />
            ))}
          </ol>
        </div>
      </div>
    </>
  )
}

/** In fractions of the picture; with Shift a tenth of it. */
const STEP = 0.01
const FINE_STEP = 0.001
const ARROWS: ReadonlyMap<string, readonly [number, number]> = new Map([
  ['ArrowLeft', [-1, 0]],
  ['ArrowRight', [1, 0]],
  ['ArrowUp', [0, -1]],
  ['ArrowDown', [0, 1]],
])
/** A finger that moves less than this meant to touch, in CSS px. */
const STILL_PX = 4

interface PinButtonProps {
  readonly photo: string
  readonly pin: Pin
  readonly number: number
  readonly onAsk: () => void
}

function PinButton({ photo, pin, number, onAsk }: PinButtonProps) {
  const words = useWords()
  const { door, snapshot } = useDoor()
  const isReadOnly = snapshot.readOnly !== undefined
  const [dragged, setDragged] = useState<Place>()
  const from = useRef<{ readonly x: number; readonly y: number; readonly width: number; readonly height: number }>(undefined)
  const placeAt = (event: PointerEvent): Place | undefined => {
    const start = from.current
    if (!start) return undefined
    const [x, y] = [event.clientX - start.x, event.clientY - start.y]
    if (dragged === undefined && Math.abs(x) < STILL_PX && Math.abs(y) < STILL_PX) return undefined
    return { across: within(pin.across + x / start.width), down: within(pin.down + y / start.height) }
  }
  const onKey = (event: KeyboardEvent) => {
    if (isReadOnly) return
    if (event.key === 'Delete') door.removePin(photo, pin.id)
    const way = ARROWS.get(event.key)
    if (!way) return
    event.preventDefault()
    const step = event.shiftKey ? FINE_STEP : STEP
    const next = { across: within(pin.across + way[0] * step), down: within(pin.down + way[1] * step) }
    if (next.across !== pin.across || next.down !== pin.down) door.changePin(photo, pin.id, next)
  }
  return (
    <button
      type="button"
      className="pin"
      style={placeOf(dragged ?? pin)}
      aria-label={words.photos.pin(number, pin.text)}
      onKeyDown={onKey}
      onClick={(event) => event.detail === 0 && onAsk()}
      onPointerDown={(event) => {
        if (isReadOnly) return
        event.currentTarget.setPointerCapture(event.pointerId)
        const { width, height } = event.currentTarget.parentElement?.getBoundingClientRect() ?? { width: 1, height: 1 }
        from.current = { x: event.clientX, y: event.clientY, width, height }
      }}
      onPointerMove={(event) => {
        const at = placeAt(event)
        if (at) setDragged(at)
      }}
      onPointerUp={(event) => {
        const at = placeAt(event)
        const isTouched = from.current !== undefined && at === undefined
        from.current = undefined
        setDragged(undefined)
        if (at) door.changePin(photo, pin.id, at)
        if (isTouched) onAsk()
      }}
      onPointerCancel={() => {
        from.current = undefined
        setDragged(undefined)
      }}
    >
      <PinMark pin={dragged ?? pin} number={number} />
    </button>
  )
}

interface PinWordsProps {
  readonly photo: string
  readonly pin: Pin
  readonly number: number
  readonly isAsked: boolean
  readonly onAsked: () => void
}

/** What one pin stands for, written in place; kept when the field is left, the page goes out of sight, or Enter is pressed. */
function PinWords({ photo, pin, number, isAsked, onAsked }: PinWordsProps) {
  const words = useWords().photos
  const { door, snapshot } = useDoor()
  const isReadOnly = snapshot.readOnly !== undefined
  const field = useRef<HTMLInputElement>(null)
  const { leave: _, ...written } = useWritten(pin.text, (text) => door.changePin(photo, pin.id, { text }))
  useEffect(() => {
    if (!isAsked) return
    field.current?.focus()
    onAsked()
  }, [isAsked, onAsked])
  return (
    <li className="pin-row">
      <span className="pin-figure" aria-hidden="true">
        {number}
      </span>
      <input
        ref={field}
        className="name"
        aria-label={words.pinText(number)}
        placeholder={words.pinMissing}
        maxLength={LONGEST_TEXT}
        disabled={isReadOnly}
        {...written}
        onKeyDown={(event) => event.key === 'Enter' && written.onBlur()}
      />
      {!isReadOnly && <Cross heard={words.removePin(number)} onAway={() => door.removePin(photo, pin.id)} />}
    </li>
  )
}

function within(share: number): number {
  return Math.min(1, Math.max(0, share))
}

/** The middle, or beside it where a pin stands there already. */
function free(pins: readonly Pin[]): Place {
  for (let i = 0; ; i++) {
    const at = { across: 0.5 + 0.05 * (i % 8), down: 0.5 + 0.05 * (Math.floor(i / 8) % 8) }
    if (i >= 64 || pins.every(({ across, down }) => Math.abs(across - at.across) > 0.02 || Math.abs(down - at.down) > 0.02)) return at
  }
}
