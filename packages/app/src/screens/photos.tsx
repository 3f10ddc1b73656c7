import { type ChangeEvent, useEffect, useRef, useState } from 'react'
import { Icon } from '../look/icons.tsx'
import { reEncoded } from '../photos/re-encode.ts'
import type { Photo } from '../store/contract.ts'
import { shownTime } from '../words/time.ts'
import { useWords } from '../words/words.ts'
import { useDoor } from './at-door.ts'
import { Group } from './group.tsx'

/** Pictures of the doorway. They are drawn anew when they come in: place and camera are not in what is kept. */
export function Photos() {
  const words = useWords().photos
  const { door, snapshot } = useDoor()
  const input = useRef<HTMLInputElement>(null)
  const [told, setTold] = useState<string>()
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
      const { id, bytes, width_px, height_px } = made
      await door.addPhoto({ id, takenAt_ms: Date.now(), caption: '', width_px, height_px }, bytes)
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
        <button type="button" className="second" onClick={() => input.current?.click()}>
          {words.add}
        </button>
      )}
      <input ref={input} type="file" accept="image/jpeg,image/png,image/webp" multiple hidden aria-label={words.add} onChange={take} />
    </Group>
  )
}

function PhotoItem({ photo }: { readonly photo: Photo }) {
  const words = useWords()
  const { door, snapshot } = useDoor()
  const [url, setUrl] = useState<string>()
  const { id } = photo
  useEffect(() => {
    let made: string | undefined
    let gone = false
    door.photoBytes(id).then((bytes) => {
      if (!bytes || gone) return
      made = URL.createObjectURL(new Blob([bytes as BlobPart], { type: 'image/jpeg' }))
      setUrl(made)
    })
    return () => {
      gone = true
      if (made !== undefined) URL.revokeObjectURL(made)
    }
  }, [door, id])
  const name = photo.caption || shownTime(photo.takenAt_ms)
  return (
    <li>
      {url !== undefined && <img src={url} alt={name} width={photo.width_px} height={photo.height_px} />}
      <textarea
        className="name"
        rows={1}
        aria-label={words.photos.caption}
        placeholder={words.photos.caption}
        maxLength={200}
        disabled={snapshot.readOnly !== undefined}
        defaultValue={photo.caption}
        onKeyDown={(event) => {
          if (event.key !== 'Enter') return
          event.preventDefault() // a caption is one line, however many it takes to show it
          event.currentTarget.blur()
        }}
        onBlur={(event) => event.target.value !== photo.caption && door.changePhoto(id, { caption: event.target.value })}
      />
      {snapshot.readOnly === undefined && (
        <button type="button" className="quiet-button" aria-label={words.entry.remove(name)} onClick={() => door.removePhoto(id)}>
          <Icon name="cross" />
        </button>
      )}
    </li>
  )
}
