/** Where a command writes: results to one stream, progress and complaints to the other. */
export interface Terminal {
  readonly result: (text: string) => void;
  readonly notice: (text: string) => void;
  /** Replaces the last progress line where the stream is a screen; dropped where it is a file. */
  readonly progress: (text: string) => void;
}

const CLEAR_LINE = '\r\u001b[K';

export function openTerminal(): Terminal {
  const { stdout, stderr } = process;
  let onProgressLine = false;
  return {
    result: (text) => {
      stdout.write(`${text}\n`);
    },
    notice: (text) => {
      stderr.write(`${onProgressLine ? CLEAR_LINE : ''}${text}\n`);
      onProgressLine = false;
    },
    progress: (text) => {
      if (!stderr.isTTY) return;
      stderr.write(`${CLEAR_LINE}${text}`);
      onProgressLine = true;
    },
  };
}
