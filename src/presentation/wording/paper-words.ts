import { HANDOVER_WORDING } from './english/handover.ts';
import { MOVE_WORDING } from './english/moves.ts';
import { COMMUNITY_PAPERS } from './english/papers-community.ts';
import { ROAD_PAPERS } from './english/papers-road.ts';
import { STORE_PAPERS } from './english/papers-store.ts';
import { RECORDS_WORDING } from './english/records.ts';
import { REPLAY_WORDING } from './english/replay.ts';
import { SEASON_RUNS_WORDING } from './english/season-runs.ts';
import { spokenPseudo } from './pseudo.ts';
import type { Widened, Words } from './words.ts';

const english = {
  road: ROAD_PAPERS,
  community: COMMUNITY_PAPERS,
  store: STORE_PAPERS,
  handover: HANDOVER_WORDING,
  moves: MOVE_WORDING,
  records: RECORDS_WORDING,
  runs: SEASON_RUNS_WORDING,
  replay: REPLAY_WORDING,
};

/** Words of the papers, of the records they come back as, of moved stops and of past seasons. They stand apart from the page's own words, so that only who asks for them loads them. */
export type PaperWords = Widened<typeof english>;

/** The words of the papers in the language of the page's words. */
export function paperWords({ language }: Words): PaperWords {
  return language.code === 'en-XA' ? (spokenPseudo(english) as PaperWords) : english;
}
