import fc from 'fast-check'

// A property that fails here fails for everyone, and again. TALLYPLATE_SEED=<number> puts other cases to every property.
fc.configureGlobal({ seed: Number(process.env.TALLYPLATE_SEED ?? 20_261_125) })
