/**
 * The one policy that may name a script to run. The page's Content-Security-Policy asks for it: addresses of workers that do not come
 * from here are refused before anything is loaded.
 */
interface Policy {
  readonly createScriptURL: (url: string) => unknown
}
type Factory = { readonly createPolicy: (name: string, rules: { readonly createScriptURL: (url: string) => string }) => Policy }

const factory = (globalThis as { readonly trustedTypes?: Factory }).trustedTypes
const policy: Policy = factory?.createPolicy('sillsight', { createScriptURL: ours }) ?? { createScriptURL: ours }

function ours(url: string): string {
  const { origin } = new URL(url, location.href)
  if (origin !== location.origin) throw new Error(`a script must come from ${location.origin}, got ${origin}`)
  return url
}

/** An address of this build, fit for `new Worker` and the service worker. @throws for any other origin */
export function ownScript(url: string): string {
  return policy.createScriptURL(url) as string // browsers take the trusted object where types say text
}
