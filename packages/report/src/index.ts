export {
  connectionsText,
  connectionWords,
  diagnosisText,
  faultName,
  scoreWords,
  secondFaultsText,
  standingWords,
} from './connecting-text.ts'
export { type BodySolid, solidsOfBody } from './drawing/body-solids.ts'
export { type Box, DASHES_MM, type Dash, type Fill, type Layer, type Mark, PENS_MM, type Spot } from './drawing/model.ts'
export { bodiesToDraw, heightOf, isFitting, sensorSpots } from './drawing/scene.ts'
export { drawOnScreen, type KeptRoom, type ProjectionName, type ScreenDrawing, type ScreenOptions } from './drawing/screen.ts'
export { sheetSvg } from './drawing/sheet.ts'
export { type DrawnTimeline, drawTimeline, timelineHeight_mm } from './drawing/timeline.ts'
export { bodyAt, type TimedFinding, timedFindings, timelineSvg } from './drawing/timeline-sheet.ts'
export { onSheet, type Place, type View, type Window } from './drawing/view.ts'
export { drawWiring } from './drawing/wiring-diagram.ts'
export type { DrawnWiring } from './drawing/wiring-marks.ts'
export { leastNarrowWidth_mm } from './drawing/wiring-narrow.ts'
export { wiringSvg } from './drawing/wiring-sheet.ts'
export { findingsText } from './findings-text.ts'
export { junit } from './junit.ts'
export type { FileResult, JudgedFile, Paint, Palette, PlanOptions, RefusedFile, SheetOptions, TextOptions, Units } from './options.ts'
export { plainPalette } from './options.ts'
export { sarif } from './sarif.ts'
export { shownOf } from './shown.ts'
export { terminalPlan } from './terminal-plan.ts'
export { whyText } from './why-text.ts'
export { postureWords, sizeWords } from './wording/bodies.ts'
export { english } from './wording/english.ts'
export { figure } from './wording/figures.ts'
export { german } from './wording/german.ts'
export { type FindingGroup, grouped } from './wording/groups.ts'
export { instantWords } from './wording/instants.ts'
export type { Language, Reader } from './wording/language.ts'
export { needWords } from './wording/needs.ts'
export { called, capital, wrapped } from './wording/plain.ts'
export { repairOutcome, repairWords } from './wording/repairs.ts'
export { mend, ruleName, sentence, sentenceOfPass, waitingWords } from './wording/sentence.ts'
export { inventedNote } from './wording/sheet-words.ts'
export { tally } from './wording/tally.ts'
