/** One option of a command. `value` names what follows it; an option without one is a switch. */
export interface Option {
  readonly name: string
  readonly short?: string
  readonly value?: string
  /** The only values that it takes, for help, completion and repair of a slip. */
  readonly choices?: readonly string[]
  readonly means: string
}

export interface Command {
  readonly name: string
  /** What follows the name, as the help prints it. */
  readonly takes: string
  /** Fewest and most words that follow; `Infinity` where any number may. */
  readonly words: readonly [fewest: number, most: number]
  /** Fixed words to choose from, where the command takes one of a few. */
  readonly choices?: readonly string[]
  readonly summary: string
  /** Sentences of one paragraph. */
  readonly tells: readonly string[]
  readonly options: readonly Option[]
  readonly examples: readonly (readonly [command: string, does: string])[]
}

/** Options that every command understands, before or after its name. */
export const everywhere: readonly Option[] = [
  {
    name: 'units',
    value: 'UNITS',
    choices: ['mm', 'ft-in'],
    means: 'how lengths are said: mm (and m), or feet, inches and fractions (default mm)',
  },
  { name: 'language', value: 'LANGUAGE', choices: ['en', 'de'], means: 'of findings and drawings: en or de (default en)' },
  { name: 'ascii', means: 'no characters beyond ASCII' },
  { name: 'width', value: 'COLUMNS', means: 'how wide the text may run (default: the terminal, or 80)' },
  { name: 'no-color', means: 'no bold, no dim; so does NO_COLOR=1, and FORCE_COLOR=1 keeps them in a pipe' },
  { name: 'help', short: 'h', means: 'this help; after a command, the help of that command' },
  { name: 'version', means: 'the version, and nothing else' },
]

const force: Option = { name: 'force', means: 'replace a file that is already there' }

export const commands: readonly Command[] = [
  {
    name: 'judge',
    takes: 'FILE...',
    words: [1, Infinity],
    summary: 'say where a body can stand or lie unseen, and why',
    tells: [
      'Judges each door file and prints its findings, worst first, with a small plan of the doorway.',
      'A dash (-) reads one door file from standard input. Many files are judged on all cores;',
      'results come in the order of the files, and the progress goes to standard error.',
      'Each judgement has a result hash (SHA-256): the same door gives the same hash on every machine.',
    ],
    options: [
      { name: 'json', means: 'everything as one JSON document, written when all files are judged' },
      { name: 'jsonl', means: 'one JSON line per file, each as soon as it and those before it are judged' },
      { name: 'sarif', means: 'a SARIF 2.1.0 log, for code scanning in pipelines' },
      { name: 'junit', means: 'JUnit XML, for test reports in pipelines' },
      { name: 'brief', means: 'one line per file instead of plan and findings' },
      { name: 'workers', value: 'N', means: 'threads for many files (default: one per core; 1 uses none)' },
    ],
    examples: [
      ['sillsight judge DEMO/DOOR', 'findings and a plan of one door'],
      ['sillsight judge --brief doors/*.json', 'a whole fleet, one line per door'],
      ['sillsight judge --jsonl doors/*.json > findings.jsonl', 'the same for a program to read'],
      ['sillsight judge --units ft-in - < my-door.json', 'standard input, lengths in feet and inches'],
    ],
  },
  {
    name: 'why',
    takes: 'FILE FINDING',
    words: [1, 2],
    summary: 'show the arithmetic behind one finding, with its sources',
    tells: [
      'Judges the door file and explains one finding step by step: each figure, what it was computed from,',
      'and the source of every limit. `judge` prints the ids of findings; a part that only one has is enough,',
      'such as the letter of a pocket. Without an id, `why` lists all.',
    ],
    options: [],
    examples: [['sillsight why DEMO/DOOR FINDING', 'the steps of that finding']],
  },
  {
    name: 'mend',
    takes: 'FILE [FINDING]',
    words: [1, 2],
    summary: 'search for repairs of what fails, each judged against all findings',
    tells: [
      'Moves, turns and sets sensors and fields in steps that hands can make (5 mm, half a degree), adds a sensor of the same kind,',
      'takes away what hides a body, and prints what puts a finding in order without making any other worse.',
      'Each repair that is offered was judged by every rule, exactly; what was not offered says why. Without an id, all that fails.',
      'With --take the changed door file goes to standard output, or with --out to a file; the file itself is left alone.',
      'Exit 2: for some finding nothing was found.',
    ],
    options: [
      { name: 'json', means: 'repairs with their steps and the edits of the door file, as JSON' },
      { name: 'take', value: 'N', means: 'write the door file with repair N of the finding' },
      { name: 'out', short: 'o', value: 'FILE', means: 'where --take writes; - prints it' },
      force,
    ],
    examples: [
      ['sillsight mend DEMO/DOOR', 'repairs of everything that fails'],
      ['sillsight mend DEMO/DOOR FINDING --take 1 --out mended.json', 'a door file with the first of them'],
    ],
  },
  {
    name: 'connect',
    takes: 'FILE',
    words: [1, 1],
    summary: 'search for the connections of sensors and control that no single fault defeats',
    tells: [
      'Takes the parts that the door file has under `wiring`, forgets the cables, and tries the ways to connect them: sides of contacts,',
      'feeds, lines in series or side by side, the test line. Best first: fewest ways to fail that stay hidden, then those that only a test finds,',
      'then those that stop the door, then cores. Says what stays hidden until a test by hand, and how the wiring of the file compares.',
      'The search is bounded; it says what it left out. Exit 2: something stays hidden whatever the connection.',
    ],
    options: [
      { name: 'json', means: 'the connections as JSON' },
      { name: 'most', value: 'N', means: 'how many connections to print (default 3)' },
      { name: 'second', means: 'also try every second fault on top of each that nobody notices, in the wiring as it is' },
    ],
    examples: [['sillsight connect box-hatch.json', 'connections for the sensors of that door']],
  },
  {
    name: 'trace',
    takes: 'FILE [READING...]',
    words: [1, Infinity],
    summary: 'find the fault behind what a meter shows, and what to measure next',
    tells: [
      'A reading is TERMINAL,TERMINAL=VOLT, or sensor:ID=STATE, or input:ID=MEANING, as they are named under `wiring`;',
      'after it @SENSOR while somebody stands before that sensor, or @asking while the control tests. Without readings it names the first one to take.',
      'Lists the single faults that explain them all, and the voltage that tells most of those apart. The meter is taken to have 10 megohm.',
    ],
    options: [
      { name: 'json', means: 'suspects and next measurement as JSON' },
      { name: 'off', value: 'VOLT', means: 'the meter may be off by so much (default 0.1)' },
      { name: 'off-percent', value: 'PERCENT', means: 'and by so much of what it shows (default 1)' },
    ],
    examples: [['sillsight trace box-hatch.json control.S1,control.0V=0', 'the suspects after one reading']],
  },
  {
    name: 'draw',
    takes: 'FILE',
    words: [1, 1],
    summary: 'draw plan and elevation to scale, or a finding over time, as SVG',
    tells: [
      'Judges the door file and draws it: beams, blind pockets by hatch, the worst case as a body, dimensions.',
      'With --view wiring the wiring: its diagram, what goes where, and what every single fault of it does.',
      'With --view timeline one finding in time: edge, body, sight and outputs over one axis, and the body where it is met.',
      'The drawing goes to standard output, or with --out to a file, which is written whole or not at all.',
    ],
    options: [
      { name: 'out', short: 'o', value: 'FILE', means: 'write the drawing here; - prints it even on a terminal' },
      {
        name: 'view',
        value: 'VIEW',
        choices: ['sheet', 'timeline', 'wiring'],
        means: 'sheet: plan and elevation (default); timeline: one finding over time; wiring: diagram, terminals and faults',
      },
      { name: 'finding', value: 'ID', means: 'the finding that the timeline shows (default: the worst one in time)' },
      { name: 'scale', value: '1:N', means: 'scale of the drawing, as 1:25 (default: the largest that fits on A4 or A3)' },
      { name: 'state', value: 'STATE', means: 'the state of the door to draw (default: the one with most unseen)' },
      { name: 'zone', value: 'ZONE', means: 'the zone whose unseen places are drawn (default: the one with most unseen)' },
      force,
    ],
    examples: [
      ['sillsight draw DEMO/DOOR --out door.svg', 'a drawing that prints to scale'],
      ['sillsight draw DEMO/DOOR --scale 1:50 > door.svg', 'at another scale, through a pipe'],
      ['sillsight draw box-hatch.json --view timeline --out time.svg', 'the worst that can happen in a lane, over time'],
      ['sillsight draw box-hatch.json --view wiring --out wiring.svg', 'what is connected to what, and every single fault of it'],
    ],
  },
  {
    name: 'evidence',
    takes: 'FILE',
    words: [1, 1],
    summary: 'write what lets another program re-check what was judged',
    tells: [
      'Proves tile by tile, for every placement and over the tolerances that the door file states, where bodies are seen,',
      'and shows for each blind pocket a body that goes unseen with the rule that each beam fails. For each lane in which',
      'nobody is struck by the closing leaf it shows that too, for every phase, pace, direction and place to stop, and of the',
      'wiring what every single fault does, with the voltages of all terminals.',
      'The result goes to standard output, or with --out to a file; a name that ends in .gz is compressed.',
    ],
    options: [{ name: 'out', short: 'o', value: 'FILE', means: 'write the evidence here' }, force],
    examples: [['sillsight evidence DEMO/DOOR --out evidence.json.gz', 'evidence to hand over with the door file']],
  },
  {
    name: 'verify',
    takes: 'DOOR EVIDENCE',
    words: [2, 2],
    summary: 're-check evidence against its door file',
    tells: [
      'Checks every tile, worst case, passage and fault of the wiring in the evidence with a verifier that shares no code with what wrote it,',
      'from the door file alone. Exit 0: all of it is shown, and everything in it is in order; 1: somebody is struck, or a fault of the wiring',
      'hides a body; 2: something is left open, cannot be shown, or nothing is said of it; 3: the evidence does not hold.',
    ],
    options: [{ name: 'json', means: 'what is proved, as JSON' }],
    examples: [['sillsight verify DEMO/DOOR evidence.json.gz', 'what holds, zone by zone']],
  },
  {
    name: 'new',
    takes: '[FILE]',
    words: [0, 1],
    summary: 'make a first door file by answering six questions',
    tells: [
      'Asks for width, height, side, sensor, mounting height and offset, in your own units:',
      '2400, 2.4 m, 94 1/2 in, 7\' 10 1/2". Enter alone takes the default that the question names.',
      'Writes FILE (default door.json; - prints it) and never replaces one. Answers can also be piped in, one per line.',
    ],
    options: [],
    examples: [
      ['sillsight new my-door.json', 'asks, then writes the file'],
      ['sillsight judge my-door.json', 'the first verdict'],
    ],
  },
  {
    name: 'migrate',
    takes: 'FILE',
    words: [1, 1],
    summary: 'bring a door file of an older version up to date',
    tells: [
      'Prints the file in the current version. With --write it replaces the file, whole or not at all,',
      'and keeps the old one beside it with `.before-migration` added to its name.',
    ],
    options: [{ name: 'write', means: 'replace the file and keep a copy of the old one' }],
    examples: [['sillsight migrate old-door.json --write', 'the file itself becomes current']],
  },
  {
    name: 'schema',
    takes: '',
    words: [0, 0],
    summary: 'print the JSON Schema of the door file',
    tells: ['Prints the JSON Schema (2020-12) that editors and programs can check door files against.'],
    options: [],
    examples: [['sillsight schema > door.schema.json', 'then point your editor at it']],
  },
  {
    name: 'demo',
    takes: '',
    words: [0, 0],
    summary: 'judge the demonstration doors; writes drawings and JSON',
    tells: [
      'Judges the doors that come with the program, prints their findings, and writes for each a drawing,',
      'the result as JSON and a copy of the door file to play with. A copy that you changed is left alone.',
      'Places, people and sensors of these doors are invented. Ends with exit 0 whatever the verdicts.',
    ],
    options: [{ name: 'out', short: 'o', value: 'DIR', means: 'where to write (default sillsight-demo)' }],
    examples: [['sillsight demo --out try-it', 'everything to look at in one folder']],
  },
  {
    name: 'completion',
    takes: 'SHELL',
    words: [1, 1],
    choices: ['bash', 'zsh', 'fish'],
    summary: 'print a completion script for bash, zsh or fish',
    tells: ['Prints a script that completes commands, options, their values and file names.'],
    options: [],
    examples: [
      ['source <(sillsight completion bash)', 'for this shell; add the line to ~/.bashrc to keep it'],
      ['sillsight completion zsh > ~/.zfunc/_sillsight', 'for zsh, in a folder of your fpath'],
      ['sillsight completion fish > ~/.config/fish/completions/sillsight.fish', 'for fish'],
    ],
  },
]
