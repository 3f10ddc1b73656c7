import { plainPalette, ruleName, whyText } from '@sillsight/report'
import { Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components'
import { usePreferences } from '../preferences.ts'
import { useDoor } from '../screens/at-door.ts'
import { useWords } from '../words/words.ts'

/** The arithmetic of one finding, step by step, with where each figure came from. */
export function Why({ finding, onClose }: { readonly finding: string; readonly onClose: () => void }) {
  const words = useWords()
  const { units } = usePreferences()
  const { shown } = useDoor().answers
  const text = shown && whyText(shown.door, shown.judgement, finding, { width: 72, palette: plainPalette, units, ascii: false })
  return (
    <ModalOverlay className="pad-veil" isDismissable isOpen onOpenChange={(open) => !open && onClose()}>
      <Modal className="why">
        <Dialog>
          <div className="pad-head">
            <Heading slot="title">{ruleName(finding.split(':')[0] ?? finding)}</Heading>
            <button type="button" className="quiet-button" aria-label={words.pad.close} onClick={onClose}>
              <svg viewBox="0 0 20 20" aria-hidden="true">
                <path d="M4 4l12 12M16 4L4 16" />
              </svg>
            </button>
          </div>
          <pre className="why-text">{text}</pre>
        </Dialog>
      </Modal>
    </ModalOverlay>
  )
}
