import { BOUNDS } from '../bounds.ts'
import { passingBodies } from '../libraries/passing-bodies.ts'
import { parseDocument } from '../parse.ts'
import { doorFileSchema, libraryFileSchema } from '../schema/door-file.ts'
import type { FieldsPart, Part } from '../schema/schema.ts'
import { bare } from '../schema/shape.ts'
import { serialise } from '../serialise.ts'

/** The page `docs/door-file.md`, written from the schema that checks the files, so that neither can say what the other does not do. */
export function doorFilePage(): string {
  return [opening(), ...chapters(doorFileSchema, ''), libraries(), ...chapters(libraryFileSchema, 'library'), bounds()]
    .join('\n\n')
    .concat('\n')
}

const SIX_VALUES = {
  sillsight: 1,
  survey: { opening: { width_mm: 3460, height_mm: 4180 } },
  sensors: [{ use: 'demo-header-scanner', side: 'a', mountingHeight_mm: 4070, offset_mm: 150 }],
}

function opening(): string {
  const parsed = parseDocument(JSON.stringify(SIX_VALUES))
  if (!parsed.ok) throw new Error('the example of the page must be a door file')
  return `# The door file, version 1

<!-- Written by \`npm run docs -w packages/document\` from the schema. Change the schema, not this page. -->

Everything about one door is one JSON file. Lengths are in mm, angles in degrees, slopes in percent, and each name ends in its unit. The doorway
frame is that of [method.md](method.md), section 1: x along the leaf from 0 to the clear width, y = 0 in the mid-plane of the leaf and positive
toward side A, z up from the finished floor.

Six values are enough for a first verdict: width, height, side, sensor, mounting height and offset from the leaf.

\`\`\`json
${serialise(parsed.document).trimEnd()}
\`\`\`

**What is missing.** A default stands in where a table below says so; each one used is listed with the findings, and nothing that rests on one
passes. Where no default makes sense, the file is refused and the missing piece is asked for by its name.

**What is unknown.** A field that this page does not know stays in the file when it is written again, and is reported; a name that is nearly a known
one is questioned. \`drive\`, \`surroundings\` and \`records\` are reserved and carried untouched.

**What is refused.** A file is refused as a whole, with every issue at its place, what was expected there and what was found:
\`survey/opening/width_mm: expected a number above 0, got -3\`. Besides the tables that goes for ids and JSON names that stand twice, ids that nothing has, a
minimum that is not below its maximum, a sensor inside of an obstacle or under the floor, a zone that no sensor could reach, a value that the kind of
device does not have, and a value that replaces a library's without a source of its own.

**Versions.** \`sillsight\` is the version. Older files are read through numbered migrations, newer ones are refused and left as they are.

**Obstacles that the survey implies** carry the ids \`wall-at-zero\`, \`wall-at-width\`, \`lintel\`, \`jamb-at-zero\`, \`jamb-at-width\`, \`guide-at-zero\`, \`guide-at-width\`, \`hood\`
and \`parked-leaf\`; a state can remove them by these.`
}

function libraries(): string {
  return `# Libraries

A library holds sensors and bodies of your own, in a file beside the door file or below its folder. The door file names it with the SHA-256 of its text; a
library that has changed since is refused until somebody pins the new content. In \`use\` its ids stand beside those that ship with the program.

**Bodies that ship with the program** for lanes, besides \`presence-reference-body\`. Their sizes are invented, like ones that are common in practice (no
source); measure what passes your door.

${passingBodies()
  .map(({ id, name }) => `- \`${id}\`: ${name}`)
  .join('\n')}`
}

function bounds(): string {
  const rows = Object.entries(BOUNDS).map(([name, value]) => `| \`${name}\` | ${value} |`)
  return `# Bounds

So that no file, by accident or on purpose, keeps a program busy without end.

| bound | at most |
| --- | --- |
${rows.join('\n')}`
}

/** One chapter for each object, in the order in which the fields name them. */
function chapters(schema: Part, path: string): readonly string[] {
  const part = bare(schema)
  switch (part.kind) {
    case 'fields':
      return chapter(part, path)
    case 'list':
      return chapters(part.item, `${path}/N`)
    case 'entries':
      return part.entry.kind === 'fields' && !isSources(path) ? chapters(part.entry, `${path}/ID`) : []
    case 'either': {
      const objects = part.options.filter((option) => option.kind === 'fields')
      return objects.flatMap((option) => chapters(option, objects.length > 1 ? `${path} (${wordOf(option)})` : path))
    }
    default:
      return []
  }
}

function chapter(part: FieldsPart, path: string): readonly string[] {
  const fields = Object.entries(part.fields)
  const title = `${'#'.repeat(Math.min(4, path.split('/').length + 1))} ${path === '' ? 'The file' : path}`
  const table = [
    '| field | | what stands there | meaning |',
    '| --- | --- | --- | --- |',
    ...fields.map(([name, field]) => row(name, field)),
  ]
  const inner = fields.flatMap(([name, field]) => chapters(field, path === '' ? name : `${path}/${name}`))
  return [[title, '', part.means, '', ...table].join('\n'), ...inner]
}

function row(name: string, field: Part): string {
  const part = bare(field)
  const expected = part.kind === 'anything' ? 'anything' : part.expected
  return `| \`${name}\` | ${field.kind === 'optional' ? '' : 'needed'} | ${cell(expected)} | ${cell(part.means)} |`
}

/** The word that tells this alternative from the others. */
function wordOf({ fields: { shape } }: FieldsPart): string {
  return shape?.kind === 'choice' ? String(shape.values[0]) : 'object'
}

/** Sources have one shape everywhere; their chapter under `source` is enough. */
function isSources(path: string): boolean {
  return path.endsWith('/sources')
}

function cell(text: string): string {
  return text.replaceAll('|', '\\|')
}
