import { join } from 'node:path'
import { mergeConfig } from 'vite'
import config from '../../vite.config.ts'

/** The app with the marked language in the place of German. */
export default mergeConfig(config, {
  plugins: [
    {
      name: 'marked-language',
      enforce: 'pre',
      resolveId: (id: string) => (id === './german.ts' ? join(import.meta.dirname, 'pseudo.ts') : undefined),
    },
  ],
})
