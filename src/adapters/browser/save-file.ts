const TYPES: Readonly<Record<string, string>> = {
  csv: 'text/csv;charset=utf-8',
  html: 'text/html;charset=utf-8',
  zip: 'application/zip',
};

/** Hands a text or bytes to the browser's downloads under a file name. */
export function saveFile(name: string, content: string | Uint8Array): void {
  const type = TYPES[name.slice(name.lastIndexOf('.') + 1)] ?? 'application/json';
  const part = typeof content === 'string' ? content : new Uint8Array(content);
  const address = URL.createObjectURL(new Blob([part], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The download has taken the address by the next turn of the event loop.
  setTimeout(() => URL.revokeObjectURL(address), 0);
}
