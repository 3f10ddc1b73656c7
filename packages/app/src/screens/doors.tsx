import { useLocation } from 'wouter'
import { demoDoor, demoDoorNames } from '../demo-doors.ts'
import { doors } from '../store/doors.ts'
import { useWords } from '../words/words.ts'

/** The doors of this device, and the invented ones to look at. */
export function DoorsScreen() {
  const words = useWords()
  const [, go] = useLocation()
  const openDemo = async (name: string) => {
    const door = await doors.make(await demoDoor(name), { deed: 'imported', name })
    go(`/door/${door.id}/judge`)
  }
  return (
    <main className="doors">
      <h1>{words.doors.title}</h1>
      <p>{words.doors.none}</p>
      <h2>{words.doors.demo}</h2>
      <ul className="door-list">
        {demoDoorNames.map((name) => (
          <li key={name}>
            <button type="button" onClick={() => openDemo(name)}>
              {name}
            </button>
          </li>
        ))}
      </ul>
    </main>
  )
}
