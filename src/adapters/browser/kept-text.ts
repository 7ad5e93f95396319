/** Text kept in this browser under a name. A browser that keeps nothing (private mode, full) is no fault. */
export interface KeptText {
  read(name: string): string | null;
  write(name: string, text: string): void;
  drop(name: string): void;
}

const PREFIX = 'nodulary:';

export function keptText(storage: () => Storage = () => localStorage): KeptText {
  const attempt = <T>(work: (storage: Storage) => T, otherwise: T): T => {
    try {
      return work(storage());
    } catch {
      return otherwise;
    }
  };
  return {
    read: (name) => attempt((kept) => kept.getItem(PREFIX + name), null),
    write: (name, text) => attempt((kept) => kept.setItem(PREFIX + name, text), undefined),
    drop: (name) => attempt((kept) => kept.removeItem(PREFIX + name), undefined),
  };
}
