import { plain } from '../plain.ts'

const PARTS: Readonly<Record<string, string>> = { supply: 'the supply', control: 'the test output of the control' }

/** What is missing to say how often to test by hand. @param missing parts by kind and id, `share` */
export function missingByHand(missing: readonly string[]): string {
  const parts = missing.filter((each) => each !== 'share').map((each) => PARTS[each] ?? plain(each))
  return [
    ...(parts.length > 0 ? [`years to dangerous failure of ${parts.join(', ')}`] : []),
    ...(missing.includes('share') ? ['the share of time for which a fault may stay hidden'] : []),
  ].join('; ')
}

/** How often to test by hand. @param remembered it rests on figures from memory */
export function oftenByHand(days: string, percent: string, remembered: boolean): string {
  const said = `test it by hand at least every ${days}: then such a fault stands for at most ${percent} of the time on average`
  return remembered ? `${said} (by figures that are only remembered)` : said
}
