import { provideChromium } from './find-chromium.mjs';

const path = await provideChromium((line) => console.log(line));
console.log(
  path ? `Chromium: ${path}` : 'No Chromium could be found, fetched or installed: the browser tests will fail.',
);
process.exit(path ? 0 : 1);
