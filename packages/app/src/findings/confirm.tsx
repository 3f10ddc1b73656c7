import type { Finding } from '@sillsight/engine'
import { needWords } from '@sillsight/report'
import { useState } from 'react'
import { Button, Dialog, Form, Heading, Input, Label, Modal, ModalOverlay, TextField } from 'react-aria-components'
import { putAt } from '../entry/places.ts'
import { Explained } from '../help/explained.tsx'
import { useDoor } from '../screens/at-door.ts'
import { useReader } from '../words/reader.ts'
import { useWords } from '../words/words.ts'

const FIELDS = ['document', 'edition', 'clause', 'by'] as const

/** A figure that is only remembered counts from then on when somebody who holds the standard says that it stands there. */
export function Confirm({ finding, onClose }: { readonly finding: Finding; readonly onClose: () => void }) {
  const words = useWords()
  const reader = useReader()
  const { door, answers } = useDoor()
  const [said, setSaid] = useState<Partial<Record<(typeof FIELDS)[number], string>>>({})
  const needs = finding.verdict === 'undetermined' ? finding.needs.filter((need) => need.startsWith('confirmations/')) : []
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
    door.edit({ deed: 'set', path: 'confirmations', typed: made.map(({ value }) => value).join(', ') }, (draft) => {
      if (draft.confirmations === undefined) putAt(draft, 'confirmations', made)
      else (draft.confirmations as unknown[]).push(...made)
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
              <TextField key={field} className="field" maxLength={200} onChange={(text) => setSaid((now) => ({ ...now, [field]: text }))}>
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
