/** Hands a text to the browser's own download. */
export const saveTextFile = (name: string, text: string, type: string): void =>
  saveFile(name, new Blob([text], { type }));

/** The same for any file. */
export function saveFile(name: string, blob: Blob): void {
  const address = URL.createObjectURL(blob);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}
