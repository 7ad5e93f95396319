import type { ChosenFile } from '../../adapters/browser/gather-files.ts';
import type { SeasonState } from '../state/season-state.ts';

const loadGathering = () => import('../../adapters/browser/gather-files.ts');

/** Opens files or a folder that the user chose. Single files go in the place of those of the same name. */
export async function openChosen(season: SeasonState, list: FileList): Promise<void> {
  // The input is emptied after this, and its list with it.
  const files = [...list];
  const { filesOfList } = await loadGathering();
  await openGathered(season, filesOfList(files));
}

/** Opens what the user dropped: files, or folders with what is in them. */
export async function openDropped(season: SeasonState, transfer: DataTransfer): Promise<void> {
  // Entries of a drop are gone when the event has ended, so they are taken before anything is waited for.
  const entries = [...transfer.items].map((item) => item.webkitGetAsEntry()).filter((entry) => entry !== null);
  const files = [...transfer.files];
  const { filesOfEntries, filesOfList } = await loadGathering();
  await openGathered(season, entries.length > 0 ? await filesOfEntries(entries) : filesOfList(files));
}

async function openGathered(season: SeasonState, chosen: readonly ChosenFile[]): Promise<void> {
  if (chosen.length === 0) return;
  const { gatherFiles } = await loadGathering();
  const gathered = await gatherFiles(chosen);
  if (gathered.whole || season.read === null) await season.openFiles(gathered);
  else await season.replaceFiles(gathered.files);
}
