// Bundles the page's scripts, style and font into one folder, for the program to carry inside itself.
import { build } from 'esbuild';

await build({
  entryPoints: { early: 'src/early.ts', mark: 'src/mark.svg', page: 'src/page.ts', cockpit: 'src/cockpit.ts', part: 'src/part.ts', app: 'src/app.css' },
  bundle: true,
  format: 'esm',
  target: 'es2022',
  outdir: process.argv[2] ?? 'dist',
  minify: true,
  legalComments: 'linked',
  loader: { '.svg': 'copy', '.woff2': 'file', '.woff': 'empty' },
  assetNames: '[name]',
});
