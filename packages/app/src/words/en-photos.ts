/** What is said of photos, their pins and where they were taken. */
export const photos = {
  title: 'Photos',
  none: 'No photo yet. Type plates, the terminal strip, what stands in the way.',
  add: 'Add photos',
  caption: 'What it shows',
  refused: {
    'no-picture': 'This is no JPEG, PNG or WebP picture. Nothing was added.',
    'too-large': 'This picture is too large to be opened here. Nothing was added.',
    'not-decoded': 'This picture could not be opened. Nothing was added.',
  },
  keepWhere: 'Keep where it was taken',
  keepWhereNote: 'As words beside the photo and in the history of the door. The picture itself never holds it.',
  whereUnknown: 'This picture does not say where it was taken; some phones take that out before they hand a picture over.',
  takenAt: (place: string) => `Taken at ${place}`,
  forgetWhere: 'Do not show where it was taken',
  open: (name: string, pins: number) => `${name}: ${pins === 0 ? 'set pins' : pins === 1 ? '1 pin' : `${pins} pins`}`,
  setPin: 'Touch a place to set a pin; Enter sets one in the middle',
  pinsNote: 'Touch a place on the picture to set a pin. It is moved by dragging or with the arrow keys.',
  noPins: 'No pin yet.',
  enoughPins: 'No more pins fit on one photo.',
  pin: (number: number, text: string) =>
    `Pin ${number}${text === '' ? '' : `: ${text}`}. Arrow keys move it, with Shift by little; Delete takes it away.`,
  pinText: (number: number) => `What is at pin ${number}`,
  pinMissing: 'what is there',
  removePin: (number: number) => `Remove pin ${number}`,
  /** Places in the document, as history names them. */
  places: { photos: 'a photo', 'photos/pins': 'a pin on a photo', 'photos/takenWhere': 'where a photo was taken' } as Readonly<
    Record<string, string>
  >,
}

/** What is said while the device serves as a spirit level. */
export const level = {
  open: 'Spirit level',
  back: 'Back to the keys',
  how: 'Stand the device on an edge, screen toward you, and hold the edge against the surface.',
  towards: 'Its right end points',
  ways: { higher: 'right end higher', lower: 'right end lower', level: 'level' },
  waiting: 'Waiting for a first reading.',
  none: 'No reading comes: this device has no such sensor, or the browser keeps it back.',
  denied: 'The browser was not allowed to read the sensor. Allow it for this site, then open this again.',
  flat: 'It lies flat. Stand it on an edge.',
  unsteady: 'Hold it still.',
  outOfReach: 'No value follows from this angle.',
  steady: (spread: string) => `Still, to within ${spread}.`,
  take: (value: string) => `Take ${value}`,
  notCalibrated: 'Not calibrated: the error of the device itself is in this figure.',
  calibrated: (error: string, day: string) => `Calibrated on ${day}; its own error of ${error} is taken off.`,
  calibrate: 'Calibrate',
  calibrateAgain: 'Calibrate again',
  first: 'On any firm surface: mark where it stands, then keep this reading.',
  keepFirst: 'Keep the first',
  second: 'Turn it round by 180 degrees on the same edge and the same mark, so that its ends change places.',
  keepSecond: 'Keep the second',
  otherEdge: 'It stands on another edge than before.',
  tooFar: (error: string) => `That would be an error of ${error}, more than a device has. Was it the same place and edge? Begin again.`,
  cancel: 'Leave it',
  /** Beside the value in the pad and in history. */
  said: { calibrated: 'spirit level, calibrated', notCalibrated: 'spirit level, not calibrated' },
  ends: {
    right: (side: string) => `to the right, seen from ${side}`,
    left: (side: string) => `to the left, seen from ${side}`,
    toward: (side: string) => `out, toward ${side}`,
    fromWall: 'back, away from there',
    faced: 'out, where the sensor looks',
    sensorRight: 'to the right, as the sensor looks',
    sensorLeft: 'to the left, as the sensor looks',
  },
  ofSensor: 'The lean of the housing. The field leans as much only where its sheet shows them parallel.',
}
