import { plainPalette, ruleName, whyText } from '@sillsight/report'
import { Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components'
import { Explained } from '../help/explained.tsx'
import { WordsHere } from '../help/words-here.tsx'
import { Icon } from '../look/icons.tsx'
import { useDoor } from '../screens/at-door.ts'
import { useReader } from '../words/reader.ts'
import { useWords } from '../words/words.ts'

/** The arithmetic of one finding, step by step, with where each figure came from. */
export function Why({ finding, onClose }: { readonly finding: string; readonly onClose: () => void }) {
  const words = useWords()
  const reader = useReader()
  const { shown } = useDoor().answers
  // as wide as no line is: the sheet wraps them to its own width
  const text =
    shown &&
    whyText(shown.door, shown.judgement, finding, { width: 10_000, palette: plainPalette, ...reader, ascii: false, hasModules: false })
  return (
    <ModalOverlay className="pad-veil" isDismissable isOpen onOpenChange={(open) => !open && onClose()}>
      <Modal className="why">
        <Dialog>
          <div className="pad-head">
            <Heading slot="title">{ruleName(finding.split(':')[0] ?? finding, reader)}</Heading>
            <WordsHere />
            <button type="button" className="quiet-button" aria-label={words.pad.close} onClick={onClose}>
              <Icon name="cross" />
            </button>
          </div>
          <div className="why-text">
            {text?.split('\n\n').map((block) => (
              <p key={block}>
                {block.split('\n').map((line, i, lines) => (
                  // biome-ignore lint/suspicious/noArrayIndexKey: the lines of one block never change their order
                  <span key={i} className="why-line" data-inner={line.startsWith(' ') || undefined}>
                    <Explained text={line.trimStart()} after={lines.slice(0, i)} />
                  </span>
                ))}
              </p>
            ))}
          </div>
        </Dialog>
      </Modal>
    </ModalOverlay>
  )
}
