/** Gives the user a file. */
export function download(name: string, type: string, content: BlobPart): void {
  const address = URL.createObjectURL(new Blob([content], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The browser has taken the file by the next turn.
  setTimeout(() => URL.revokeObjectURL(address));
}
