import wasm from '@automerge/automerge/automerge.wasm?url'

export type Automerge = typeof import('@automerge/automerge/slim')

let loading: Promise<Automerge> | undefined

/** The mergeable document's library. Its WebAssembly is fetched when the first door is opened: the list of doors does not wait for it. */
export function automerge(): Promise<Automerge> {
  loading ??= loaded()
  return loading
}

async function loaded(): Promise<Automerge> {
  const library = await import('@automerge/automerge/slim')
  await library.initializeWasm(new Request(wasm))
  return library
}
