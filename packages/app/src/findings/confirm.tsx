import type { Finding } from '@sillsight/engine'
import { needWords } from '@sillsight/report'
import { useState } from 'react'
import { Button, Dialog, Form, Heading, Input, Label, Modal, ModalOverlay, TextField } from 'react-aria-components'
import { useBegun } from '../entry/begun.ts'
import { pushAt } from '../entry/places.ts'
import { useWhenHidden } from '../entry/written.ts'
import { Explained } from '../help/explained.tsx'
import { useDoor } from '../screens/at-door.ts'
import { LONGEST_TEXT, printable } from '../store/printable.ts'
import { useReader } from '../words/reader.ts'
import { useWords } from '../words/words.ts'

const FIELDS = ['document', 'edition', 'clause', 'by'] as const

/** A figure that is only remembered counts from then on when somebody who holds the standard says that it stands there. */
export function Confirm({ finding, onClose }: { readonly finding: Finding; readonly onClose: () => void }) {
  const words = useWords()
  const reader = useReader()
  const { answers } = useDoor()
  const needs = finding.verdict === 'undetermined' ? finding.needs.filter((need) => need.startsWith('confirmations/')) : []
  const begun = useBegun(`confirmations/+${finding.rule}`)
  const [said, setSaid] = useState<Partial<Record<(typeof FIELDS)[number], string>>>(() =>
    Object.fromEntries(FIELDS.map((field) => [field, begun.text(field) ?? ''])),
  )
  const keep = () => {
    const written = FIELDS.map((field) => [field, printable(said[field] ?? '', LONGEST_TEXT)] as const)
    for (const [field, text] of written)
      if (text !== (begun.text(field) ?? '')) begun.say(words.confirm[field], { [field]: text === '' ? undefined : { value: text } })
  }
  useWhenHidden(keep)
  const complete = FIELDS.every((field) => (said[field] ?? '').trim() !== '')
  const save = () => {
    if (!complete) return
    const today = new Date()
    const on = `${today.getFullYear()}-${String(today.getMonth() + 1).padStart(2, '0')}-${String(today.getDate()).padStart(2, '0')}`
    const made = needs.map((need) => ({
      value: need.slice('confirmations/'.length),
      document: said.document?.trim() ?? '',
      edition: said.edition?.trim() ?? '',
      clause: said.clause?.trim() ?? '',
      by: said.by?.trim() ?? '',
      on,
    }))
    begun.whole({ deed: 'set', path: 'confirmations', typed: made.map(({ value }) => value).join(', ') }, (draft) => {
      for (const each of made) pushAt(draft, 'confirmations', each)
    })
    onClose()
  }
  return (
    <ModalOverlay className="pad-veil" isDismissable isOpen onOpenChange={(open) => !open && onClose()}>
      <Modal className="pad">
        <Dialog className="pad-sheet">
          <div className="pad-head">
            <Heading slot="title">{words.confirm.title}</Heading>
          </div>
          <p>
            <Explained text={words.confirm.lead} />
          </p>
          <ul className="waiting">
            {answers.shown && needs.map((need) => <li key={need}>{answers.shown && needWords(answers.shown.door, need, reader)}</li>)}
          </ul>
          <Form
            onSubmit={(event) => {
              event.preventDefault()
              save()
            }}
          >
            {FIELDS.map((field) => (
              <TextField
                key={field}
                className="field"
                maxLength={LONGEST_TEXT}
                value={said[field] ?? ''}
                onBlur={keep}
                onChange={(text) => setSaid((now) => ({ ...now, [field]: text }))}
              >
                <Label>{words.confirm[field]}</Label>
                <Input />
              </TextField>
            ))}
            <div className="pad-done">
              <Button className="second" onPress={onClose}>
                {words.pad.close}
              </Button>
              <Button type="submit" className="primary" isDisabled={!complete}>
                {words.confirm.save}
              </Button>
            </div>
          </Form>
        </Dialog>
      </Modal>
    </ModalOverlay>
  )
}
