/** What is said of the building around the opening. */
export const building = {
  title: 'The building',
  figures: {
    beyondZero_mm: 'how far it runs on past the end where x begins',
    beyondWidth_mm: 'how far it runs on past the other end',
    yMin_mm: 'face toward side B, counted up toward side A',
    yMax_mm: 'face toward side A',
    top_mm: 'its top',
    width_mm: 'how far it reaches outward',
    from_mm: 'underside',
    to_mm: 'top',
  },
  parts: {
    walls: {
      name: 'Wall',
      words:
        'The wall runs on {beyondZero_mm} past the one end and {beyondWidth_mm} past the other, lies between {yMin_mm} and {yMax_mm} out, and is {top_mm} high.',
      unknown: 'Nobody has described the wall around the opening. None is assumed.',
      none: 'There is no wall: the opening stands free.',
      there: 'There is a wall',
      notThere: 'No wall',
    },
    lintel: {
      name: 'Lintel',
      words: 'The lintel lies between {yMin_mm} and {yMax_mm} out, and its top is {top_mm} up.',
      unknown: 'The lintel is what the wall makes it.',
      none: 'Nothing spans the opening.',
      there: 'A lintel of its own',
      notThere: 'No lintel',
    },
    jambs: {
      name: 'Jambs',
      words: 'The jambs reach {width_mm} outward and lie between {yMin_mm} and {yMax_mm} out.',
      unknown: 'No jambs that stand out of the wall are described.',
      none: 'No jambs stand out of the wall.',
      there: 'Describe jambs',
      notThere: 'No jambs',
    },
    guides: {
      name: 'Guides',
      words: 'The guides reach {width_mm} outward and lie between {yMin_mm} and {yMax_mm} out.',
      unknown: 'No guides of the leaf are described.',
      none: 'There are no guides.',
      there: 'Describe guides',
      notThere: 'No guides',
    },
    hood: {
      name: 'Hood',
      words: 'The hood lies between {yMin_mm} and {yMax_mm} out, from {from_mm} up to {to_mm}.',
      unknown: 'No hood above the opening is described.',
      none: 'There is no hood.',
      there: 'Describe a hood',
      notThere: 'No hood',
    },
  },
}

/** What is said of those who pass. */
export const lanes = {
  title: 'Who passes where',
  none: 'No lane is listed. With lanes it can be judged whether the leaf meets anybody.',
  newLane: 'lane',
  words: 'Lane {name}: {who} pass between {xMin} and {xMax} along, {ways}, at {slowest} to {fastest}.',
  askWords: 'The lane runs between {xMin_mm} and {xMax_mm} along the leaf.',
  add: 'A lane',
  who: 'Who passes in it',
  whoNames: { people: 'people', vehicles: 'vehicles', both: 'people and vehicles' },
  xMin: 'where the lane begins',
  xMax: 'where the lane ends',
  ways: 'Which way',
  bothWays: 'both ways',
  from: (side: string): string => `only from ${side}`,
  slowest: 'slowest pace',
  fastest: 'fastest pace',
}
