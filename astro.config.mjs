import { fileURLToPath } from 'node:url'
import { satteri } from '@astrojs/markdown-satteri'
import mdx from '@astrojs/mdx'
import preact from '@astrojs/preact'
import { defineConfig, fontProviders } from 'astro/config'
import { layForDisk, readyForDisk } from './src/house/disk.mjs'
import { placeFirstPictures } from './src/house/first-picture.mjs'
import { shrinkInline } from './src/house/inline.mjs'
import { leftOut } from './src/house/left-out.mjs'
import { listKept } from './src/house/offline.mjs'
import { makePortable } from './src/house/portable.mjs'
import { smallest } from './src/house/smallest.mjs'
import { squeeze } from './src/house/squeeze.mjs'
import { cellGrammar } from './src/site/cells/grammar.ts'
import { unbroken } from './src/site/cells/unbroken.ts'

const type = '@fontsource-variable/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-wght'

/**
 * Astro marks each chapter with a directive for itself, and the bundler warns of every one.
 * @param {import('rolldown').LogLevel} level
 * @param {import('rolldown').RolldownLog} log
 * @param {(level: import('rolldown').LogLevel, log: import('rolldown').RolldownLog) => void} pass
 */
function withoutAstrosOwn(level, log, pass) {
  if (log.code !== 'MODULE_LEVEL_DIRECTIVE' || !log.message.includes('astro:head-inject')) pass(level, log)
}

/** Where the site will be found, as whoever links to it must know it; all else works wherever it lies. */
const site = (process.env.HINGEBOOK_SITE ?? 'http://localhost:4321').replace(/\/*$/, '/')

/** Scripts and styles lie here. */
const assets = '_astro'

/** @type {import('astro').AstroIntegration} */
const squeezed = {
  name: 'squeezed',
  hooks: {
    'astro:build:done': async ({ dir }) => {
      const folder = fileURLToPath(dir)
      await readyForDisk(folder)
      makePortable(folder, assets, new URL(site).pathname)
      await shrinkInline(folder)
      await placeFirstPictures(folder)
      listKept(folder)
      await squeeze(folder)
      // No host squeezes what no host gives.
      await layForDisk(folder, assets)
    },
  },
}

/** @type {import('astro').AstroIntegration} */
const byHand = {
  name: 'by-hand',
  hooks: {
    'astro:config:setup': ({ addClientDirective }) =>
      addClientDirective({ name: 'hand', entrypoint: './src/site/hand.ts' }),
  },
}

/**
 * What wakes a chapter's bench: it comes in one file with all that it stands on, and with nothing else. What another
 * island needs besides, and what a bench may do without until it is asked for it, finds files of its own.
 */
const FIRST = /src[\\/](widgets[\\/]bench[\\/]FoldBench\.tsx|site[\\/]island\.ts)$/

export default defineConfig({
  output: 'static',
  site,
  trailingSlash: 'always',
  // A file of styles would keep each first page waiting for a second answer, and saves later ones little.
  build: { assets, inlineStylesheets: 'always' },
  server: { port: 4321 },
  devToolbar: { enabled: false },
  integrations: [mdx(), preact(), squeezed, byHand],
  // What is fetched at a press is small and near: fetching it sooner would cost every page more.
  vite: {
    plugins: [leftOut, smallest],
    resolve: {
      alias: [
        {
          find: /^@astrojs\/preact\/client(-dev)?\.js$/,
          replacement: fileURLToPath(new URL('src/site/island.ts', import.meta.url)),
        },
      ],
    },
    // A page names the script of its own layout, and the first drag counts its name.
    environments: {
      client: {
        build: {
          rolldownOptions: {
            output: { entryFileNames: ({ name }) => `${assets}/${/^\w+/.exec(name)?.[0]}.[hash].js` },
          },
        },
      },
    },
    build: {
      rolldownOptions: {
        onLog: withoutAstrosOwn,
        // Made when d3 is loaded, for what no page uses.
        treeshake: {
          manualPureFunctions: ['bisector', 'Blur2', 'shuffler'],
        },
        // What a page needs before any island wakes stays out of what wakes it. Small files squeeze badly.
        output: {
          codeSplitting: {
            groups: [
              {
                name: 'asked',
                priority: 2,
                test: /src[\\/]widgets[\\/](model[\\/]loading|template[\\/]save)\.ts|vite[\\/]preload-helper/,
              },
              { name: 'bench', priority: 1, test: FIRST },
              { name: 'beside', test: /src[\\/]widgets[\\/]bench[\\/]Beside\.tsx$/ },
            ],
          },
        },
      },
      // The PDF writer, fetched by whoever prints.
      chunkSizeWarningLimit: 1000,
    },
  },
  markdown: { processor: satteri({ mdastPlugins: [cellGrammar, unbroken] }) },
  fonts: [
    {
      name: 'Atkinson Hyperlegible Next',
      cssVariable: '--font-hyperlegible',
      provider: fontProviders.local(),
      // The last is what telephones and desks have in its place: each is stretched to fill the same lines.
      fallbacks: ['sans-serif', 'system-ui'],
      options: {
        variants: [
          { src: [`${type}-normal.woff2`], weight: '200 800', style: 'normal', display: 'swap' },
          { src: [`${type}-italic.woff2`], weight: '200 800', style: 'italic', display: 'swap' },
        ],
      },
    },
  ],
})
