import mdx from '@astrojs/mdx'
import preact from '@astrojs/preact'
import { defineConfig } from 'astro/config'

export default defineConfig({
  output: 'static',
  site: 'http://localhost:4321',
  trailingSlash: 'always',
  server: { port: 4321 },
  devToolbar: { enabled: false },
  integrations: [mdx(), preact()],
})
