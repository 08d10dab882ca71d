/** Hands a file to whoever sits here: the browser saves it or asks where. */
export function saveFile(file: Blob, name: string): void {
  const address = URL.createObjectURL(file);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The browser reads the file after the click; its address must live until then.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
