const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/**
 * Text as it stands in a page or in a quoted attribute.
 *
 * @example escaped('a < b') // 'a &lt; b'
 */
export function escaped(text: string): string {
  return text.replace(/[&<>"']/g, (sign) => entities[sign] ?? sign);
}
