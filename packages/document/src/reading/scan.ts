import { BOUNDS } from '../bounds.ts'
import type { Issue } from '../issue.ts'
import { pathOf, plain, shown, shownText } from '../shown.ts'

type Waiting = 'value' | 'value-or-end' | 'key' | 'key-or-end' | 'colon' | 'comma-or-end' | 'nothing'

interface Level {
  readonly keys: Set<string> | undefined // of an object; a list has none
  key: string | undefined // none read yet
  index: number
}

/** What is wrong with the text; `broken` if it is not JSON or too much of it, so that nothing further may look at it. */
export interface Scan {
  readonly issues: readonly Issue[]
  readonly broken: boolean
}

/**
 * Reads a text once from left to right, without recursion, before `JSON.parse` does: finds where it stops to be JSON, how deep and how
 * full it is, keys that stand twice (of which `JSON.parse` would silently keep the last), and numbers too large to hold.
 */
export function scanJson(text: string): Scan {
  return new Scanner(text).scan()
}

class Scanner {
  private readonly text: string
  private at = 0
  private readonly levels: Level[] = []
  private values = 0
  private readonly issues: Issue[] = []
  private broken = false

  constructor(text: string) {
    this.text = text
  }

  scan(): Scan {
    let waiting: Waiting = 'value'
    while (!this.broken) {
      this.skipSpace()
      if (waiting === 'nothing') {
        if (this.at < this.text.length) this.stop('nothing after the end of the file')
        break
      }
      waiting = this.step(waiting)
    }
    return { issues: this.issues, broken: this.broken }
  }

  private step(waiting: Waiting): Waiting {
    const c = this.text[this.at]
    if (c === undefined) return this.stop(`${inWords(waiting, this.inObject())}, not the end of the file`)
    switch (waiting) {
      case 'colon':
        return c === ':' ? this.take('value') : this.stop('":"')
      case 'comma-or-end':
        if (c === ',') return this.take(this.inObject() ? 'key' : this.nextItem())
        return c === (this.inObject() ? '}' : ']') ? this.close() : this.stop(inWords(waiting, this.inObject()))
      case 'key-or-end':
        return c === '}' ? this.close() : this.key()
      case 'key':
        return this.key()
      case 'value-or-end':
        return c === ']' ? this.close() : this.value(c)
      default:
        return this.value(c)
    }
  }

  private key(): Waiting {
    const start = this.at
    if (this.text[start] !== '"') return this.stop('a name in double quotes')
    if (!this.string()) return 'nothing'
    const key = JSON.parse(this.text.slice(start, this.at)) as string
    const level = this.levels[this.levels.length - 1]
    if (level?.keys === undefined) throw new Error('a key stands in an object')
    if (key.length > BOUNDS.key) return this.tooMuch('name-too-long', `names of at most ${BOUNDS.key} characters`, `one of ${key.length}`)
    level.key = key
    if (level.keys.has(key)) this.report('duplicate-key', 'every name once in its object', `${shownText(key)} twice`)
    if (key === '__proto__') this.report('forbidden-key', 'any other name', shownText(key))
    level.keys.add(key)
    return 'colon'
  }

  private value(c: string): Waiting {
    if (++this.values > BOUNDS.values) return this.tooMuch('too-many-values', `at most ${BOUNDS.values} values`, 'more')
    if (c === '{') return this.open({ keys: new Set(), key: undefined, index: 0 }, 'key-or-end')
    if (c === '[') return this.open({ keys: undefined, key: undefined, index: 0 }, 'value-or-end')
    if (c === '"') return this.string() ? this.afterValue() : 'nothing'
    for (const word of ['true', 'false', 'null']) {
      if (this.text.startsWith(word, this.at)) {
        this.at += word.length
        return this.afterValue()
      }
    }
    return this.number() ? this.afterValue() : this.stop(inWords('value', false))
  }

  private open(level: Level, next: Waiting): Waiting {
    if (this.levels.length === BOUNDS.depth)
      return this.tooMuch('too-deep', `at most ${BOUNDS.depth} objects and lists in each other`, 'more')
    this.levels.push(level)
    return this.take(next)
  }

  private close(): Waiting {
    this.levels.pop()
    this.at++
    return this.afterValue()
  }

  private afterValue(): Waiting {
    return this.levels.length === 0 ? 'nothing' : 'comma-or-end'
  }

  private nextItem(): Waiting {
    const level = this.levels[this.levels.length - 1]
    if (level !== undefined) level.index++
    return 'value'
  }

  private take(next: Waiting): Waiting {
    this.at++
    return next
  }

  /** Steps over a text in quotes; false if it is broken. */
  private string(): boolean {
    const start = this.at++
    for (;;) {
      const code = this.text.charCodeAt(this.at)
      if (Number.isNaN(code)) return this.fail('the closing quote, not the end of the file')
      if (code < 0x20) return this.fail('no line end or control character within quotes')
      if (code === 0x22) break
      if (code === 0x5c && !this.escape()) return false
      this.at++
    }
    this.at++
    if (this.at - start <= BOUNDS.textValue) return true
    this.tooMuch('text-too-long', `texts of at most ${BOUNDS.textValue} characters`, `one of ${this.at - start - 2}`)
    return false
  }

  /** Steps to the last character of an escape. */
  private escape(): boolean {
    const c = this.text[++this.at]
    if (c === 'u') {
      if (!/^[0-9a-fA-F]{4}$/.test(this.text.slice(this.at + 1, this.at + 5))) return this.fail('four hexadecimal digits after "\\u"')
      this.at += 4
      return true
    }
    return c !== undefined && '"\\/bfnrt'.includes(c) ? true : this.fail('a known escape after "\\"')
  }

  private number(): boolean {
    const form = /-?(?:0|[1-9][0-9]*)(?:\.[0-9]+)?(?:[eE][+-]?[0-9]+)?/y
    form.lastIndex = this.at
    const digits = form.exec(this.text)?.[0]
    if (digits === undefined) return false
    if (!Number.isFinite(Number(digits))) this.report('not-finite', 'a finite number', digits.length > 60 ? shown(Infinity) : digits)
    this.at += digits.length
    return true
  }

  private skipSpace(): void {
    for (; this.at < this.text.length; this.at++) {
      const code = this.text.charCodeAt(this.at)
      if (code !== 0x20 && code !== 0x0a && code !== 0x0d && code !== 0x09) return
    }
  }

  private inObject(): boolean {
    return this.levels[this.levels.length - 1]?.keys !== undefined
  }

  private path(): string {
    return pathOf(this.levels.map((level) => (level.keys === undefined ? level.index : level.key)).filter((key) => key !== undefined))
  }

  private report(code: string, expected: string, got: string): void {
    if (this.issues.length < BOUNDS.issues) this.issues.push({ code, path: this.path(), expected, got })
  }

  private fail(expected: string): false {
    const before = this.text.slice(0, this.at)
    const line = before.split('\n').length
    const column = this.at - before.lastIndexOf('\n')
    const found = this.text[this.at]
    const got = found === undefined ? 'the end' : `"${plain(found)}"`
    const repair = found === '/' || found === '#' ? 'JSON has no comments: use a "note" field' : 'the file was not read further'
    this.issues.push({
      code: 'not-json',
      path: this.path(),
      expected,
      got: `${got} at line ${line}, column ${column}`,
      repair,
    })
    this.broken = true
    return false
  }

  private stop(expected: string): Waiting {
    this.fail(expected)
    return 'nothing'
  }

  private tooMuch(code: string, expected: string, got: string): Waiting {
    this.issues.push({ code, path: this.path(), expected, got })
    this.broken = true
    return 'nothing'
  }
}

function inWords(waiting: Waiting, inObject: boolean): string {
  const words: Record<Waiting, string> = {
    value: 'a value',
    'value-or-end': 'a value or "]"',
    key: 'a name in double quotes',
    'key-or-end': 'a name in double quotes or "}"',
    colon: '":"',
    'comma-or-end': inObject ? '"," or "}"' : '"," or "]"',
    nothing: 'nothing more',
  }
  return words[waiting]
}
