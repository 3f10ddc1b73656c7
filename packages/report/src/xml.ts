import { plain } from './wording/plain.ts'

const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' }

/** A text as the content of an XML element or of an attribute. Characters that XML 1.0 forbids are gone. */
export function asXmlText(text: string): string {
  return plain(text).replace(/[&<>"']/g, (sign) => ENTITIES[sign] ?? '')
}
