import type { RuleWording, Say } from '../rule-wording.ts'
import { needsWords } from '../told.ts'

/**
 * The sentences for what cannot be told yet. `question` goes on after "whether"; where a verdict would be in order but for its grounds,
 * the pass is told first and then why it is none.
 */
export function unsettled(question: Say, pass: Say): RuleWording['undetermined'] {
  return {
    'missing-input': (told) => `It is not known whether ${question(told)}. What is missing: ${needsWords(told) || 'something'}.`,
    'rests-on-assumption': (told) =>
      `So far in order, but it rests on what nobody entered: ${needsWords(told) || 'a default'}. ${pass(told)}`,
    'limit-from-memory': (told) =>
      `So far in order, but it rests on what is only remembered and was never held against its page: ${needsWords(told) || 'a limit'}. ${pass(told)}`,
    'two-values': (told) =>
      `It is not settled whether ${question(told)}: two people entered different values for ${needsWords(told) || 'one place'}, and nobody has chosen.`,
    'nothing-free': (told) =>
      `There is nothing to tell whether ${question(told)}: no body has room there, because obstacles stand everywhere.`,
    'not-computable': (told) => `Whether ${question(told)} cannot be computed for this kind of device or leaf; test it on site.`,
    'yaw-range-sampled': (told) =>
      `It is not known whether ${question(told)}: the body may lie at any angle, and only some angles were tried. None of those tried goes wrong.`,
    'several-parts': (told) =>
      `It is not known whether ${question(told)}: a body of several parts shades itself, and is judged only where it passes (${needsWords(told) || 'the body'}). No other body goes wrong.`,
    'within-tolerance': (told) =>
      `It is not settled whether ${question(told)}, when everything may be off by as much as the door file allows.`,
    'not-proved': (told) => `It is not settled whether ${question(told)}: no unseen body was found, but a few places could not be proved.`,
  }
}

/** What would settle it, by the reason; for fails the rule's own words. */
export function mendOr(fail: Say): Say {
  return (told) => {
    const { finding } = told
    if (finding.verdict === 'fail') return fail(told)
    if (finding.verdict !== 'undetermined') return ''
    const wanted = needsWords(told)
    return {
      'missing-input': `Enter ${wanted || 'what is missing'}.`,
      'rests-on-assumption': `Measure or confirm ${wanted || 'what a default stands in for'}.`,
      'limit-from-memory': `Hold it against the page, then confirm it in the door file with edition, clause, name and date: ${wanted || 'the limit'}.`,
      'two-values': `Choose one of the two values: ${wanted || 'the place with two'}.`,
      'nothing-free': 'Check the obstacles and the zone: one of them is probably misplaced.',
      'not-computable': 'Test it on site with the test body, and record the test.',
      'within-tolerance': `Measure or mount more closely: ${wanted || 'the tolerances'}.`,
      'not-proved': 'Look at the places that stay open, or test them on site.',
      'several-parts': 'Judge the zone by bodies of one part, or test the other on site.',
      'yaw-range-sampled': 'Give the body fixed angles, or test the angles between on site.',
    }[finding.reason]
  }
}
