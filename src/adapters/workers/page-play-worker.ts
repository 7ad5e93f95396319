import { playPieces, type ToPlayWorker } from './play-messages.ts';

/** A play worker of the page. */
const answer = playPieces((message, moved) => postMessage(message, { transfer: [...moved] }));
addEventListener('message', (event: MessageEvent<ToPlayWorker>) => answer(event.data));
