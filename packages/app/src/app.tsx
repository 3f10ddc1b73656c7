import { Suspense, useEffect } from 'react'
import { Route, Router, Switch } from 'wouter'
import { useHashLocation } from 'wouter/use-hash-location'
import { isPart } from './parts.ts'
import { usePreferences } from './preferences.ts'
import { DoorScreen, NewDoorScreen } from './screens/coming.tsx'
import { DoorsScreen } from './screens/doors.tsx'
import { SpokenContext, useSpoken, useWords } from './words/words.ts'

/** Addresses behind a hash: a static server needs no rules for them, and they work from a file on a stick. */
export function App() {
  return (
    <Suspense fallback={null}>
      <Spoken />
    </Suspense>
  )
}

function Spoken() {
  const { theme } = usePreferences()
  const spoken = useSpoken()
  const { tag, direction } = spoken.words
  useEffect(() => {
    document.documentElement.dataset['theme'] = theme
  }, [theme])
  useEffect(() => {
    document.documentElement.lang = tag
    document.documentElement.dir = direction
  }, [tag, direction])
  return (
    <SpokenContext value={spoken}>
      <Router hook={useHashLocation}>
        <Suspense fallback={<Waiting />}>
          <Switch>
            <Route path="/door/:id/:part">{({ id, part }) => <DoorScreen id={id} part={isPart(part) ? part : 'judge'} />}</Route>
            <Route path="/new">
              <NewDoorScreen />
            </Route>
            <Route>
              <DoorsScreen />
            </Route>
          </Switch>
        </Suspense>
      </Router>
    </SpokenContext>
  )
}

function Waiting() {
  return <p className="starting">{useWords().loading}</p>
}
