/** The one style that react-aria writes into the page (how a finger may pan over a button), by its hash. */
const PRESSABLE_STYLE = 'sha256-38RhXrc7EdReTKsOm23ZPOCUgniTUUcjky8QOOrQx6o='

/**
 * What the page may load and run: its own files and nothing else. `wasm-unsafe-eval` lets the mergeable document's WebAssembly be
 * compiled; it does not let text be run as script. Photos are shown from memory (`blob:`).
 */
export const POLICY = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'",
  `style-src 'self' '${PRESSABLE_STYLE}'`,
  "font-src 'self'",
  "img-src 'self' blob:",
  "connect-src 'self'",
  "worker-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "require-trusted-types-for 'script'",
  'trusted-types sillsight',
].join('; ')
