/**
 * A drawing as a file of its own: its size in points, so that programs that place it take the width it has in print,
 * and what it shows in words.
 *
 * @param svg  as drawn: 1 px is 1 pt
 */
export function svgFile(svg: string, alt: string): string {
  const sized = svg.replace(/ width="([\d.]+)" height="([\d.]+)"/, ' width="$1pt" height="$2pt"');
  return sized.replace(/^(<svg\b[^>]*>)/, (head) => `${head}<desc>${escaped(alt)}</desc>`);
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}
