/** Hands a text to the browser's downloads under a file name. */
export function saveFile(name: string, text: string): void {
  const type = name.endsWith('.csv') ? 'text/csv;charset=utf-8' : 'application/json';
  const address = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The download has taken the address by the next turn of the event loop.
  setTimeout(() => URL.revokeObjectURL(address), 0);
}
