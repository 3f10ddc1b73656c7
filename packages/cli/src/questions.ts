import type { Interface } from 'node:readline'
import { tell } from './output.ts'
import { type Problem, problemText, Refusal } from './problem.ts'

/**
 * Asks on standard error and reads standard input line by line, so that answers can be typed or piped. A person is asked again after a
 * slip; piped answers are refused, because the next line belongs to the next question.
 */
export class Questions {
  readonly #lines: Interface
  readonly #next: AsyncIterator<string>
  readonly #interactive = process.stdin.isTTY === true
  #number = 0

  constructor() {
    this.#lines = process.getBuiltinModule('node:readline').createInterface({ input: process.stdin }) // loaded only when asked
    this.#next = this.#lines[Symbol.asyncIterator]()
  }

  /** @param fallback what Enter alone gives, as the question names it; `read` is then called with an empty answer */
  async ask<T extends string | object>(question: string, fallback: string | undefined, read: (typed: string) => T | Problem): Promise<T> {
    this.#number++
    for (;;) {
      tell(`${this.#number}. ${question}${fallback === undefined ? '' : ` [Enter: ${fallback}]`}: `)
      const { value, done } = await this.#next.next()
      if (done)
        throw this.#refusal(
          { code: 'no-answer', place: '', expected: 'an answer', got: 'the end of the input', repair: 'answer all six questions' },
          question,
        )
      const answer = read(value.trim())
      if (!isProblem(answer)) {
        if (!this.#interactive) tell(`${value.trim()}\n`)
        return answer
      }
      if (!this.#interactive) throw this.#refusal(answer, question)
      tell(problemText([{ ...answer, place: 'new' }]))
    }
  }

  end(): void {
    this.#lines.close()
  }

  #refusal(problem: Problem, question: string): Refusal {
    tell('\n')
    return new Refusal({ ...problem, place: `new: question ${this.#number} (${question})` })
  }
}

function isProblem(answer: string | object): answer is Problem {
  return typeof answer === 'object' && 'repair' in answer
}
