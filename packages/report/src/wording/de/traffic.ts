import { figure, type Toward } from '../figures.ts'
import { sideName } from '../places.ts'
import { plain } from '../plain.ts'
import { type RuleWording, type Say, sentenceOf } from '../rule-wording.ts'
import { against, flag, inState, lengthToward, nameIn, number, type Told, word, worstBody } from '../told.ts'
import { mendOr, unsettled } from './unsettled.ts'

function laneWords(told: Told): string {
  const name = nameIn(told, 'laneName', 'lane')
  return name === undefined ? 'der Spur' : told.language.things.lane(name)
}

function speed(told: Told, key: string, toward: Toward): string | undefined {
  const value = number(told, key)
  return value === undefined ? undefined : figure({ value, unit: 'mm_per_s' }, told, toward)
}

/** Ein zweiter Körper nahebei, im kleinsten Abstand der Spur. */
function companyWords(told: Told): string {
  const company = word(told, 'company')
  const gap = lengthToward(told, 'followGap_mm', 'nearest')
  if (gap === undefined || company === undefined) return ''
  return company === 'ahead' ? `, ${gap} hinter einem anderen` : `, ein anderer ${gap} dahinter`
}

/** Was in dieser Spur noch versucht wurde. */
function alsoWords(told: Told): string {
  const gap = lengthToward(told, 'followGap_mm', 'nearest')
  return `${gap === undefined ? '' : `, auch mit einem anderen ${gap} davor oder dahinter`}${flag(told, 'falls') === true ? ', auch wenn jemand stürzt und liegen bleibt' : ''}`
}

/** Wann die Steuerung überhaupt zu schließen beginnt, soweit es jemand gesagt hat. */
function startWords(told: Told): string {
  const after = number(told, 'commandedAfter_s')
  const warning = number(told, 'warning_s')
  const attempts = number(told, 'attempts')
  const time = (value: number) => figure({ value, unit: 's' }, told, 'smaller-is-worse')
  return [
    after !== undefined && after > 0 ? `, befohlen frühestens ${time(after)}, nachdem die Ausgänge freigeben` : '',
    warning === undefined ? '' : `, nach einer Warnung von ${time(warning)}`,
    attempts === undefined || attempts === 0 ? '' : `, zum ersten Mal oder noch einmal nach einer Umkehr`,
  ].join('')
}

/** Who comes, how fast, and what the output has done until then. */
function howItComes(told: Told): string {
  const body = worstBody(told)
  const part = word(told, 'part')
  const what = `${body === undefined ? 'einen Körper' : `den Körper ${body}`}${part === undefined ? '' : ` an „${plain(part)}“`}`
  const from = word(told, 'from')
  const side = from === 'a' || from === 'b' ? sideName(told.door, from, told) : undefined
  const pace = speed(told, 'body_mm_per_s', 'nearest')
  if (flag(told, 'stands') === true) return `${what}, der in ${laneWords(told)} steht${inState(told)}`
  return `${what} in ${laneWords(told)}${side ? `, von ${side} her` : ''}${pace ? ` mit ${pace}` : ''}${companyWords(told)}${inState(told)}`
}

/** Nobody is struck, and yet somebody runs into the leaf: no gap is left, and the other finding says so. */
function touchesNone({ finding }: Told): boolean {
  return finding.verdict !== 'not-applicable' && finding.measured?.value === 0
}

/** Where a leaf that turns stands then. */
function angleWords(told: Told): string | undefined {
  const angle = number(told, 'angle_deg')
  return angle === undefined ? undefined : figure({ value: angle, unit: 'deg' }, told, 'nearest')
}

/** Where what is seen depends on the leaf, only what is surely seen was counted on. */
function behindLeaf(undetermined: RuleWording['undetermined']): RuleWording['undetermined'] {
  const open: Say = (told) =>
    `Es ist nicht geklärt, wie der Flügel auf ${howItComes(told)} trifft: Unterwegs ändert der Flügel, was gesehen wird, und was sicher gesehen wird, wo immer er ist, klärt es nicht.`
  return { ...undetermined, 'not-proved': (told) => (flag(told, 'leafMatters') === true ? open(told) : undetermined['not-proved'](told)) }
}

const notStruck: Say = (told) => {
  const gap = against(told, 'smaller-is-worse')
  return sentenceOf([
    `kein Körper in ${laneWords(told)} wird vom schließenden Flügel getroffen${inState(told)}, wann immer er zu schließen beginnt${startWords(told)}${alsoWords(told)}`,
    gap &&
      !touchesNone(told) &&
      `; mindestens ${gap.measured} bleiben frei${flag(told, 'asWritten') === true ? ', alles wie eingegeben, Toleranzen nicht abgezogen' : ''}`,
  ])
}

const faster: Say = () =>
  'Den Körper früher sehen (ein Feld, das weiter hinausreicht), den Ausgang schneller machen, oder langsamer schließen und stärker bremsen.'

export const struckByLeaf: RuleWording = {
  name: 'Treffer durch den schließenden Flügel',
  pass: notStruck,
  fail: (told) => {
    const found = against(told, 'larger-is-worse')
    const leaf = speed(told, 'leaf_mm_per_s', 'larger-is-worse')
    const energy = number(told, 'energy_J')
    return sentenceOf([
      `der schließende Flügel trifft ${howItComes(told)}`,
      found && `: ${found.measured} zwischen beiden`,
      angleWords(told) && `, bei einem Flügelwinkel von ${angleWords(told)}`,
      leaf && `, der Flügel selbst bewegt sich mit ${leaf}`,
      energy !== undefined && ` und ${figure({ value: energy, unit: 'J' }, told, 'larger-is-worse')}`,
      flag(told, 'whileHeld') === true
        ? '. Er wird gesehen, aber die Steuerung versucht zu schließen, während der Ausgang es noch verbietet'
        : flag(told, 'isSeen') === true
          ? '. Er wird gesehen, aber zu spät'
          : '. Kein Ausgang hält dieses Schließen auf',
    ])
  },
  undetermined: behindLeaf(unsettled((told) => `der schließende Flügel in ${laneWords(told)} niemanden trifft`, notStruck)),
  notApplicable: {
    'no-subject': () => 'Keine Spur ist eingegeben; zeitlich wird nichts beurteilt.',
    'not-required-by-concept': () => 'Das Schutzkonzept verlangt nicht, dass der schließende Flügel niemanden trifft.',
  },
  mend: mendOr(faster),
}

const nobodyWalksInto: Say = (told) => `Nichts in ${laneWords(told)} läuft in einen ruhenden oder öffnenden Flügel${inState(told)}.`

export const walkedInto: RuleWording = {
  name: 'Flügel bei der Ankunft im Weg',
  pass: nobodyWalksInto,
  fail: (told) => {
    const found = against(told, 'larger-is-worse')
    const way = lengthToward(told, 'way_mm', 'smaller-is-worse')
    return sentenceOf([
      `der Flügel ist nicht aus dem Weg für ${howItComes(told)}`,
      way && `: Seine Kante hat nur noch ${way}${angleWords(told) ? ` (${angleWords(told)})` : ''} bis zum Schluss`,
      found && `, und beide treffen sich mit ${found.measured}`,
    ])
  },
  undetermined: behindLeaf(
    unsettled((told) => `der Flügel für alles aus dem Weg ist, was in ${laneWords(told)} verkehrt`, nobodyWalksInto),
  ),
  notApplicable: {
    'no-subject': () => 'Keine Spur ist eingegeben; zeitlich wird nichts beurteilt.',
    'not-required-by-concept': (told) =>
      `In ${laneWords(told)} gehen nur Personen: Dass sie einen ruhenden Flügel berühren, wird nicht beurteilt.`,
  },
  mend: mendOr(() => 'Das Fahrzeug früher sehen, schneller öffnen, die Fahrzeuge verlangsamen oder höher öffnen.'),
}

/** Was unter dem Flügel durchfährt, während nichts gesehen wird. */
function gapWords(told: Told): string {
  const part = word(told, 'part')
  const body = worstBody(told)
  const what = body === undefined ? 'ein Körper' : `der Körper ${body}`
  const from = word(told, 'from')
  const side = from === 'a' || from === 'b' ? sideName(told.door, from, told) : undefined
  const at = part === undefined ? '' : ` an „${plain(part)}“`
  return `${what}${at} in ${laneWords(told)}${side ? `, von ${side} her` : ''}${inState(told)}`
}

const seenThrough: Say = (told) => {
  const gap = against(told, 'larger-is-worse')
  const length = lengthToward(told, 'gap_mm', 'larger-is-worse')
  if (gap === undefined || length === undefined)
    return `Fahrzeuge in ${laneWords(told)} werden vom ersten bis zum letzten Teil gesehen${inState(told)}.`
  return sentenceOf([
    `${gapWords(told)} ist am längsten für ${gap.measured} nicht zu sehen, bei langsamster Fahrt, und ein Ausgang hält ${gap.limit}`,
  ])
}

export const passageGap: RuleWording = {
  name: 'Lücke in der Sicht auf Durchfahrende',
  pass: seenThrough,
  fail: (told) => {
    const gap = against(told, 'larger-is-worse')
    const length = lengthToward(told, 'gap_mm', 'larger-is-worse')
    return sentenceOf([
      `unter dem Flügel ist ${gapWords(told)} nicht zu sehen`,
      length && `: auf ${length} seines Weges`,
      gap && `, bei langsamster Fahrt für ${gap.measured}, und Ausgänge halten nur ${gap.limit}`,
      '. Der Flügel kann auf ihn zu schließen beginnen',
    ])
  },
  undetermined: unsettled(
    (told) => `Fahrzeuge in ${laneWords(told)} vom ersten bis zum letzten Teil gesehen oder gehalten werden`,
    seenThrough,
  ),
  notApplicable: {
    'no-subject': () => 'Keine Spur ist eingegeben; zeitlich wird nichts beurteilt.',
    'not-required-by-concept': (told) =>
      `In ${laneWords(told)} gehen nur Personen: Lücken zwischen den Teilen eines Fahrzeugs werden nicht beurteilt.`,
  },
  mend: mendOr(
    () =>
      'Auch den dünnen Teil sehen (tiefere Strahlen, ein Feld, das weiter in den Weg reicht) oder den Ausgang länger halten lassen, als die Lücke dauert.',
  ),
}
