import react from '@vitejs/plugin-react'
import { defineConfig } from 'vite'
import { type ManifestOptions, VitePWA } from 'vite-plugin-pwa'
import manifest from './manifest.json' with { type: 'json' }
import { POLICY } from './policy.ts'

/**
 * Which modules come together in one file: what the bundler would put apart because several screens share it is asked for together with
 * what shares it anyway, and each file more is a request more before anything can be shown.
 */
const TOGETHER = [
  // what every screen needs before anything can be shown: the sentences, the store, React without its rendering
  {
    name: 'first',
    test: anyOf(
      'node_modules/(react|idb)/',
      'app/src/(store/(?!foreign-worker)|preferences|trusted|parts|offline|screens/coming|judging/make-worker)',
      'app/src/words/(words|en|en-chapters|en-help|en-judge|en-photos)[.]ts',
      'worker[.]ts[?]|automerge[.]wasm|document/src/sha256|vite/preload-helper', // addresses, and what the store has of elsewhere
    ),
    priority: 2,
  },
  {
    name: 'show',
    test: anyOf('node_modules/(react-dom|scheduler|wouter|regexparam|use-sync-external-store)/', 'app/src/(app|show)[.]'),
    priority: 2,
  },
  // of the document's package what screens enter figures with; the rest reads door files, in workers and where one is brought in
  {
    name: 'figures',
    test: anyOf(
      'document/src/(lengths/|shown[.]|put-place|door/defaults|libraries/(builtin|catalogue|passing))',
      'app/src/entry/(kinds|places)[.]',
    ),
    priority: 1,
  },
  // what the list of doors shares with single doors
  {
    name: 'shell',
    test: anyOf('app/src/(help/(touring|tour-offer|words-here)|hand-over|demo-doors|look/icons|screens/settings)[.]'),
    priority: 1,
  },
]

function anyOf(...patterns: readonly string[]): RegExp {
  return new RegExp(patterns.join('|'))
}

/** Relative addresses, so that a build can be served from any folder of any web server. */
export default defineConfig({
  root: import.meta.dirname,
  base: './',
  plugins: [
    react(),
    {
      name: 'content-security-policy',
      apply: 'build',
      transformIndexHtml: () => [
        { tag: 'meta', attrs: { 'http-equiv': 'Content-Security-Policy', content: POLICY }, injectTo: 'head-prepend' },
      ],
    },
    {
      // the entry asks for it as soon as it runs; named in the page it comes beside the entry
      name: 'show-ahead',
      apply: 'build',
      transformIndexHtml: {
        order: 'post',
        handler: (_html, { bundle }) => {
          const chunks = Object.values(bundle ?? {}).filter((file) => file.type === 'chunk')
          const show = chunks.find(({ name }) => name === 'show')
          if (!show) throw new Error(`the build must have a chunk named show, got ${chunks.map(({ name }) => name).join(', ')}`)
          return [show.fileName, ...show.imports].map((file) => ({
            tag: 'link',
            attrs: { rel: 'modulepreload', crossorigin: true, href: `./${file}` },
            injectTo: 'head' as const,
          }))
        },
      },
    },
    VitePWA({
      strategies: 'generateSW',
      filename: 'service-worker.js',
      injectRegister: false,
      registerType: 'prompt',
      workbox: {
        globPatterns: ['**/*.{html,js,css,woff2,svg,png,wasm,webmanifest}'],
        globIgnores: ['**/*italic*'],
        maximumFileSizeToCacheInBytes: 8_000_000, // the mergeable document's WebAssembly is the largest
        inlineWorkboxRuntime: true,
        sourcemap: false,
        navigateFallback: 'index.html',
      },
      manifest: manifest as Partial<ManifestOptions>,
    }),
  ],
  worker: { format: 'es' },
  build: {
    target: 'es2022',
    outDir: 'dist',
    emptyOutDir: true,
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    rolldownOptions: {
      output: {
        codeSplitting: {
          includeDependenciesRecursively: false,
          groups: TOGETHER,
        },
      },
    },
  },
})
