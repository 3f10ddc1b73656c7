import { type ChangeEvent, lazy, Suspense, useRef, useState } from 'react'
import type { PhotoWish } from '../drawing/stage.tsx'
import { Cross } from '../entry/cross.tsx'
import { useWritten } from '../entry/written.ts'
import { photoName } from '../photos/marks.tsx'
import { PinMark, placeOf } from '../photos/pin-mark.tsx'
import { reEncoded } from '../photos/re-encode.ts'
import { usePicture } from '../photos/use-picture.ts'
import type { Photo } from '../store/contract.ts'
import { LONGEST_TEXT } from '../store/printable.ts'
import { useWords } from '../words/words.ts'
import { useDoor } from './at-door.ts'
import { Group } from './group.tsx'

const Pins = lazy(() => import('../photos/pins.tsx').then(({ Pins }) => ({ default: Pins })))

/** Pictures of the doorway. They are drawn anew when they come in: place and camera are not in what is kept. */
export function Photos({ onWish }: { readonly onWish: (wish: PhotoWish) => void }) {
  const { photos: words, chapters } = useWords()
  const { door, snapshot } = useDoor()
  const input = useRef<HTMLInputElement>(null)
  const [told, setTold] = useState<string>()
  // asked for anew each time: where somebody was is not kept by an old habit
  const [keepsWhere, setKeepsWhere] = useState(false)
  const take = async (event: ChangeEvent<HTMLInputElement>) => {
    const files = [...(event.target.files ?? [])]
    event.target.value = ''
    setTold(undefined)
    for (const file of files) {
      const made = await reEncoded(file)
      if (!made.ok) {
        setTold(words.refused[made.why])
        continue
      }
      const takenWhere = keepsWhere ? await whereOf(file) : undefined
      if (keepsWhere && takenWhere === undefined) setTold(words.whereUnknown)
      const { id, bytes, width_px, height_px } = made
      const photo = { id, takenAt_ms: Date.now(), caption: '', width_px, height_px, ...(takenWhere !== undefined && { takenWhere }) }
      await door.addPhoto(photo, bytes)
    }
  }
  return (
    <Group title={words.title} holds={['photos']} said={chapters.listed(snapshot.photos.length)}>
      {snapshot.photos.length === 0 && <p>{words.none}</p>}
      <ul className="photos">
        {snapshot.photos.map((photo, i) => (
          <PhotoItem key={photo.id} photo={photo} number={i + 1} onWish={onWish} />
        ))}
      </ul>
      {told !== undefined && (
        <p className="entry-doubt" role="alert">
          {told}
        </p>
      )}
      {snapshot.readOnly === undefined && (
        <>
          <label className="wish">
            <input type="checkbox" checked={keepsWhere} onChange={(event) => setKeepsWhere(event.target.checked)} />
            <span>
              {words.keepWhere}
              <span className="quiet">{words.keepWhereNote}</span>
            </span>
          </label>
          <button type="button" className="second" onClick={() => input.current?.click()}>
            {words.add}
          </button>
        </>
      )}
      <input ref={input} type="file" accept="image/jpeg,image/png,image/webp" multiple hidden aria-label={words.add} onChange={take} />
    </Group>
  )
}

/** Read from the file as it came, which is not kept. */
async function whereOf(file: Blob): Promise<string | undefined> {
  const { whereTaken } = await import('../photos/where-taken.ts')
  return whereTaken(new Uint8Array(await file.arrayBuffer()))
}

interface ItemProps {
  readonly photo: Photo
  readonly number: number
  readonly onWish: (wish: PhotoWish) => void
}

function PhotoItem({ photo, number, onWish }: ItemProps) {
  const words = useWords()
  const { door, snapshot } = useDoor()
  const url = usePicture(photo.id)
  const [open, setOpen] = useState(false)
  const { id, pins, takenWhere } = photo
  const name = photoName(photo)
  const isReadOnly = snapshot.readOnly !== undefined
  const { leave: _, ...caption } = useWritten(photo.caption, (text) => door.changePhoto(id, { caption: text }))
  return (
    <li>
      {url !== undefined && (
        <button type="button" className="photo-open" aria-label={words.photos.open(name, pins.length)} onClick={() => setOpen(true)}>
          <img src={url} alt={name} width={photo.width_px} height={photo.height_px} />
          {pins.map((pin, i) => (
            <span key={pin.id} className="pin" style={placeOf(pin)}>
              <PinMark pin={pin} number={i + 1} />
            </span>
          ))}
        </button>
      )}
      <textarea
        className="name"
        rows={1}
        aria-label={words.photos.caption}
        placeholder={words.photos.caption}
        maxLength={LONGEST_TEXT}
        disabled={isReadOnly}
        {...caption}
        onKeyDown={(event) => {
          if (event.key !== 'Enter') return
          event.preventDefault() // a caption is one line, however many it takes to show it
          event.currentTarget.blur()
        }}
      />
      {!isReadOnly && <Cross name={name} onAway={() => door.removePhoto(id)} />}
      {takenWhere !== undefined && (
        <>
          <p className="photo-where">{words.photos.takenAt(takenWhere)}</p>
          {!isReadOnly && <Cross heard={words.photos.forgetWhere} onAway={() => door.forgetWhereTaken(id)} />}
        </>
      )}
      <PhotoPlace {...{ photo, number, onWish }} />
      {open && url !== undefined && (
        <Suspense fallback={null}>
          <Pins photo={photo} url={url} name={name} onClose={() => setOpen(false)} />
        </Suspense>
      )}
    </li>
  )
}

/** On which drawing a photo is marked, and the way there. A mark begins in the opening, at half of its height. */
function PhotoPlace({ photo, number, onWish }: ItemProps) {
  const words = useWords().photos
  const { door, snapshot } = useDoor()
  const { onDrawing } = photo
  const { width_mm = 0, height_mm = 0 } = snapshot.file.survey.opening
  const put = (view: string) => {
    // beside the one before: of several that nobody has moved yet each can be touched
    const u_mm = Math.round(width_mm * (0.5 + 0.08 * (((number - 1) % 7) - 3)))
    if (view === 'none') return door.placePhoto(photo.id, undefined)
    if (view === 'plan') door.placePhoto(photo.id, { view, u_mm, v_mm: 0 })
    if (view === 'elevation') door.placePhoto(photo.id, { view, u_mm, v_mm: Math.round(height_mm / 2) })
  }
  return (
    <div className="photo-place">
      <select
        className="choose"
        aria-label={words.placed(photoName(photo))}
        value={onDrawing?.view ?? 'none'}
        disabled={snapshot.readOnly !== undefined}
        onChange={(event) => put(event.target.value)}
      >
        {(['none', 'plan', 'elevation'] as const).map((view) => (
          <option key={view} value={view}>
            {words.views[view]}
          </option>
        ))}
      </select>
      {onDrawing && (
        <button type="button" className="second" onClick={() => onWish({ photo: photo.id, view: onDrawing.view })}>
          {words.showPlace(number)}
        </button>
      )}
    </div>
  )
}
