import react from '@vitejs/plugin-react'
import { defineConfig } from 'electron-vite'

/** What is small and pure goes into the bundles, so that a start reads few files; the rest stays in node_modules. */
const bundled = ['kysely', 'zod']

// oxlint-disable-next-line import/no-default-export -- the build tool asks for one
export default defineConfig({
  main: {
    build: {
      target: 'node24',
      externalizeDeps: { exclude: bundled },
      rolldownOptions: {
        input: {
          electron: 'src-main/shell/electron/electron.ts',
          host: 'src-main/shell/host/host.ts',
          terminal: 'src-main/shell/terminal/terminal.ts',
          demo: 'src-main/shell/demo/demo.ts',
          'price-work': 'src-main/desk/running/price-work.ts',
          'price-search': 'src-main/desk/running/price-search.ts',
        },
        output: { format: 'es', entryFileNames: '[name].js', chunkFileNames: 'chunks/[name]-[hash].js' },
      },
    },
  },
  preload: {
    build: {
      rolldownOptions: {
        input: { preload: 'src-main/shell/electron/preload.ts' },
        // A sandboxed window takes its preload only as one CommonJS file.
        output: { format: 'cjs', entryFileNames: '[name].cjs' },
      },
    },
  },
  renderer: {
    root: 'src-renderer',
    plugins: [react()],
    build: {
      outDir: 'out/renderer',
      minify: true,
      rolldownOptions: { input: { index: 'src-renderer/index.html' } },
    },
  },
})
