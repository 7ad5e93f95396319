import fc from 'fast-check';

/** Property tests draw the same cases in every run, so that a run can be repeated; others with NODULARY_PROPERTY_SEED. */
fc.configureGlobal({ seed: Number(process.env['NODULARY_PROPERTY_SEED'] ?? 20) });
