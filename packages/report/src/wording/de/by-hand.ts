import { plain } from '../plain.ts'

const PARTS: Readonly<Record<string, string>> = { supply: 'Versorgung', control: 'Testausgang der Steuerung' }
const KINDS: Readonly<Record<string, string>> = { cable: 'Kabel', resistor: 'Widerstand', sensor: 'Sensor' }

/** Was fehlt, um zu sagen, wie oft von Hand zu testen ist. */
export function missingByHand(missing: readonly string[]): string {
  const parts = missing
    .filter((each) => each !== 'share')
    .map((each) => PARTS[each] ?? plain(each.replace(/^\w+/, (kind) => KINDS[kind] ?? kind)))
  return [
    ...(parts.length > 0 ? [`Jahre bis zum gefährlichen Ausfall von ${parts.join(', ')}`] : []),
    ...(missing.includes('share') ? ['der Anteil der Zeit, für den ein Fehler verborgen bleiben darf'] : []),
  ].join('; ')
}

export function oftenByHand(days: string, percent: string, remembered: boolean): string {
  const said = `mindestens alle ${days} von Hand testen: dann besteht ein solcher Fehler im Mittel für höchstens ${percent} der Zeit`
  return remembered ? `${said} (nach Angaben, die nur erinnert sind)` : said
}
