import react from '@vitejs/plugin-react'
import { defineConfig } from 'vite'
import { type ManifestOptions, VitePWA } from 'vite-plugin-pwa'
import manifest from './manifest.json' with { type: 'json' }
import { POLICY } from './policy.ts'

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
  build: { target: 'es2022', outDir: 'dist', emptyOutDir: true, assetsInlineLimit: 0, modulePreload: { polyfill: false } },
})
