import { type Sourced, sourced } from '../vocabulary/provenance.ts';

/**
 * Fertiliser nitrogen, kg per ha, that a cereal grown after a grain legume can do without. This part of the nitrogen fixed, and
 * no other, may be priced as fertiliser: most of what is fixed leaves the field with the grain.
 */
export const RESIDUAL_BENEFIT: Sourced<{ readonly least: number; readonly most: number }> = sourced(
  { least: 20, most: 40 },
  'read',
  'maize after five grain legumes in South Africa, doi 10.3389/fsufs.2020.00094; not measured in this district',
);
