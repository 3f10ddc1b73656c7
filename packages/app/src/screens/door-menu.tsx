import type { RefObject } from 'react'
import { Menu, MenuItem, Popover } from 'react-aria-components'
import { useLocation } from 'wouter'
import { handOver } from '../hand-over.ts'
import type { DoorCard } from '../store/contract.ts'
import { doors } from '../store/doors.ts'
import { useWords } from '../words/words.ts'

interface Props {
  readonly card: DoorCard
  readonly button: RefObject<HTMLButtonElement | null>
  readonly onClose: () => void
}

/** What can be done with a door without opening it. */
export function DoorMenu({ card, button, onClose }: Props) {
  const words = useWords()
  const [, go] = useLocation()
  return (
    <Popover
      aria-label={words.doors.more(card.name || words.unnamed)}
      className="popover menu"
      placement="bottom end"
      triggerRef={button}
      isOpen
      onOpenChange={(open) => !open && onClose()}
    >
      <Menu
        aria-label={words.doors.more(card.name || words.unnamed)}
        onClose={onClose}
        onAction={async (action) => {
          if (action === 'copy') go(`/door/${await doors.copy(card.id, `${card.name} (2)`)}/measure`)
          if (action === 'file') handOver(new TextEncoder().encode(await doors.exportFile(card.id)), card.name, 'json')
          if (action === 'whole') handOver(await doors.exportDoor(card.id), card.name)
          if (action === 'away') doors.putAway(card.id, !card.away)
        }}
      >
        <MenuItem id="copy">{words.doors.copy}</MenuItem>
        <MenuItem id="file">{words.doors.exportFile}</MenuItem>
        <MenuItem id="whole">{words.doors.exportWhole}</MenuItem>
        <MenuItem id="away">{card.away ? words.doors.takeOut : words.doors.putAway}</MenuItem>
      </Menu>
    </Popover>
  )
}
