import { useMemo } from 'react'
import { Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components'
import { Icon } from '../look/icons.tsx'
import { useTerms } from '../words/use-terms.ts'
import { useWords } from '../words/words.ts'
import { termsIn } from './terms.ts'

/** The words of the trade that a sheet uses, drawing, buttons and lists included, each with what it means. */
export function WordList({ sheet, onClose }: { readonly sheet: Element; readonly onClose: () => void }) {
  const words = useWords()
  const terms = useTerms()
  const found = useMemo(
    () =>
      termsIn(saidOn(sheet), terms)
        .flatMap((id) => terms[id] ?? [])
        .sort((a, b) => a.word.localeCompare(b.word)),
    [sheet, terms],
  )
  return (
    <ModalOverlay className="pad-veil" isDismissable isOpen onOpenChange={(open) => !open && onClose()}>
      <Modal className="why">
        <Dialog>
          <div className="pad-head">
            <Heading slot="title">{words.help.words.title}</Heading>
            <button type="button" className="quiet-button" aria-label={words.pad.close} onClick={onClose}>
              <Icon name="cross" />
            </button>
          </div>
          {/* until the words have come nothing is said: least of all that there are none */}
          {Object.keys(terms).length > 0 && found.length === 0 && <p className="word-list">{words.help.words.none}</p>}
          {found.length > 0 && (
            <dl className="word-list">
              {found.map(({ word, says }) => (
                <div key={word}>
                  <dt>{word}</dt>
                  <dd>{says}</dd>
                </div>
              ))}
            </dl>
          )}
        </Dialog>
      </Modal>
    </ModalOverlay>
  )
}

/** All that is written on an element, and what is only read aloud. Pieces are kept apart, so that no word is made of two. */
function saidOn(sheet: Element): string {
  const said: string[] = []
  const walk = document.createTreeWalker(sheet, NodeFilter.SHOW_TEXT | NodeFilter.SHOW_ELEMENT)
  for (let node = walk.nextNode(); node; node = walk.nextNode()) {
    if (node instanceof Element) said.push(node.getAttribute('aria-label') ?? '', node.getAttribute('placeholder') ?? '')
    else said.push(node.textContent ?? '')
  }
  return said.join(' · ')
}
