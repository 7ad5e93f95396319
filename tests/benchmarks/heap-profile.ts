import { type HeapProfiler, Session } from 'node:inspector';

/** Bytes that some work puts on the heap, collected or not, by the sampling heap profiler. */
export function bytesPutOnHeap(work: () => void): number {
  const session = new Session();
  session.connect();
  const every = { includeObjectsCollectedByMajorGC: true, includeObjectsCollectedByMinorGC: true };
  session.post('HeapProfiler.startSampling', { samplingInterval: 512, ...every } as object);
  work();
  let bytes = 0;
  const add = ({ selfSize, children }: HeapProfiler.SamplingHeapProfileNode): void => {
    bytes += selfSize;
    children.forEach(add);
  };
  session.post('HeapProfiler.stopSampling', (_, told) => add(told.profile.head));
  session.disconnect();
  return bytes;
}
