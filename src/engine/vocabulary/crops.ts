/** The ten crops of the trade that this programme plans, in the spelling of the scenario files. */
export const CROPS = [
  'soybean',
  'groundnut',
  'cowpea',
  'common_bean',
  'chickpea',
  'pigeonpea',
  'mung_bean',
  'bambara',
  'faba_bean',
  'lentil',
] as const;

export type Crop = (typeof CROPS)[number];
