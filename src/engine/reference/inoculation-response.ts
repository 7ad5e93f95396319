import { type Sourced, sourced } from '../vocabulary/provenance.ts';

/** What land that was inoculated before still gains: part of the response in the next year, all of it after so many. */
export const REPEATED_INOCULATION: Sourced<{ readonly partNextYear: number; readonly fullAfterYears: number }> =
  sourced(
    { partNextYear: 0.5, fullAfterYears: 5 },
    'assumed',
    'how long rhizobia brought persist was not found; yearly inoculation of old soybean land still gave +8 % in Brazil (correcaodesolo.com.br, read), and none is due above 20 rhizobia per g of soil (Singleton & Tavares 1986)',
  );

/**
 * Part of the variance of the response to inoculation that a whole district shares; the rest differs by community. The same
 * for every crop: no source splits it.
 */
export const RESPONSE_SHARED_BY_DISTRICT: Sourced<number> = sourced(
  0.5,
  'assumed',
  'fields differ more than districts do; 2082 trials found the difference not explained by environment (van Heerwaarden et al. 2018)',
);
