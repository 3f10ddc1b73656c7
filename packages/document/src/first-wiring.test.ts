import { judge } from '@sillsight/engine'
import { describe, expect, it } from 'vitest'
import { changed, exampleFile } from '../test/example-files.ts'
import { firstWiring, parseDocument, toDoor } from './index.ts'

describe('a wiring to begin with', () => {
  it('is a door file that reads, hides no single fault, and passes nothing until its figures are confirmed', () => {
    const [sensor] = exampleFile().sensors ?? []
    const id = sensor?.id ?? ''
    const result = parseDocument(JSON.stringify(changed(exampleFile(), 'wiring', firstWiring([id]))))
    if (!result.ok) throw new Error(JSON.stringify(result.issues))
    const { findings } = judge(toDoor(result.document, result.catalogue), { depth: 'grid' })
    const about = (rule: string) => findings.filter((finding) => finding.rule === rule && ['scan', 'door'].includes(finding.subject.id))
    expect(about('single-fault')).toMatchObject([{ verdict: 'undetermined', reason: 'limit-from-memory', measured: { value: 0 } }])
    expect(about('wiring-slips')).toMatchObject([{ verdict: 'undetermined', reason: 'limit-from-memory', measured: { value: 0 } }])
  })

  it('takes a sensor whose name has dots', () => {
    const wiring = firstWiring(['a.b'])
    expect(wiring.cables[0]?.cores.map(({ to }) => to.split('.').length)).toEqual([2, 2, 2, 2, 2])
    expect(wiring.sensors[0]?.sensor).toBe('a.b')
  })
})
