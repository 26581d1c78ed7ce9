const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Text of a hostile plan as text: markup is escaped, control characters become spaces, and what else XML cannot hold is replaced. */
export function xmlText(text: string): string {
  return text
    .replace(/[&<>"']/gu, (character) => entities[character] ?? '')
    .replace(/\p{Cc}/gu, ' ')
    .replace(/[^\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu, '\ufffd');
}
