/** Bytes as text of RFC 4648, clause 4, for what is written as XML. */
export function base64Of(bytes: Uint8Array): string {
  const parts: string[] = [];
  for (let at = 0; at < bytes.length; at += 8192) parts.push(String.fromCharCode(...bytes.subarray(at, at + 8192)));
  return btoa(parts.join(''));
}

/** Null where it is none. */
export function bytesOfBase64(text: string): Uint8Array | null {
  const plain = text.replace(/\s+/gu, '');
  if (plain.length % 4 !== 0 || !/^[A-Za-z\d+/]+={0,2}$/u.test(plain)) return null;
  return Uint8Array.from(atob(plain), (letter) => letter.charCodeAt(0));
}
