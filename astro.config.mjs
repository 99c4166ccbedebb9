import mdx from '@astrojs/mdx'
import { defineConfig } from 'astro/config'

export default defineConfig({
  srcDir: './site',
  // A reserved name: where the site is published is told by the environment.
  site: process.env.OPENWORK_SITE ?? 'https://openwork.example',
  base: process.env.OPENWORK_BASE ?? '/',
  output: 'static',
  trailingSlash: 'ignore',
  // Nothing stands inline, so that the pages' policy can refuse all that does.
  build: { format: 'directory', inlineStylesheets: 'never' },
  integrations: [mdx()],
  // The stock highlighter writes style attributes, which the pages' policy refuses.
  markdown: { syntaxHighlight: false },
  vite: {
    build: {
      assetsInlineLimit: 0,
      rolldownOptions: {
        output: {
          codeSplitting: {
            // What pages with pictures share comes in few files: many small ones compress worse.
            groups: [
              {
                name: 'stitches',
                test: /engine\/(stitches|pattern|needles)\//,
                minShareCount: 2,
                priority: 2,
              },
              {
                name: 'pictures',
                test: /engine\/(chart|drawing|fabric\/(layout|yarn))\//,
                minShareCount: 2,
                priority: 1,
              },
            ],
          },
        },
      },
    },
    server: { watch: { ignored: ['**/dist/**', '**/tests/**', '**/test-results/**'] } },
  },
})
