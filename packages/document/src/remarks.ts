import { BOUNDS } from './bounds.ts'
import type { Issue, Note } from './issue.ts'

/** Collects what there is to say about one file, so that everything is said at once and nothing without end. */
export class Remarks {
  readonly issues: Issue[] = []
  readonly notes: Note[] = []
  readonly assumed: string[] = []
  issueCount = 0
  noteCount = 0

  issue(issue: Issue): void {
    this.issueCount++
    if (this.issues.length < BOUNDS.issues) this.issues.push(issue)
  }

  /** Asks for something by its name. */
  missing(path: string, expected: string): void {
    this.issue({ code: 'missing', path, expected, got: 'nothing', repair: `add ${path}` })
  }

  /** A note that is costly to word comes as a function, which is asked only while there is room. */
  note(note: Note | (() => Note)): void {
    this.noteCount++
    if (this.notes.length < BOUNDS.notes) this.notes.push(typeof note === 'function' ? note() : note)
  }

  /** A default stands in for something that nobody entered: nothing that rests on it passes. */
  assume(path: string): void {
    if (!this.assumed.includes(path)) this.assumed.push(path)
  }

  get failed(): boolean {
    return this.issueCount > 0
  }

  /** The notes, and one more that says how many were left out. */
  allNotes(): readonly Note[] {
    const more = this.noteCount - this.notes.length
    return more === 0 ? this.notes : [...this.notes, { code: 'more-notes', path: 'file', text: `${more} more notes are not listed` }]
  }
}
