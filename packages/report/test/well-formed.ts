import { expect } from 'vitest'

/**
 * Checks that a text is well-formed XML 1.0 as far as our writers could go wrong: tags nest, attributes are quoted once each, `<` and `&`
 * stand only in markup and entities, no forbidden character. Written from the productions of the recommendation, not from our code.
 */
export function expectWellFormed(text: string): void {
  expect(text).not.toMatch(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/)
  expect(text).not.toMatch(/[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/)
  const open: string[] = []
  const body = text.replace(/^<\?xml version="1\.0" encoding="UTF-8"\?>\n/, '')
  let roots = 0
  for (const [piece] of body.matchAll(/<[^>]*>|[^<]+/g)) {
    if (!piece.startsWith('<')) {
      expect(piece.replace(/&(?:amp|lt|gt|quot|#39);/g, '')).not.toMatch(/[&>]/)
      if (open.length === 0) expect(piece.trim()).toBe('')
      continue
    }
    const end = /^<\/([A-Za-z]+)>$/.exec(piece)
    if (end) {
      expect(open.pop()).toBe(end[1])
      continue
    }
    const start = /^<([A-Za-z]+)((?:\s+[A-Za-z][\w:-]*="[^"<]*")*)\s*(\/?)>$/.exec(piece)
    expect(start, piece).not.toBeNull()
    const attributes = [...(start?.[2] ?? '').matchAll(/([\w:-]+)="([^"]*)"/g)]
    expect(new Set(attributes.map(([, name]) => name)).size).toBe(attributes.length)
    for (const [, , value = ''] of attributes) expect(value.replace(/&(?:amp|lt|gt|quot|#39);/g, '')).not.toContain('&')
    if (open.length === 0) roots++
    if (start?.[3] !== '/') open.push(start?.[1] ?? '')
  }
  expect(open).toEqual([])
  expect(roots).toBe(1)
}
