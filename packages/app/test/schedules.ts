import type { Browser, Page } from 'playwright-core'
import type { DoorId, Doors, OpenDoor } from '../src/store/contract.ts'
import { DOOR, opened, type Reach } from './store.ts'

/** What became of one schedule: nothing is lost and all show the same, or it says what went wrong. */
export interface Outcome {
  readonly seed: number
  /** Everybody shows the same door at the end, and lists it by what is in it. */
  readonly same: boolean
  /** Changes that somebody had made and that somebody, or a database opened anew, does not know at the end. */
  readonly lost: number
  readonly conflicts: number
}

/** How many schedules run side by side in a page: a merge mostly waits for the worker that looks at foreign changes first. */
const AT_ONCE = 4

/**
 * Two tabs of one device and a second device, which edit, take back, choose and exchange files in a seeded order. All in one page, whose
 * tabs are two stores on one database; `tabSchedules` has real ones.
 */
export function schedules(page: Page, seeds: readonly number[]): Promise<Outcome[]> {
  return page.evaluate(
    async ({ seeds, file, atOnce }) => {
      const { openDoors } = globalThis as unknown as Reach
      const [first, second] = [`devices-${seeds[0]}-a`, `devices-${seeds[0]}-b`]
      const stores = [openDoors(first), openDoors(first), openDoors(second)] as const
      const results: Outcome[] = []
      const queue = [...seeds]
      const sorted = (value: unknown): unknown =>
        typeof value === 'object' && value !== null && !Array.isArray(value)
          ? Object.entries(value)
              .sort()
              .map(([key, each]) => [key, sorted(each)])
          : value
      const shown = (door: OpenDoor) => JSON.stringify([sorted(door.snapshot().file), sorted(door.snapshot().begun)])
      const missing = (door: OpenDoor, made: ReadonlySet<string>) => {
        const known = new Set<string>(door.history().map(({ moment }) => moment))
        return [...made].filter((moment) => !known.has(moment)).length
      }
      const opening = async (doors: Doors, id: DoorId): Promise<OpenDoor> => {
        for (const until = Date.now() + 10_000; Date.now() < until; ) {
          const door = await doors.open(id)
          if (door) return door
          await new Promise((done) => setTimeout(done, 2))
        }
        throw new Error(`a door must be there for everybody, got none for ${id}`)
      }

      const one = async (seed: number): Promise<Outcome> => {
        let state = seed * 2_654_435_761
        const dice = (below: number) => {
          state = (Math.imul(state ^ (state >>> 15), 2_246_822_519) + 1) | 0
          return (state >>> 1) % below
        }
        const door = await stores[0].make(file as never, { deed: 'made' })
        await door.settled()
        const { id } = door
        const exchange = async (from: Doors, to: Doors) => {
          const read = await to.read(await from.exportDoor(id), 'x')
          if (!read.ok) throw new Error(`a whole door must be taken, got ${JSON.stringify(read.issues)}`)
        }
        await exchange(stores[0], stores[2])
        const all = [door, await opening(stores[1], id), await opening(stores[2], id)]
        const made = new Set<string>()
        for (let step = 0; step < 14; step++) {
          const which = dice(3)
          const mine = all[which] as OpenDoor
          const act = dice(8)
          if (act < 4) {
            const path = ['name', 'note', 'survey/opening/width_mm', 'begun'][dice(4)] as string
            const thing = dice(2) === 0 ? 'concept' : `survey/lanes/+${which}` // one that all begin, and one of their own
            if (path === 'begun') {
              const values = dice(4) === 0 ? undefined : { [`v${dice(2)}`]: { value: dice(9) } }
              mine.edit({ deed: 'set', path: thing }, () => undefined, {}, { thing, values })
            } else
              mine.edit({ deed: 'set', path }, (draft) => {
                if (path === 'survey/opening/width_mm') (draft.survey.opening as { width_mm: number }).width_mm = 1000 + dice(5000)
                else (draft as Record<string, unknown>)[path] = `${seed} ${step} ${dice(9)}`
              })
          } else if (act === 4) mine.undo()
          else if (act === 5) mine.redo()
          else if (act === 6) {
            const conflict = mine.snapshot().conflicts[0]
            if (conflict) mine.choose(conflict.path, dice(conflict.values.length))
          } else await exchange(stores[which] as Doors, stores[which === 2 ? dice(2) : 2] as Doors)
          for (const { moment } of mine.history()) made.add(moment)
          if (dice(2) === 0) await mine.settled() // else the next one acts while this is still being written
        }
        const conflicts = all[2]?.snapshot().conflicts.length ?? 0
        for (const each of all) await each.settled()
        await exchange(stores[0], stores[2])
        await exchange(stores[2], stores[1])
        for (const until = Date.now() + 10_000; missing(door, made) > 0 && Date.now() < until; )
          await new Promise((done) => setTimeout(done, 2)) // tabs hear of each other a moment later
        for (const until = Date.now() + 10_000; shown(door) !== shown(all[1] as OpenDoor) && Date.now() < until; )
          await new Promise((done) => setTimeout(done, 2))
        const anew = openDoors(first)
        all.push(await opening(anew, id)) // what the database has, as after a restart
        const lost = all.reduce((sum, each) => sum + missing(each, made), 0)
        const same = all.every((each) => shown(each) === shown(door))
        for (const each of all) each.close()
        return { seed, same, lost, conflicts }
      }

      const run = async () => {
        for (let seed = queue.shift(); seed !== undefined; seed = queue.shift()) results.push(await one(seed))
      }
      await Promise.all(Array.from({ length: atOnce }, run))
      return results
    },
    { seeds, file: DOOR, atOnce: AT_ONCE },
  )
}

/** What runs inside of a tab. */
interface Tab extends Reach {
  readonly promise: (moment: string) => void
  open: OpenDoor[]
}

/**
 * Two tabs of one browser that both work on the doors of a batch at the same time, as fast as they can, in an order and with pauses that
 * their seeds give. The second tab is killed in the midst of it; what it had called saved must be there.
 *
 * @returns one outcome for each seed; `lost` counts what the first tab had made, and what the second had called saved (`promised`, of the
 *   whole batch, is counted with its first seed); `midst` says that the second was still at work when it was killed
 */
export async function tabSchedules(
  browser: Browser,
  url: string,
  seeds: readonly number[],
): Promise<{ readonly outcomes: Outcome[]; readonly promised: number; readonly midst: boolean }> {
  const context = await browser.newContext()
  const promised = new Set<string>()
  await context.exposeFunction('promise', (moment: string) => promised.add(moment))
  const [one, two] = [await opened(await context.newPage(), url), await opened(await context.newPage(), url)]
  const ids = await one.evaluate(
    async ({ count, file }) => {
      const tab = globalThis as unknown as Tab
      tab.doors = tab.openDoors('tabs')
      tab.open = []
      for (let i = 0; i < count; i++) tab.open.push(await tab.doors.make(file as never, { deed: 'made' }))
      await tab.open[0]?.settled()
      return tab.open.map(({ id }) => id)
    },
    { count: seeds.length, file: DOOR },
  )
  await two.evaluate(async (wanted) => {
    const tab = globalThis as unknown as Tab
    tab.doors = tab.openDoors('tabs')
    while (tab.doors.cards().length < wanted.length) await new Promise((done) => setTimeout(done, 2))
    tab.open = []
    for (const id of wanted) {
      const door = await tab.doors.open(id)
      if (!door) throw new Error(`a door of the other tab must open, got none for ${id}`)
      tab.open.push(door)
    }
    const [first] = tab.open
    first?.subscribe(() => {
      // what is called saved is saved for all doors; told at once, for the page may be gone a moment later
      if (first.snapshot().saving.kind !== 'saved') return
      for (const door of tab.open) for (const { moment, own } of door.history()) if (own) tab.promise(moment)
    })
  }, ids)
  const work = (page: Page, who: number) =>
    page.evaluate(
      async ({ seeds, who, atOnce }) => {
        const { open } = globalThis as unknown as Tab
        const queue = [...open.entries()]
        const one = async ([at, door]: [number, OpenDoor]) => {
          let state = ((seeds[at] ?? 0) * 2 + who) * 2_654_435_761
          const dice = (below: number) => {
            state = (Math.imul(state ^ (state >>> 15), 2_246_822_519) + 1) | 0
            return (state >>> 1) % below
          }
          for (let step = 0; step < 14; step++) {
            const act = dice(8)
            const conflict = act === 7 ? door.snapshot().conflicts[0] : undefined
            if (conflict) door.choose(conflict.path, dice(conflict.values.length))
            else if (act === 6) door.undo()
            else if (act === 5) door.redo()
            else {
              const path = ['name', 'note'][dice(2)] as string
              door.edit({ deed: 'set', path }, (draft) => {
                ;(draft as Record<string, unknown>)[path] = `${who} ${step} ${dice(9)}`
              })
            }
            if (dice(3) > 0) await new Promise((done) => setTimeout(done, dice(40)))
          }
        }
        const run = async () => {
          for (let next = queue.shift(); next; next = queue.shift()) await one(next)
        }
        await Promise.all(Array.from({ length: atOnce }, run))
        await open[0]?.settled()
      },
      { seeds, who, atOnce: AT_ONCE },
    )
  const working = work(one, 1)
  let ended = false
  const dying = work(two, 2).then(
    () => (ended = true),
    () => undefined, // it does not come to an end
  )
  const after_ms = ((seeds[0] ?? 0) * 379) % 400 // from when it first called something saved: a slow machine kills no earlier
  while (promised.size === 0 && !ended) await new Promise((done) => setTimeout(done, 2))
  await two.waitForTimeout(after_ms)
  const midst = !ended
  const crash = two.waitForEvent('crash')
  two.goto('chrome://crash').catch(() => undefined)
  await crash
  await Promise.all([working, dying])
  const again = await opened(await context.newPage(), url)
  await again.evaluate(async (wanted) => {
    const tab = globalThis as unknown as Tab
    tab.doors = tab.openDoors('tabs')
    while (tab.doors.cards().length < wanted.length) await new Promise((done) => setTimeout(done, 2))
    tab.open = []
    for (const id of wanted) tab.open.push((await tab.doors.open(id)) as OpenDoor)
  }, ids)
  const found = (page: Page) =>
    page.evaluate(() =>
      (globalThis as unknown as Tab).open.map((door) => ({
        file: JSON.stringify(Object.entries(door.snapshot().file).sort()),
        named: [door.snapshot().file.name, door.snapshot().file.note].join('\n'),
        listed: (globalThis as unknown as Tab).doors
          .cards()
          .filter(({ id }) => id === door.id)
          .map(({ name, note }) => [name, note].join('\n')),
        moments: door.history().map(({ moment }) => moment as string),
        conflicts: door.snapshot().conflicts.length,
      })),
    )
  const anew = await found(again)
  let left = await found(one)
  // what the killed one had written and could not tell is seen a moment after it has gone
  for (const until = Date.now() + 10_000; left.some(({ file }, i) => file !== anew[i]?.file) && Date.now() < until; left = await found(one))
    await one.waitForTimeout(5)
  await context.close()
  const inTabs = [left, anew].map((doors) => new Set(doors.flatMap(({ moments }) => moments)))
  const gone = [...promised].filter((moment) => inTabs.some((known) => !known.has(moment))).length
  const outcomes = seeds.map((seed, at) => {
    const [mine, theirs] = [left[at], anew[at]]
    const known = new Set(theirs?.moments)
    const lost = (mine?.moments ?? []).filter((moment) => !known.has(moment)).length + (at === 0 ? gone : 0)
    const asListed = [mine, theirs].every((door) => door?.listed[0] === door?.named)
    return { seed, same: asListed && mine !== undefined && mine.file === theirs?.file, lost, conflicts: mine?.conflicts ?? 0 }
  })
  return { outcomes, promised: promised.size, midst }
}
