import '@fontsource-variable/atkinson-hyperlegible-next/wght.css';
import './tokens.css';
import './frame.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { fetchStart } from '../adapters/browser/fetch-start.ts';
import { keptText } from '../adapters/browser/kept-text.ts';
import { planClient } from '../adapters/workers/plan-client.ts';
import { App } from './app.tsx';
import { placeOfAddress, syncAddress } from './state/address.ts';
import { keptState } from './state/kept-state.ts';
import { createSeasonStore } from './state/season-store.ts';
import { StoresContext } from './state/use-stores.ts';
import { createViewStore } from './state/view-store.ts';

const kept = keptState(keptText());
const systemDark = matchMedia('(prefers-color-scheme: dark)').matches;
const stores = {
  season: createSeasonStore(planClient(), kept),
  view: createViewStore(kept, systemDark, placeOfAddress(location.hash)),
};
syncAddress(stores.view, window);

const root = document.getElementById('app');
if (root === null) throw new Error('index.html has no place for the app');
createRoot(root).render(
  <StrictMode>
    <StoresContext value={stores}>
      <App />
    </StoresContext>
  </StrictMode>,
);

stores.season.setState({ opening: true });
void fetchStart().then((start) => stores.season.getState().openStart(start));
