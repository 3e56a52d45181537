import { satteri } from '@astrojs/markdown-satteri'
import mdx from '@astrojs/mdx'
import preact from '@astrojs/preact'
import { defineConfig, fontProviders } from 'astro/config'
import { cellGrammar } from './src/site/cells/grammar.ts'

const type = '@fontsource-variable/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-wght'

export default defineConfig({
  output: 'static',
  site: 'http://localhost:4321',
  trailingSlash: 'always',
  server: { port: 4321 },
  devToolbar: { enabled: false },
  integrations: [mdx(), preact()],
  // What is fetched at a press is small and near: a helper that fetches it sooner would cost every page more.
  vite: { build: { modulePreload: false } },
  markdown: { processor: satteri({ mdastPlugins: [cellGrammar] }) },
  fonts: [
    {
      name: 'Atkinson Hyperlegible Next',
      cssVariable: '--font-hyperlegible',
      provider: fontProviders.local(),
      fallbacks: ['system-ui', 'sans-serif'],
      options: {
        variants: [
          { src: [`${type}-normal.woff2`], weight: '200 800', style: 'normal', display: 'swap' },
          { src: [`${type}-italic.woff2`], weight: '200 800', style: 'italic', display: 'swap' },
        ],
      },
    },
  ],
})
