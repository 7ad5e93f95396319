import { parentPort } from 'node:worker_threads';
import { playPieces, type ToPlayWorker } from './play-messages.ts';

/** A play worker of the command line. */
const answer = playPieces((message, moved) => parentPort?.postMessage(message, moved));
parentPort?.on('message', (message: ToPlayWorker) => answer(message));
