// node packages/cli/build.ts: bundles the command line into dist. CommonJS, because it starts faster than modules do,
// and in three files: main (help), work (everything that judges) and worker (a thread, which loads work).
import { chmodSync, rmSync } from 'node:fs'
import { basename, join } from 'node:path'
import { build, type Plugin } from 'esbuild'

/** Leaves `import('./work.ts')` a separate file, to be loaded only when needed. */
const workApart: Plugin = {
  name: 'work-apart',
  setup({ onResolve }) {
    onResolve({ filter: /\/work\.ts$/ }, ({ kind, path }) =>
      kind === 'dynamic-import' ? { path: path.replace('.ts', '.cjs'), external: true } : undefined,
    )
  },
}

/** @param folder where the three files go; emptied first */
export async function buildCommandLine(folder: string, { minify = false }: { readonly minify?: boolean } = {}): Promise<void> {
  rmSync(folder, { recursive: true, force: true })
  for (const name of ['main', 'work', 'worker']) {
    await build({
      entryPoints: [join(import.meta.dirname, 'src', `${name}.ts`)],
      outfile: join(folder, `${name}.cjs`),
      bundle: true,
      platform: 'node',
      target: 'node24',
      format: 'cjs',
      minify,
      keepNames: minify, // names reach people in reports of a crash
      legalComments: 'inline',
      define: { 'import.meta.dirname': '__dirname', 'import.meta.filename': '__filename' },
      plugins: [workApart],
      logLevel: 'warning',
    })
  }
  chmodSync(join(folder, 'main.cjs'), 0o755)
}

if (process.argv[1] && basename(process.argv[1]) === 'build.ts') await buildCommandLine(join(import.meta.dirname, 'dist'))
