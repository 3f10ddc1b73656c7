import { use, useEffect, useState } from 'react'
import type { Terms } from '../help/terms.ts'
import { SpokenContext } from './words.ts'

const NONE: Terms = {}
let english: Terms | undefined
let coming: Promise<Terms> | undefined

/** The words of the trade in the chosen language; none until they have come, and none where they cannot be loaded. */
export function useTerms(): Terms {
  const { terms } = use(SpokenContext)
  const [known, setKnown] = useState(english)
  const isMissing = terms === undefined && known === undefined
  useEffect(() => {
    if (!isMissing) return
    coming ??= import('./en-terms.ts').then(({ enTerms }) => enTerms)
    coming.then(
      (loaded) => {
        english = loaded
        setKnown(loaded)
      },
      () => {
        coming = undefined // asked for again by whoever comes next
      },
    )
  }, [isMissing])
  return terms ?? known ?? NONE
}
