import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const folder = fileURLToPath(new URL('../../shared', import.meta.url));

/** Folder of open layers, scenarios and published instances beside the project; null where it is absent. */
export const sharedFolder: string | null = existsSync(`${folder}/scenarios`) ? folder : null;

/** Said by every test that is skipped because the folder is not there. */
export const SHARED_ABSENT = 'skipped: the folder ../shared with open layers and scenarios is not beside this project';

if (sharedFolder === null) console.warn(SHARED_ABSENT);
