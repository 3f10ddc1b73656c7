import wasm from '@automerge/automerge/automerge.wasm?url'

export type Automerge = typeof import('@automerge/automerge/slim')

let loading: Promise<Automerge> | undefined
let compiling: Promise<WebAssembly.Module> | undefined

/**
 * The mergeable document's library. Its WebAssembly is fetched when the first door is opened: the list of doors does not wait for it.
 *
 * @param compiled in a worker: what the page has compiled already
 */
export function automerge(compiled?: WebAssembly.Module): Promise<Automerge> {
  loading ??= loaded(compiled)
  return loading
}

/** Compiled once and handed to workers: each makes an instance of its own of it, with its own memory, in a third of the time. */
export function compiledAutomerge(): Promise<WebAssembly.Module> {
  compiling ??= compiledFrom(wasm)
  return compiling
}

async function loaded(compiled: WebAssembly.Module | undefined): Promise<Automerge> {
  const [library, module] = await Promise.all([import('@automerge/automerge/slim'), compiled ?? compiledAutomerge()])
  await library.initializeWasm(module as never) // takes whatever its loader takes, its types name only some of that
  return library
}

async function compiledFrom(address: string): Promise<WebAssembly.Module> {
  const response = await fetch(address)
  if (!response.ok) throw new Error(`${address} must be served, got ${response.status}`)
  // by the bytes where a server calls them something else: compiling while they come is then refused
  if (response.headers.get('content-type') === 'application/wasm') return WebAssembly.compileStreaming(response)
  return WebAssembly.compile(await response.arrayBuffer())
}
