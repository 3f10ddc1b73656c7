import { type ChangeEvent, lazy, Suspense, useRef, useState } from 'react'
import { Icon } from '../look/icons.tsx'
import { PinMark, placeOf } from '../photos/pin-mark.tsx'
import { reEncoded } from '../photos/re-encode.ts'
import { usePicture } from '../photos/use-picture.ts'
import type { Photo } from '../store/contract.ts'
import { LONGEST_TEXT } from '../store/printable.ts'
import { shownTime } from '../words/time.ts'
import { useWords } from '../words/words.ts'
import { useDoor } from './at-door.ts'
import { Group } from './group.tsx'

const Pins = lazy(() => import('../photos/pins.tsx').then(({ Pins }) => ({ default: Pins })))

/** Pictures of the doorway. They are drawn anew when they come in: place and camera are not in what is kept. */
export function Photos() {
  const words = useWords().photos
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
    <Group title={words.title} path="photos">
      {snapshot.photos.length === 0 && <p>{words.none}</p>}
      <ul className="photos">
        {snapshot.photos.map((photo) => (
          <PhotoItem key={photo.id} photo={photo} />
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

function PhotoItem({ photo }: { readonly photo: Photo }) {
  const words = useWords()
  const { door, snapshot } = useDoor()
  const url = usePicture(photo.id)
  const [open, setOpen] = useState(false)
  const { id, pins, takenWhere } = photo
  const name = photo.caption || shownTime(photo.takenAt_ms)
  const isReadOnly = snapshot.readOnly !== undefined
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
        defaultValue={photo.caption}
        onKeyDown={(event) => {
          if (event.key !== 'Enter') return
          event.preventDefault() // a caption is one line, however many it takes to show it
          event.currentTarget.blur()
        }}
        onBlur={(event) => event.target.value !== photo.caption && door.changePhoto(id, { caption: event.target.value })}
      />
      {!isReadOnly && (
        <button type="button" className="quiet-button" aria-label={words.entry.remove(name)} onClick={() => door.removePhoto(id)}>
          <Icon name="cross" />
        </button>
      )}
      {takenWhere !== undefined && (
        <>
          <p className="photo-where">{words.photos.takenAt(takenWhere)}</p>
          {!isReadOnly && (
            <button type="button" className="quiet-button" aria-label={words.photos.forgetWhere} onClick={() => door.forgetWhereTaken(id)}>
              <Icon name="cross" />
            </button>
          )}
        </>
      )}
      {open && url !== undefined && (
        <Suspense fallback={null}>
          <Pins photo={photo} url={url} name={name} onClose={() => setOpen(false)} />
        </Suspense>
      )}
    </li>
  )
}
