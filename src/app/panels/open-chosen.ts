import type { SeasonState } from '../state/season-store.ts';

/** Opens what the user chose or dropped. Single files go in the place of those of the same name. */
export async function openChosen(season: SeasonState, sent: FileList | DataTransfer): Promise<void> {
  // Entries of a drop are gone when the event has ended, so they are taken before anything is waited for.
  const taken = 'items' in sent && !(sent instanceof FileList) ? takeEntries(sent) : [...(sent as FileList)];
  const { filesOfEntries, filesOfList, gatherFiles } = await import('../../adapters/browser/gather-files.ts');
  const isEntries = taken.length > 0 && !(taken[0] instanceof File);
  const chosen = isEntries ? await filesOfEntries(taken as FileSystemEntry[]) : filesOfList(taken as File[]);
  const gathered = await gatherFiles(chosen);
  if (gathered.whole || season.read === null) await season.openFiles(gathered);
  else await season.replaceFiles(gathered.files);
}

function takeEntries(transfer: DataTransfer): FileSystemEntry[] {
  return [...transfer.items].map((item) => item.webkitGetAsEntry()).filter((entry) => entry !== null);
}
