import react from '@vitejs/plugin-react'
import { defineConfig } from 'vite'

/** Relative addresses, so that a build can be served from any folder of any web server. */
export default defineConfig({
  root: import.meta.dirname,
  base: './',
  plugins: [react()],
  worker: { format: 'es' },
  build: { target: 'es2022', outDir: 'dist', emptyOutDir: true, assetsInlineLimit: 0, modulePreload: { polyfill: false } },
})
