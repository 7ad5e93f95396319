import { statSync } from 'node:fs';
import { readScenarioFolder } from '../adapters/scenario-files/read-folder.ts';
import { readScenario } from '../engine/index.ts';
import { Refusal } from './refusal.ts';

/** Reads a scenario folder. @throws Refusal where there is no such folder */
export function openScenario(folder: string): ReturnType<typeof readScenario> {
  const found = statSync(folder, { throwIfNoEntry: false });
  if (!found) throw new Refusal(`There is no folder ${folder}.`);
  if (!found.isDirectory()) throw new Refusal(`${folder} is a file; a scenario is a folder with scenario.json in it.`);
  return readScenario(readScenarioFolder(folder));
}
