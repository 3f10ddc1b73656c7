import { useLocation } from 'wouter'
import { useWords } from '../words/words.ts'
import { endTour, startTour, turnDownTour, useTouring } from './touring.ts'

/** On the first start, and where a tour was left standing: an offer that can be turned down. */
export function TourOffer({ isFirst }: { readonly isFirst: boolean }) {
  const words = useWords().help.tour
  const [, go] = useLocation()
  const { known, door } = useTouring()
  if (door !== undefined)
    return (
      <section className="tour-offer" aria-label={words.label}>
        <p>{words.waiting}</p>
        <div className="row">
          <button type="button" className="second" onClick={() => go(`/door/${door}/judge`)}>
            {words.goOn}
          </button>
          <button type="button" className="second" onClick={() => endTour('throw-away')}>
            {words.throwAway}
          </button>
        </div>
      </section>
    )
  if (known || !isFirst) return null
  return (
    <section className="tour-offer" aria-label={words.label}>
      <p>{words.offer}</p>
      <div className="row">
        <TakeTour words={words.take} />
        <button type="button" className="link" onClick={turnDownTour}>
          {words.notNow}
        </button>
      </div>
    </section>
  )
}

export function TakeTour({ words }: { readonly words: string }) {
  const [, go] = useLocation()
  const { demoTexts } = useWords()
  const take = async () => go(`/door/${await startTour((text) => demoTexts[text] ?? text)}/judge`)
  return (
    <button type="button" className="second" onClick={take}>
      {words}
    </button>
  )
}
