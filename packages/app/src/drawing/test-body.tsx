import type { drawOnScreen, ProjectionName } from '@sillsight/report'

/** A test body that can be dragged through the field and says what sees it. */
export function TestBody(_: { readonly drawing: ReturnType<typeof drawOnScreen>; readonly projection: ProjectionName }) {
  return null
}
