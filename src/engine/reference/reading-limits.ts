import { sourced } from '../vocabulary/provenance.ts';

/** What a logger's record raises beside the loss it stands for. */
export const READING_LIMITS = {
  /** °C below which packs may have frozen. */
  freezing: sourced(0, 'read', 'keep below 30 °C, not frozen: GRDC Back Pocket Guide, Inoculating legumes, 2013'),
  /** Hours above 35 °C in all after which packs are to be kept at 25 °C, or tested, before use. */
  hoursAbove35: sourced(
    168,
    'read',
    'seven days above 35 °C: Roughley et al. 1995, Soil Biology and Biochemistry 27:1303',
  ),
} as const;
