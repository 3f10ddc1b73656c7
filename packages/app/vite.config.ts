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
  // the list of doors and what every screen needs before anything can be shown: the sentences, the store, React
  {
    name: 'first',
    test: anyOf(
      'node_modules/(react|react-dom|scheduler|wouter|regexparam|use-sync-external-store|idb)/',
      'app/src/(app|store/(?!foreign-worker)|preferences|trusted|parts|offline|hand-over|demo-doors|judging/make-worker|look/icons)',
      'app/src/screens/(coming|doors|settings)[.]',
      'app/src/help/(touring|tour-offer|words-here)[.]',
      'app/src/words/(words|en|en-chapters|en-help|en-judge|en-photos)[.]ts',
      'worker[.]ts[?]|automerge[.]wasm|document/src/sha256|vite/preload-helper|rolldown/runtime', // addresses, and what is used of elsewhere
    ),
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
