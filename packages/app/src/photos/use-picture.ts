import { useEffect, useState } from 'react'
import { useDoor } from '../screens/at-door.ts'

/** An address of a photo's bytes, for as long as it is shown. */
export function usePicture(id: string): string | undefined {
  const { door } = useDoor()
  const [url, setUrl] = useState<string>()
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
  return url
}
