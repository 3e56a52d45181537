import fc from 'fast-check'

// The same random designs on every run, so that a red check means a change. CHANCE=0 draws new ones.
if (process.env.CHANCE !== '0') fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: 20_261 })
