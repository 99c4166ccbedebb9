import mdx from '@astrojs/mdx'
import { defineConfig } from 'astro/config'

export default defineConfig({
  srcDir: './site',
  // A reserved name: where the site is published is told by the environment.
  site: process.env.OPENWORK_SITE ?? 'https://openwork.example',
  base: process.env.OPENWORK_BASE ?? '/',
  output: 'static',
  trailingSlash: 'ignore',
  build: { format: 'directory' },
  integrations: [mdx()],
  // The stock highlighter writes style attributes, which the policy below refuses.
  markdown: { syntaxHighlight: false },
  security: { csp: true },
  vite: {
    server: { watch: { ignored: ['**/dist/**', '**/tests/**', '**/test-results/**'] } },
  },
})
